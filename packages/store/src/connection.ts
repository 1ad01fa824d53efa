/**
 * One open database. Everything runs at once and in order: nothing of one request can come between two steps of another,
 * and a transaction can not be left half done by a promise that never settles.
 */
import Sqlite from 'better-sqlite3';
import type { Compilable } from 'kysely';
import { StoreError } from './store-error.ts';

export interface Connection {
  all<Row>(query: Compilable<Row>): Row[];
  first<Row>(query: Compilable<Row>): Row | undefined;
  /** @returns how many rows it changed */
  run(query: Compilable<unknown>): number;
  /** Takes the right to write first, so that what is read inside is what is written upon. */
  write<T>(change: () => T): T;
  /** Plain SQL that answers with one column; of several the first. */
  column(sql: string): string[];
  script(sql: string): void;
  backup(path: string): Promise<unknown>;
  close(): void;
}

export interface ConnectOptions {
  readonly readonly?: boolean;
  /** How long to wait for another program that is writing [ms]. */
  readonly patience?: number;
}

/** @throws StoreError when the file is no database or cannot be opened */
export function connect(path: string, options: ConnectOptions = {}): Connection {
  const { readonly = false, patience = 5000 } = options;
  return worded(() => wrap(new Sqlite(path, { readonly, fileMustExist: readonly, timeout: patience })));
}

const allPages = 0x7fff_ffff;

function wrap(db: Sqlite.Database): Connection {
  const prepared = new Map<string, Sqlite.Statement<unknown[]>>();
  const statement = (sql: string) => {
    const known = prepared.get(sql) ?? db.prepare<unknown[]>(sql);
    prepared.set(sql, known);
    return known;
  };
  return {
    all: <Row>(query: Compilable<Row>) => {
      const { sql, parameters } = query.compile();
      return worded(() => db.prepare<unknown[], Row>(sql).all(...parameters));
    },
    first: <Row>(query: Compilable<Row>) => {
      const { sql, parameters } = query.compile();
      return worded(() => db.prepare<unknown[], Row>(sql).get(...parameters));
    },
    run: (query) => {
      const { sql, parameters } = query.compile();
      return worded(() => statement(sql).run(...parameters).changes);
    },
    write: (change) => worded(() => (db.inTransaction ? change() : db.transaction(change).immediate())),
    column: (sql) => worded(() => db.prepare<[], unknown>(sql).pluck().all().map(String)),
    script: (sql) => worded(() => db.exec(sql)),
    // In one go, for it would begin anew with every write that somebody else makes meanwhile.
    backup: (path) =>
      db.backup(path, { progress: () => allPages }).catch((error: unknown) => {
        throw inWords(error);
      }),
    close: () => db.close(),
  };
}

const wordings: readonly (readonly [RegExp, ConstructorParameters<typeof StoreError>])[] = [
  [/^SQLITE_(BUSY|LOCKED)/, ['busy', 'Another program is using the data; nothing was changed. Try again in a moment.']],
  [/^SQLITE_(NOTADB|CORRUPT)/, ['damaged', 'The database is damaged or no database at all; nothing was changed.']],
  [/^SQLITE_FULL/, ['disk', 'The disk is full; nothing was saved.']],
  [/^SQLITE_(IOERR|CANTOPEN|READONLY|PERM)/, ['disk', 'The database cannot be read or written; nothing was saved.']],
];

function worded<T>(action: () => T): T {
  try {
    return action();
  } catch (error) {
    throw inWords(error);
  }
}

/** Errors of the database in words; a mistake of this program stays what it is. */
function inWords(error: unknown): unknown {
  const code = error instanceof Sqlite.SqliteError ? error.code : '';
  const found = wordings.find(([pattern]) => pattern.test(code));
  return found ? new StoreError(...found[1]) : error;
}
