import { appendFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { jobDocument, picture, plunger, temporaryFolder, temporaryStore } from '../test/temporary.ts';
import { connect } from './connection.ts';
import { databasePath } from './data-folder.ts';
import { openStore } from './open-store.ts';
import { restoreBackup } from './restore.ts';

describe('a backup', () => {
  test('taken while others save is of one moment', async () => {
    const store = temporaryStore();
    const { id } = store.jobs.create(jobDocument({ title: '0' }), {});
    const path = join(temporaryFolder(), 'all.backup');
    const backup = store.backup(path);
    for (let i = 1; i <= 20; i++) {
      store.jobs.save(id, i, jobDocument({ title: String(i) }), {});
      await new Promise((resolve) => setImmediate(resolve));
    }
    await backup;
    const folder = temporaryFolder();
    expect(restoreBackup({ from: path, folder }).report.problems).toEqual([]);
    const restored = temporaryStore(folder).jobs.get(id);
    expect(restored.document).toEqual(jobDocument({ title: String(restored.number - 1) }));
  });

  test('never replaces a file', async () => {
    const store = temporaryStore();
    const path = join(temporaryFolder(), 'letter.txt');
    writeFileSync(path, 'Dear aunt');
    await expect(store.backup(path)).rejects.toThrow('choose another name');
    await expect(store.backup(join(path, 'x', 'y'))).rejects.toThrow('There is no folder');
    expect(readFileSync(path, 'utf8')).toBe('Dear aunt');
  });

  test('says which photograph was lost already, and saves the rest', async () => {
    const folder = temporaryFolder();
    const store = temporaryStore(folder);
    const { hash } = store.attachments.put(picture(), { type: 'image/png', name: 'worn.png' });
    store.jobs.create(plunger, {});
    writeFileSync(join(folder, 'attachments', hash), 'x');
    const path = join(temporaryFolder(), 'all.backup');
    const { problems, jobs, attachments } = await store.backup(path);
    expect({ jobs, attachments }).toEqual({ jobs: 1, attachments: 0 });
    expect(problems.join()).toContain('attachment worn.png');
    const target = temporaryFolder();
    expect(restoreBackup({ from: path, folder: target }).report.problems.join()).toContain('attachment worn.png');
  });
});

describe('restoring', () => {
  /** A backup of one job, and a folder with another. */
  async function scene() {
    const store = temporaryStore();
    store.jobs.create(plunger, {}, { id: 'saved' });
    const { hash } = store.attachments.put(picture(), { type: 'image/png', name: 'a.png' });
    store.attachments.link('saved', hash);
    const from = join(temporaryFolder(), 'all.backup');
    await store.backup(from);
    const folder = temporaryFolder();
    const present = openStore({ folder });
    present.jobs.create(jobDocument(), {}, { id: 'present' });
    return { from, folder, present };
  }

  const ids = (folder: string) => {
    const store = openStore({ folder });
    try {
      return store.jobs.list({ limit: 9, offset: 0 }).jobs.map(({ id }) => id);
    } finally {
      store.close();
    }
  };

  test('keeps the database that was there', async () => {
    const { from, folder, present } = await scene();
    present.close();
    const { kept = '' } = restoreBackup({ from, folder });
    expect(ids(folder)).toEqual(['saved']);
    const old = connect(kept, { readonly: true });
    expect(old.column('SELECT id FROM document')).toEqual(['present']);
    old.close();
  });

  test('does not happen under the feet of a program that has the folder open', async () => {
    const { from, folder, present } = await scene();
    expect(() => restoreBackup({ from, folder })).toThrow('Another Sparewright has the data folder open');
    present.close();
    expect(ids(folder)).toEqual(['present']);
  });

  test.each([
    ['cut short', (bytes: Buffer) => bytes.subarray(0, bytes.length - 5000)],
    ['overwritten in the middle', (bytes: Buffer) => bytes.fill(0x5a, bytes.length / 2, bytes.length / 2 + 9000)],
    [
      'with a changed photograph',
      (bytes: Buffer) => {
        bytes.write('b', bytes.indexOf('a dot of shade'));
        return bytes;
      },
    ],
    ['that is no database', () => Buffer.from('Dear aunt')],
  ])('a backup %s is refused, and what was there stays', async (_, damage) => {
    const { from, folder, present } = await scene();
    present.close();
    writeFileSync(from, damage(readFileSync(from)));
    const before = readdirSync(folder);
    expect(() => restoreBackup({ from, folder })).toThrow(/damaged/);
    expect(ids(folder)).toEqual(['present']);
    expect(readdirSync(folder)).toEqual(before);
  });

  test('a plain database is no backup, for its photographs are elsewhere', async () => {
    const { folder, present } = await scene();
    present.close();
    const target = temporaryFolder();
    expect(() => restoreBackup({ from: databasePath(folder), folder: target })).toThrow('no backup');
    expect(existsSync(databasePath(target))).toBe(false);
    expect(() => restoreBackup({ from: join(target, 'none'), folder: target })).toThrow('There is no file');
  });

  test('replaces a database that is damaged and cannot be opened, and keeps that too', async () => {
    const { from, folder, present } = await scene();
    present.close();
    writeFileSync(databasePath(folder), Buffer.alloc(9000, 1));
    appendFileSync(`${databasePath(folder)}-wal`, 'left over');
    const { kept = '' } = restoreBackup({ from, folder });
    expect(ids(folder)).toEqual(['saved']);
    expect(readFileSync(kept)).toEqual(Buffer.alloc(9000, 1));
    expect(readFileSync(`${kept}-wal`, 'utf8')).toBe('left over');
  });
});
