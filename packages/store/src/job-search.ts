/** Finding jobs by what a person remembers of them: words of the title, the machine, the part, its features, the notes. */
import type { Job } from '@sparewright/core/job/schema';
import { sql } from 'kysely';
import type { Connection } from './connection.ts';
import { query } from './tables.ts';

/** Puts a job into the index, in place of what stood there. */
export function indexJob(db: Connection, key: number, job: Job): void {
  removeFromIndex(db, key);
  const { part } = job;
  const features = [
    part?.outside,
    part?.inside?.left,
    part?.inside?.right,
    part?.grooves,
    part?.threads,
    part?.notTurned,
    job.mates,
  ].flatMap((list: readonly { id: string; name?: string | undefined }[] | undefined) =>
    (list ?? []).flatMap(({ id, name }) => [id, name ?? '']),
  );
  db.run(
    query.insertInto('job_search').values({
      rowid: key,
      title: job.title,
      machine: job.machine?.name ?? '',
      part: [part?.name, part?.number, part?.material].join(' '),
      features: features.join(' '),
      notes: [job.notes, ...(job.evidence?.specimens ?? []).flatMap(({ name, note }) => [name, note])].join(' '),
    }),
  );
}

export function removeFromIndex(db: Connection, key: number): void {
  db.run(query.deleteFrom('job_search').where('rowid', '=', key));
}

/** Text as typed as a question to the index: every word must begin some word of the job. Undefined when it holds no word. */
export function searchWords(typed: string): string | undefined {
  const words = typed.match(/[\p{L}\p{N}\p{M}\p{Co}]+/gu)?.slice(0, 12);
  return words?.map((word) => `"${word}"*`).join(' ');
}

export const matches = (words: string) => sql<boolean>`job_search MATCH ${words}`;

/** Smaller is better: a word in the title counts most, one in the notes least. */
export const closeness = sql<number>`bm25(job_search, 10, 4, 6, 2, 1)`;
