/** One job on the page: opened, and assessed again whenever a value is typed anew. */
import { useEffect, useMemo, useState } from 'react';
import type { JobPage, SizeRow } from './answer.ts';
import { assessJob, openJob, Refused } from './ask-server.ts';
import { pathText, withValues } from './document.ts';

/** Typing goes on as long as keys follow each other faster than this [ms]. */
const pause = 300;

export interface OpenJob {
  /** The last state that could be understood; undefined until the job is there. */
  readonly page: JobPage | undefined;
  /** Values typed anew, by size. */
  readonly drafts: Readonly<Record<string, string>>;
  /** Why a typed value is not taken, by size. */
  readonly refusals: Readonly<Record<string, string>>;
  /** Something that is not about one typed value. */
  readonly trouble: string;
  readonly changed: boolean;
  type(row: SizeRow, text: string): void;
  putBack(): void;
}

interface Typed {
  readonly text: string;
  readonly path: SizeRow['path'];
}

/** Begins anew only with a new component: give it the job's id as key. */
export function useJob(id: string): OpenJob {
  const [opened, setOpened] = useState<JobPage>();
  const [tried, setTried] = useState<JobPage>();
  const [typed, setTyped] = useState<Readonly<Record<string, Typed>>>({});
  const [refusals, setRefusals] = useState<Readonly<Record<string, string>>>({});
  const [trouble, setTrouble] = useState('');

  useEffect(() => {
    const stop = new AbortController();
    openJob(id, stop.signal).then(
      (page) => setOpened(page),
      (error: unknown) => {
        if (!stop.signal.aborted) setTrouble(messageOf(error));
      },
    );
    return () => stop.abort();
  }, [id]);

  useEffect(() => {
    const values = Object.entries(typed);
    if (!opened || values.length === 0) return;
    const stop = new AbortController();
    const soon = setTimeout(() => {
      const empty = values.filter(([, v]) => v.text.trim() === '').map(([size]) => [size, 'Type a size to go on.']);
      if (empty.length > 0) return setRefusals(Object.fromEntries(empty));
      assessJob(withValues(opened.document, Object.values(typed)), stop.signal).then(
        (page) => {
          setTried(page);
          setRefusals({});
          setTrouble('');
        },
        (error: unknown) => {
          if (stop.signal.aborted) return;
          const found = refusalsOf(error, values);
          setRefusals(found);
          setTrouble(Object.keys(found).length > 0 ? '' : messageOf(error));
        },
      );
    }, pause);
    return () => {
      clearTimeout(soon);
      stop.abort();
    };
  }, [opened, typed]);

  const drafts = useMemo(() => Object.fromEntries(Object.entries(typed).map(([size, v]) => [size, v.text])), [typed]);
  return {
    page: tried ?? opened,
    drafts,
    refusals,
    trouble,
    changed: Object.keys(typed).length > 0,
    type: (row, text) => setTyped((before) => ({ ...before, [row.id]: { text, path: row.path } })),
    putBack: () => {
      setTried(undefined);
      setTyped({});
      setRefusals({});
      setTrouble('');
    },
  };
}

function refusalsOf(error: unknown, values: readonly (readonly [string, Typed])[]): Record<string, string> {
  if (!(error instanceof Refused)) return {};
  return Object.fromEntries(
    values.flatMap(([size, { path }]) => {
      const issue = error.issues.find((i) => i.path === pathText(path));
      if (!issue) return [];
      const example = issue.example === null ? '' : `, for example ${issue.example}`;
      return [[size, `Not taken: ${issue.value}. Expected ${issue.expected}${example}.`]];
    }),
  );
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : 'Something went wrong that has no name.';
}
