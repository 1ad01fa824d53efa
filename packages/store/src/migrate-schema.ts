/** Brings a database to the present version, a step at a time; a newer one is refused before anything is written. */
import { existsSync, statSync } from 'node:fs';
import { type Connection, connect } from './connection.ts';
import { schemaSteps } from './schema-steps.ts';
import { StoreError } from './store-error.ts';
import { query } from './tables.ts';

/** Marks the file as ours: `SPWR`. */
const applicationId = 0x53505752;

/**
 * Looks at a database file without writing: does nothing when there is none yet or it can be used.
 *
 * @throws StoreError when it belongs to another program or a newer one
 */
export function refuseForeign(path: string, steps = schemaSteps): void {
  if (!existsSync(path) || statSync(path).size === 0) return;
  const db = connect(path, { readonly: true });
  try {
    refuseUnfit(db, steps);
  } finally {
    db.close();
  }
}

/** @throws StoreError when the database is newer than the steps */
export function migrateSchema(db: Connection, steps = schemaSteps): void {
  if (versionOf(db) === steps.length) return;
  db.write(() => {
    // Another program may have done it, or more than it, while this one waited.
    refuseUnfit(db, steps);
    for (const [i, step] of steps.entries()) {
      if (i < versionOf(db)) continue;
      if (i === 0) {
        db.script(`PRAGMA application_id = ${applicationId}`);
        db.script('CREATE TABLE schema_version (version INTEGER PRIMARY KEY, since TEXT NOT NULL) STRICT');
      }
      db.script(step);
      db.run(query.insertInto('schema_version').values({ version: i + 1, since: new Date().toISOString() }));
    }
  });
}

function refuseUnfit(db: Connection, steps: readonly string[]): void {
  const version = versionOf(db);
  if (version > steps.length)
    throw new StoreError(
      'newer',
      `The database is of version ${version}, this program knows up to ${steps.length}: it was written by a newer program, which is needed to open it. Nothing was changed.`,
    );
  const hasTables = tablesOf(db).length > 0;
  if (hasTables && (version === 0 || db.column('PRAGMA application_id')[0] !== String(applicationId)))
    throw new StoreError('damaged', 'The file is the database of another program; nothing was changed.');
}

function versionOf(db: Connection): number {
  if (!tablesOf(db).includes('schema_version')) return 0;
  return db.first(query.selectFrom('schema_version').select((of) => of.fn.max('version').as('version')))?.version ?? 0;
}

function tablesOf(db: Connection): string[] {
  return db.column("SELECT name FROM sqlite_schema WHERE type = 'table'");
}
