/** Documents and their revisions: every save is kept, going back is a new revision, changes made apart are merged. */
import type { Level, Stage } from '@sparewright/core/finding';
import { type Conflict, differingPaths, type Json, merge, same } from '@sparewright/core/job/merge';
import { type DocumentKind, migrate } from '@sparewright/core/job/migrate';
import type { Connection } from './connection.ts';
import { keepMentions } from './mentions.ts';
import { pack, plainJson, unpack } from './packed-json.ts';
import { StoreError } from './store-error.ts';
import { query } from './tables.ts';

/** What the list shows of a job without opening it. The caller says it with the document it belongs to. */
export interface Summary {
  /** How far the job has come. */
  readonly stage?: Stage | undefined;
  /** Its worst finding. */
  readonly worst?: { readonly level: Level; readonly says: string } | undefined;
}

export interface SaveNotes {
  readonly author?: string | undefined;
  /** Number of the revision that this one takes back. */
  readonly undoes?: number | undefined;
  readonly summary?: Summary | undefined;
}

export interface Revision {
  readonly number: number;
  /** When it was saved, as in `2026-03-01T09:30:00.000Z`. */
  readonly saved: string;
  readonly author: string | undefined;
  readonly undoes: number | undefined;
  readonly summary: Summary;
}

export interface Stored extends Revision {
  /** As typed, in the present version of the format. */
  readonly document: Json;
}

export type Saved =
  /** As handed in. A save that changes nothing makes no revision and answers with the one that is there. */
  | { readonly kind: 'saved'; readonly revision: number; readonly document: Json }
  /** Joined with what others saved since; `changed` names what differs from the document handed in. */
  | { readonly kind: 'merged'; readonly revision: number; readonly document: Json; readonly changed: readonly string[] }
  /** Nothing was stored. `theirs` is what lies there now, at `revision`. */
  | {
      readonly kind: 'conflict';
      readonly theirs: Json;
      readonly revision: number;
      readonly paths: readonly string[];
      readonly conflicts: readonly Conflict[];
    };

/** The revisions of one document. */
export interface History {
  readonly key: number;
  head(): number;
  revisions(): Revision[];
  /** @throws StoreError when there is none of that number */
  revision(number: number): Stored;
  /** @throws InputError when the document is none of its kind */
  save(base: number, document: unknown, notes: SaveNotes): Saved;
  /** An earlier revision as a new one. */
  restore(number: number, notes: SaveNotes): Saved;
  /** The latest change that is not taken back yet, and the latest that was taken back: numbers for `takeBack`. */
  steps(): Steps;
  /** The document as it was before a revision, as a new one that names it. */
  takeBack(number: number, author: string | undefined): Saved;
  /** Takes over the revisions of another store, oldest first, into a history that has none yet. */
  adopt(revisions: readonly Pick<Stored, 'saved' | 'author' | 'undoes' | 'document'>[]): void;
}

export interface Steps {
  readonly undo: number | undefined;
  readonly redo: number | undefined;
}

export interface HistoryOptions {
  readonly kind: DocumentKind;
  readonly key: number;
  /** @throws InputError when the document is none of its kind */
  readonly check: (document: Json) => void;
  /** Called with each document that becomes the latest, in the same transaction. */
  readonly saved: (document: Json, at: string) => void;
}

export function historyOf(db: Connection, options: HistoryOptions): History {
  const { kind, key, check } = options;

  const head = () => db.first(query.selectFrom('document').select('head').where('key', '=', key))?.head ?? 0;

  function revision(number: number): Stored {
    const row = db.first(
      query.selectFrom('revision').selectAll().where('document', '=', key).where('number', '=', number),
    );
    if (!row) throw new StoreError('missing', `There is no revision ${number}; the latest is ${head()}.`);
    return { ...revisionOf(row), document: plainJson(migrate(kind, unpack(row.content))) };
  }

  function add(document: Json, notes: SaveNotes, saved: string): number {
    const number = head() + 1;
    const { author, undoes, summary } = notes;
    db.run(
      query.insertInto('revision').values({
        document: key,
        number,
        content: pack(document),
        saved,
        author: author ?? null,
        undoes: undoes ?? null,
        ...summaryColumns(summary),
      }),
    );
    db.run(query.updateTable('document').set({ head: number }).where('key', '=', key));
    keepMentions(db, key, JSON.stringify(document));
    return number;
  }

  function addLatest(document: Json, notes: SaveNotes): number {
    const saved = new Date().toISOString();
    const number = add(document, notes, saved);
    options.saved(document, saved);
    return number;
  }

  function saveUpon(base: number, document: Json, notes: SaveNotes): Saved {
    const latest = head();
    if (base === latest && latest === 0) return { kind: 'saved', revision: addLatest(document, notes), document };
    const last = revision(latest);
    const theirs = last.document;
    // A save that was sent twice, or that changes nothing.
    if (same(document, theirs) && (notes.undoes === undefined || notes.undoes === last.undoes))
      return { kind: 'saved', revision: latest, document };
    if (base === latest) return { kind: 'saved', revision: addLatest(document, notes), document };
    const from = base === 0 ? {} : revision(base).document;
    const merged = merge(from, document, theirs);
    if (merged.kind === 'conflict') return conflict(last, merged.conflicts);
    // Each copy is sound by itself, but what they make together is no document.
    if (!passes(check, merged.document)) return conflict(last, [{ path: '', base: from, ours: document, theirs }]);
    const changed = differingPaths(document, merged.document);
    const number = same(merged.document, theirs) ? latest : addLatest(merged.document, notes);
    const result = { revision: number, document: merged.document };
    return changed.length === 0 ? { kind: 'saved', ...result } : { kind: 'merged', ...result, changed };
  }

  function revisions(): Revision[] {
    const columns = ['number', 'saved', 'author', 'undoes', 'stage', 'level', 'finding'] as const;
    return db
      .all(query.selectFrom('revision').select(columns).where('document', '=', key).orderBy('number'))
      .map(revisionOf);
  }

  function goTo(number: number, base: number, notes: SaveNotes): Saved {
    const { document, summary } = revision(number);
    check(document);
    return saveUpon(base, document, { summary, ...notes });
  }

  return {
    key,
    head,
    revisions,
    revision,
    save(base, document, notes) {
      const plain = plainJson(migrate(kind, plainJson(document)));
      check(plain);
      return db.write(() => saveUpon(base, plain, notes));
    },
    restore: (number, notes) => db.write(() => goTo(number, head(), notes)),
    steps: () => stepsOf(revisions()),
    // What others changed since stays, unless it is the same thing: then it is a conflict like any other.
    takeBack: (number, author) => db.write(() => goTo(number - 1, number, { author, undoes: number })),
    adopt(revisions) {
      for (const { document, saved, ...notes } of revisions) add(document, notes, saved);
      const latest = revisions.at(-1);
      if (latest) options.saved(latest.document, latest.saved);
    },
  };
}

/** Undoing an undoing is doing it again: both are revisions, so the two stacks are read off the list of revisions. */
function stepsOf(revisions: readonly Revision[]): Steps {
  const done: number[] = [];
  const undone: number[] = [];
  for (const { number, undoes } of revisions) {
    if (undoes !== undefined && undoes === done.at(-1)) {
      done.pop();
      undone.push(number);
    } else if (undoes !== undefined && undoes === undone.at(-1)) {
      undone.pop();
      done.push(number);
    } else {
      done.push(number);
      undone.length = 0;
    }
  }
  // Before the first revision there is nothing to go back to.
  const undo = done.at(-1);
  return { undo: undo === 1 ? undefined : undo, redo: undone.at(-1) };
}

function conflict({ document, number }: Stored, conflicts: readonly Conflict[]): Saved {
  return { kind: 'conflict', theirs: document, revision: number, paths: conflicts.map(({ path }) => path), conflicts };
}

function passes(check: (document: Json) => void, document: Json): boolean {
  try {
    check(document);
    return true;
  } catch {
    return false;
  }
}

interface RevisionRow {
  readonly number: number;
  readonly saved: string;
  readonly author: string | null;
  readonly undoes: number | null;
  readonly stage: Stage | null;
  readonly level: Level | null;
  readonly finding: string | null;
}

function revisionOf(row: RevisionRow): Revision {
  const { number, saved } = row;
  return { number, saved, author: row.author ?? undefined, undoes: row.undoes ?? undefined, summary: summaryOf(row) };
}

export function summaryOf(row: Pick<RevisionRow, 'stage' | 'level' | 'finding'>): Summary {
  const worst = row.level === null ? undefined : { level: row.level, says: row.finding ?? '' };
  return { stage: row.stage ?? undefined, worst };
}

export function summaryColumns(summary: Summary | undefined): Pick<RevisionRow, 'stage' | 'level' | 'finding'> {
  const { stage, worst } = summary ?? {};
  return { stage: stage ?? null, level: worst?.level ?? null, finding: worst?.says ?? null };
}
