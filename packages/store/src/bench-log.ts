/**
 * What was done and measured at the machine. Entries are only added. Each carries an id made where it was written,
 * so that a phone without reception may send what it holds as often as it likes.
 */
import { InputError } from '@sparewright/core/errors';
import { type Json, same } from '@sparewright/core/job/merge';
import type { Connection } from './connection.ts';
import { keepMentions } from './mentions.ts';
import { plainJson } from './packed-json.ts';
import { query } from './tables.ts';

export interface NewEntry {
  /** Unique within the job. */
  readonly id: string;
  readonly job: string;
  /** When it was written, by the clock where it was written. */
  readonly at: string;
  readonly content: unknown;
}

export interface BenchEntry {
  readonly id: string;
  readonly job: string;
  readonly at: string;
  /** When it came in here. */
  readonly received: string;
  /** Grows with every entry of the store; to ask for what came after. */
  readonly sequence: number;
  readonly content: Json;
}

export type Appended =
  | { readonly id: string; readonly outcome: 'added' | 'known' }
  /** The id is taken by an entry that says something else; the new one was not stored. */
  | { readonly id: string; readonly outcome: 'differs'; readonly held: BenchEntry }
  | { readonly id: string; readonly outcome: 'refused'; readonly why: string };

export interface BenchLog {
  /** All of them in one go, each with its outcome, in their order. When this returns, they are on the disk. */
  append(entries: readonly NewEntry[]): readonly Appended[];
  /** A job's entries in the order they came in. */
  list(job: string, after?: number): readonly BenchEntry[];
}

const mostCharacters = 64_000;

export function benchLogIn(db: Connection): BenchLog {
  const entries = query
    .selectFrom('bench_entry')
    .innerJoin('document', 'document.key', 'bench_entry.document')
    .select(['bench_entry.id', 'document.id as job', 'at', 'received', 'sequence', 'content']);

  function append(entry: NewEntry, received: string): Appended {
    const { id, job, at } = entry;
    const content = contentOf(entry);
    if ('why' in content) return { id, outcome: 'refused', ...content };
    const { json, text } = content;
    const document = db.first(
      query.selectFrom('document').select('key').where('kind', '=', 'job').where('id', '=', job),
    )?.key;
    if (document === undefined) return { id, outcome: 'refused', why: `There is no job ${job}.` };
    const held = db.first(entries.where('document', '=', document).where('bench_entry.id', '=', id));
    if (held) {
      const known = { ...held, content: plainJson(JSON.parse(held.content)) };
      return known.at === at && same(known.content, json)
        ? { id, outcome: 'known' }
        : { id, outcome: 'differs', held: known };
    }
    db.run(query.insertInto('bench_entry').values({ document, id, at, received, content: text }));
    keepMentions(db, document, text);
    return { id, outcome: 'added' };
  }

  return {
    append: (list) =>
      db.write(() => {
        const received = new Date().toISOString();
        return list.map((entry) => append(entry, received));
      }),
    list: (job, after = 0) =>
      db
        .all(
          entries
            .where('document.id', '=', job)
            .where('kind', '=', 'job')
            .where('sequence', '>', after)
            .orderBy('sequence'),
        )
        .map((row) => ({ ...row, content: plainJson(JSON.parse(row.content)) })),
  };
}

/** What is to be kept of an entry, or why it is not kept. */
function contentOf({ id, at, content }: NewEntry): { json: Json; text: string } | { why: string } {
  if (id.length < 1 || id.length > 80) return { why: 'The id of an entry has 1 to 80 characters.' };
  if (!/^\d{4}-\d\d-\d\dT/.test(at) || Number.isNaN(Date.parse(at)))
    return { why: 'The time must be like 2026-03-01T09:30:00Z.' };
  try {
    const json = plainJson(content);
    const text = JSON.stringify(json);
    return text.length > mostCharacters
      ? { why: `The entry is longer than ${mostCharacters} characters.` }
      : { json, text };
  } catch (error) {
    if (error instanceof InputError) return { why: error.message };
    throw error;
  }
}
