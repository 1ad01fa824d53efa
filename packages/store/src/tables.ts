/** The tables as the queries see them. `schema-steps.ts` makes them. */
import type { Level, Stage } from '@sparewright/core/finding';
import type { Hazard } from '@sparewright/core/job/schema';
import { DummyDriver, type Generated, Kysely, SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler } from 'kysely';

export interface Tables {
  schema_version: { version: number; since: string };
  document: { key: Generated<number>; kind: 'job' | 'workshop'; id: string; head: number };
  revision: {
    document: number;
    number: number;
    content: Buffer;
    saved: string;
    author: string | null;
    undoes: number | null;
    stage: Stage | null;
    level: Level | null;
    finding: string | null;
  };
  revision_name: { document: number; name: string; number: number };
  job: {
    document: number;
    title: string;
    machine: string;
    hazard: Hazard;
    created: string;
    updated: string;
    binned: string | null;
  };
  /** Full text; the text itself is not kept twice. */
  job_search: { rowid: number; title: string; machine: string; part: string; features: string; notes: string };
  bench_entry: {
    sequence: Generated<number>;
    document: number;
    id: string;
    at: string;
    received: string;
    content: string;
  };
  attachment: { hash: string; type: string; name: string; size: number; added: string };
  attachment_link: { document: number; hash: string; since: string; hidden: string | null };
  attachment_mention: { document: number; hash: string };
  /** Only in a backup. */
  attachment_content: { hash: string; content: Buffer };
}

/** Writes typed queries; `Connection` runs them. */
export const query = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});
