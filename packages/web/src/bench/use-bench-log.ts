/** The log of a job's bench on the page: what the server has, and what is still on its way there. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { fetchJson, jobAddress, Refused } from '../ask-server.ts';
import { whenNews } from '../save/events.ts';
import { hold, unsent } from './bench-outbox.ts';
import { deliver } from './deliver.ts';
import { type BenchEntry, isEntry } from './entry.ts';

/** Between two tries at a server that does not answer [ms]. */
const retry = 2500;

export interface Logged {
  readonly entry: BenchEntry;
  /** It is kept in this browser and goes to the server when that answers. */
  readonly waits: boolean;
  readonly struck: boolean;
}

export interface BenchLog {
  /** The latest first. */
  readonly logged: readonly Logged[];
  /** Why the server will never take an entry, or what else went wrong. */
  readonly trouble: string;
  readonly away: boolean;
  log(entry: BenchEntry): void;
}

export function useBenchLog(job: string): BenchLog {
  const [kept, setKept] = useState<readonly BenchEntry[]>([]);
  const [waiting, setWaiting] = useState<readonly BenchEntry[]>(() => unsent(job));
  const [trouble, setTrouble] = useState('');
  const [away, setAway] = useState(false);
  const wake = useRef<() => void>(undefined);

  useEffect(() => {
    const stop = new AbortController();
    let timer: ReturnType<typeof setTimeout> | undefined;
    let busy = false;
    let again = false;

    async function round(): Promise<void> {
      const refused = await deliver(job, stop.signal);
      if (refused.length > 0) setTrouble(`Not kept: ${refused.join(' ')}`);
      const { entries } = await fetchJson<{ entries: unknown[] }>(`${jobAddress(job)}/bench-log`, {
        signal: stop.signal,
      });
      setKept(entries.filter(isEntry));
      setWaiting(unsent(job));
      setAway(false);
      if (unsent(job).length > 0) again = true;
    }

    async function go(): Promise<void> {
      clearTimeout(timer);
      again = true;
      if (busy) return;
      busy = true;
      try {
        while (again && !stop.signal.aborted) {
          again = false;
          await round();
        }
      } catch (error) {
        if (stop.signal.aborted) return;
        setAway(error instanceof Refused && error.status === 0);
        if (!(error instanceof Refused && error.status === 0))
          setTrouble(error instanceof Error ? error.message : 'The log did not come.');
        timer = setTimeout(() => void go(), retry);
      } finally {
        busy = false;
      }
    }

    wake.current = () => void go();
    void go();
    const onLine = (): void => void go();
    addEventListener('online', onLine);
    const end = whenNews((news) => {
      if (news.kind === 'back' || (news.kind === 'bench' && news.job === job)) void go();
    });
    return () => {
      stop.abort();
      clearTimeout(timer);
      removeEventListener('online', onLine);
      end();
    };
  }, [job]);

  const log = useCallback(
    (entry: BenchEntry) => {
      hold(job, entry);
      setWaiting(unsent(job));
      wake.current?.();
    },
    [job],
  );
  const logged = useMemo(() => together(kept, waiting), [kept, waiting]);
  return { logged, trouble, away, log };
}

/** Both, each once, by the time they were written. */
function together(kept: readonly BenchEntry[], waiting: readonly BenchEntry[]): Logged[] {
  const known = new Set(kept.map(({ id }) => id));
  const all = [
    ...kept.map((entry) => ({ entry, waits: false })),
    ...waiting.filter(({ id }) => !known.has(id)).map((entry) => ({ entry, waits: true })),
  ];
  const struck = new Set(all.flatMap(({ entry }) => (entry.kind === 'struck' ? [entry.entry] : [])));
  return all
    .filter(({ entry }) => entry.kind !== 'struck')
    .map((one) => ({ ...one, struck: struck.has(one.entry.id) }))
    .toSorted((a, b) => b.entry.at.localeCompare(a.entry.at));
}
