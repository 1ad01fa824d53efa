/** The jobs: listed, found, read, saved; removed ones lie in a bin. */
import { randomUUID } from 'node:crypto';
import { InputError } from '@sparewright/core/errors';
import { type Json, same } from '@sparewright/core/job/merge';
import { readJob } from '@sparewright/core/job/read-document';
import type { Hazard } from '@sparewright/core/job/schema';
import type { Connection } from './connection.ts';
import {
  type History,
  historyOf,
  type Revision,
  type Saved,
  type SaveNotes,
  type Steps,
  type Stored,
  type Summary,
  summaryColumns,
  summaryOf,
} from './history.ts';
import { closeness, indexJob, matches, removeFromIndex, searchWords } from './job-search.ts';
import { plainJson } from './packed-json.ts';
import { StoreError } from './store-error.ts';
import { query } from './tables.ts';

export interface JobEntry extends Summary {
  readonly id: string;
  readonly title: string;
  /** Name of the machine the part belongs to; empty when there is none. */
  readonly machine: string;
  readonly hazard: Hazard;
  readonly created: string;
  readonly updated: string;
  readonly revision: number;
}

export interface ListOptions {
  /** Words, or beginnings of words, that all must occur. */
  readonly search?: string | undefined;
  readonly limit: number;
  readonly offset: number;
  /** What lies in the bin instead; that is not searched. */
  readonly bin?: boolean | undefined;
}

export interface JobList {
  readonly jobs: readonly JobEntry[];
  /** How many there are in all. */
  readonly total: number;
}

export interface CreateOptions {
  /** Name of the job in addresses; made up when left out. Creating the same job twice under one id changes nothing. */
  readonly id?: string | undefined;
  readonly author?: string | undefined;
}

export interface Jobs {
  /** Latest first, or best match first. */
  list(options: ListOptions): JobList;
  /** @throws StoreError when there is no such job; one in the bin can still be read */
  get(id: string): Stored;
  /** @throws InputError when the document is no job */
  create(document: unknown, summary: Summary, options?: CreateOptions): { id: string; revision: number };
  /** @throws InputError when the document is no job; StoreError when there is no such job or it lies in the bin */
  save(id: string, base: number, document: unknown, summary: Summary, notes?: Omit<SaveNotes, 'summary'>): Saved;
  /** The summary of a revision, when it was not known as it was saved: after a merge. */
  summarise(id: string, revision: number, summary: Summary): void;
  revisions(id: string): readonly Revision[];
  revision(id: string, number: number): Stored;
  /** Makes an earlier revision the latest. */
  restore(id: string, number: number, author?: string): Saved;
  /** Numbers of the revisions that undo and redo would take back: pass them to `takeBack`. */
  steps(id: string): Steps;
  takeBack(id: string, number: number, author?: string): Saved;
  /** A new job that begins with this one's latest revision. */
  copy(id: string, title?: string): { id: string; revision: number };
  /** Into the bin; nothing is lost. */
  remove(id: string): void;
  putBack(id: string): void;
}

export function jobsIn(db: Connection): Jobs {
  function history(id: string, use: 'read' | 'change'): History {
    const row = db.first(
      query
        .selectFrom('document')
        .innerJoin('job', 'job.document', 'document.key')
        .select(['key', 'binned'])
        .where('kind', '=', 'job')
        .where('id', '=', id),
    );
    if (!row) throw new StoreError('missing', `There is no job ${id}.`);
    if (use === 'change' && row.binned !== null)
      throw new StoreError('in the bin', 'The job lies in the bin; put it back to change it.');
    return historyOfJob(db, row.key);
  }

  function create(document: unknown, summary: Summary, { id = randomUUID(), author }: CreateOptions = {}) {
    if (!/^[a-z0-9][a-z0-9-]{0,79}$/.test(id))
      throw new InputError([
        { path: 'id', value: id, expected: 'small letters, digits and hyphens', example: 'pin-2' },
      ]);
    return db.write(() => {
      const known = db.first(query.selectFrom('document').select('key').where('kind', '=', 'job').where('id', '=', id));
      if (!known)
        return { id, revision: historyOfJob(db, newJob(db, id)).save(0, document, { author, summary }).revision };
      const { revision, head } = historyOfJob(db, known.key);
      if (!same(revision(1).document, plainJson(document)))
        throw new StoreError('taken', `There is another job ${id} already.`);
      return { id, revision: head() };
    });
  }

  function setBinned(id: string, binned: string | null): void {
    db.write(() => {
      const { key, revision, head } = history(id, 'read');
      db.run(query.updateTable('job').set({ binned }).where('document', '=', key));
      if (binned === null) indexJob(db, key, readJob(revision(head()).document));
      else removeFromIndex(db, key);
    });
  }

  return {
    list: (options) => listJobs(db, options),
    get(id) {
      const { revision, head } = history(id, 'read');
      return revision(head());
    },
    create,
    save: (id, base, document, summary, notes) => history(id, 'change').save(base, document, { ...notes, summary }),
    summarise(id, number, summary) {
      const { key, revision } = history(id, 'read');
      const of = query.updateTable('revision').set(summaryColumns(summary)).where('document', '=', key);
      db.run(of.where('number', '=', revision(number).number));
    },
    revisions: (id) => history(id, 'read').revisions(),
    revision: (id, number) => history(id, 'read').revision(number),
    restore: (id, number, author) => history(id, 'change').restore(number, { author }),
    steps: (id) => history(id, 'read').steps(),
    takeBack: (id, number, author) => history(id, 'change').takeBack(number, author),
    copy(id, title) {
      const { revision, head } = history(id, 'read');
      const { document, summary } = revision(head());
      return create({ ...fieldsOf(document), ...(title === undefined ? {} : { title }) }, summary);
    },
    remove: (id) => setBinned(id, new Date().toISOString()),
    putBack: (id) => setBinned(id, null),
  };
}

/** The rows of a job that has no revision yet; inside a transaction. */
export function newJob(db: Connection, id: string): number {
  db.run(query.insertInto('document').values({ kind: 'job', id, head: 0 }));
  const key = db.first(query.selectFrom('document').select('key').where('kind', '=', 'job').where('id', '=', id))?.key;
  if (key === undefined) throw new Error(`job ${id} was not made`);
  const now = new Date().toISOString();
  const job = {
    document: key,
    title: '',
    machine: '',
    hazard: 'ordinary' as const,
    created: now,
    updated: now,
    binned: null,
  };
  db.run(query.insertInto('job').values(job));
  return key;
}

export function historyOfJob(db: Connection, key: number): History {
  return historyOf(db, {
    kind: 'job',
    key,
    check: readJob,
    saved(document, updated) {
      const job = readJob(document);
      const columns = { title: job.title, machine: job.machine?.name ?? '', hazard: job.hazard, updated };
      db.run(query.updateTable('job').set(columns).where('document', '=', key));
      indexJob(db, key, job);
    },
  });
}

function fieldsOf(document: Json): object {
  return typeof document === 'object' && document !== null ? document : {};
}

function listJobs(db: Connection, { search = '', limit, offset, bin = false }: ListOptions): JobList {
  const words = searchWords(search);
  // Signs without a single word in them are found nowhere.
  if (words === undefined && search.trim() !== '') return { jobs: [], total: 0 };
  const rows = query
    .selectFrom('job')
    .innerJoin('document', 'document.key', 'job.document')
    .innerJoin('revision', (join) =>
      join.onRef('revision.document', '=', 'document.key').onRef('revision.number', '=', 'document.head'),
    )
    .select(['id', 'head', 'title', 'machine', 'hazard', 'created', 'updated', 'stage', 'level', 'finding']);
  if (words !== undefined && !bin) {
    const found = query
      .selectFrom('job_search')
      .select('rowid')
      .where(matches(words))
      .orderBy(closeness)
      .orderBy('rowid', 'desc')
      .limit(limit)
      .offset(offset);
    const ranked = db.all(found).map(({ rowid }) => rowid);
    const total = db.first(
      query
        .selectFrom('job_search')
        .select((of) => of.fn.countAll<number>().as('n'))
        .where(matches(words)),
    );
    const byKey = new Map(
      db.all(rows.select('job.document as key').where('job.document', 'in', ranked)).map((row) => [row.key, row]),
    );
    return { jobs: ranked.flatMap((key) => byKey.get(key) ?? []).map(entryOf), total: total?.n ?? 0 };
  }
  const where = bin ? 'is not' : 'is';
  const total = db.first(
    query
      .selectFrom('job')
      .select((of) => of.fn.countAll<number>().as('n'))
      .where('binned', where, null),
  );
  const listed = rows.where('binned', where, null).orderBy('updated', 'desc').orderBy('job.document', 'desc');
  return { jobs: db.all(listed.limit(limit).offset(offset)).map(entryOf), total: total?.n ?? 0 };
}

interface JobRow {
  readonly id: string;
  readonly head: number;
  readonly title: string;
  readonly machine: string;
  readonly hazard: Hazard;
  readonly created: string;
  readonly updated: string;
}

function entryOf(row: JobRow & Parameters<typeof summaryOf>[0]): JobEntry {
  const { id, title, machine, hazard, created, updated, head } = row;
  return { id, title, machine, hazard, created, updated, revision: head, ...summaryOf(row) };
}
