import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { jobDocument, plunger, temporaryFolder, temporaryStore } from '../test/temporary.ts';
import { connect } from './connection.ts';
import { databasePath } from './data-folder.ts';
import { migrateSchema } from './migrate-schema.ts';
import { openStore } from './open-store.ts';
import { pack } from './packed-json.ts';
import { schemaSteps } from './schema-steps.ts';
import { query } from './tables.ts';

const fingerprint = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex');

/** A database that a later program has taken one version further. */
function newerDatabase(folder: string): string {
  const path = databasePath(folder);
  const store = openStore({ folder });
  store.jobs.create(plunger, {});
  store.close();
  const db = connect(path);
  migrateSchema(db, [...schemaSteps, 'ALTER TABLE job ADD COLUMN colour TEXT']);
  db.close();
  return path;
}

describe('opening', () => {
  test('makes the folder, and one that was closed well holds only the database, the lock and the attachments', () => {
    const folder = join(temporaryFolder(), 'new', 'place');
    openStore({ folder }).close();
    expect(readdirSync(folder).toSorted()).toEqual(['attachments', 'sparewright.db', 'sparewright.lock']);
  });

  test('reports what it looked at', () => {
    const folder = temporaryFolder();
    const first = openStore({ folder });
    const { id } = first.jobs.create(plunger, {});
    first.jobs.save(id, 1, jobDocument(), {});
    first.close();
    expect(temporaryStore(folder).report).toEqual({
      problems: [],
      documents: 1,
      revisions: 2,
      benchEntries: 0,
      attachments: 0,
    });
  });

  test('a database of a newer program is refused in words and not touched', () => {
    const folder = temporaryFolder();
    const path = newerDatabase(folder);
    const before = fingerprint(path);
    expect(() => openStore({ folder })).toThrow(
      'The database is of version 2, this program knows up to 1: it was written by a newer program',
    );
    expect(fingerprint(path)).toBe(before);
  });

  test('a newer version that still lies in the log is seen too', () => {
    const folder = temporaryFolder();
    openStore({ folder }).close();
    const writer = connect(databasePath(folder));
    migrateSchema(writer, [...schemaSteps, 'CREATE TABLE later (n INTEGER)']);
    const before = fingerprint(databasePath(folder));
    expect(() => openStore({ folder })).toThrow('it was written by a newer program');
    expect(fingerprint(databasePath(folder))).toBe(before);
    writer.close();
  });

  test('a database of an earlier version is brought forward with what is in it', () => {
    const folder = temporaryFolder();
    const path = newerDatabase(folder);
    const db = connect(path);
    migrateSchema(db, [...schemaSteps, '-- done', "UPDATE job SET title = title || ', seen'"]);
    expect(db.column('SELECT title FROM job')).toEqual([`${plunger.title}, seen`]);
    expect(db.column('SELECT version FROM schema_version')).toEqual(['1', '2', '3']);
    db.close();
  });

  test('a step that fails leaves the version before it whole', () => {
    const folder = temporaryFolder();
    openStore({ folder }).close();
    const db = connect(databasePath(folder));
    expect(() => migrateSchema(db, [...schemaSteps, 'CREATE TABLE a (n INTEGER)', 'no such words'])).toThrow();
    db.close();
    expect(temporaryStore(folder).report.problems).toEqual([]);
  });

  test.each([
    ['text', 'This is a letter to my aunt, and it is long enough to be taken for a header of some kind.'],
    ['noise', Buffer.alloc(8192, 0x5a)],
  ])('a file that is no database is refused and not touched: %s', (_, content) => {
    const folder = temporaryFolder();
    writeFileSync(databasePath(folder), content);
    const before = fingerprint(databasePath(folder));
    expect(() => openStore({ folder })).toThrow('damaged or no database at all');
    expect(fingerprint(databasePath(folder))).toBe(before);
  });

  test('the database of another program is refused and not touched', () => {
    const folder = temporaryFolder();
    const db = connect(databasePath(folder));
    db.script('CREATE TABLE recipes (name TEXT)');
    db.close();
    const before = fingerprint(databasePath(folder));
    expect(() => openStore({ folder })).toThrow('the database of another program');
    expect(fingerprint(databasePath(folder))).toBe(before);
  });

  test('an overwritten page is found', () => {
    const folder = temporaryFolder();
    const store = openStore({ folder });
    for (let i = 0; i < 50; i++) store.jobs.create({ ...plunger, notes: String(Math.sqrt(i)).repeat(200) }, {});
    store.close();
    const bytes = readFileSync(databasePath(folder));
    bytes.fill(0xa5, bytes.length / 2, bytes.length / 2 + 8192);
    writeFileSync(databasePath(folder), bytes);
    expect(() => openStore({ folder })).toThrow(/damaged/);
  });

  test('a document that cannot be read any more is named, and the others stay in reach', () => {
    const folder = temporaryFolder();
    const store = temporaryStore(folder);
    store.jobs.create(plunger, {}, { id: 'good' });
    store.jobs.create(jobDocument(), {}, { id: 'bad' });
    store.jobs.create(jobDocument(), {}, { id: 'odd' });
    const db = connect(databasePath(folder));
    db.script('DROP TRIGGER revision_unchanged');
    db.run(
      query
        .updateTable('revision')
        .set({ content: Buffer.from('noise') })
        .where('document', '=', 2),
    );
    db.run(
      query
        .updateTable('revision')
        .set({ content: pack(jobDocument({ colour: 'red' })) })
        .where('document', '=', 3),
    );
    db.close();
    const { report, jobs, check } = temporaryStore(folder);
    expect(report.problems).toEqual([
      'job bad, revision 1: A document in the database cannot be read any more; restore a backup.',
    ]);
    expect(check('thorough').problems).toHaveLength(2);
    expect(jobs.get('good').document).toEqual(plunger);
  });

  test('a folder that cannot be used is refused in words', () => {
    const folder = temporaryFolder();
    mkdirSync(databasePath(folder));
    expect(() => openStore({ folder })).toThrow('cannot be read or written');
    const file = join(temporaryFolder(), 'letter.txt');
    writeFileSync(file, 'Dear aunt');
    expect(() => openStore({ folder: file })).toThrow('there is something else of that name');
    expect(() => openStore({ folder: join(file, 'data') })).toThrow('a part of its path is no folder');
  });
});
