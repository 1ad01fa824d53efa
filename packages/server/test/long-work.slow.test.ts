import { readdirSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { connect } from '@sparewright/store/connection';
import { openStore } from '@sparewright/store/open-store';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { startServer } from '../src/start.ts';
import { places } from './places.ts';
import { temporaryFolder } from './temporary.ts';
import { openApp, type TestApp } from './test-app.ts';

let app: TestApp;
beforeEach(() => {
  app = openApp();
});
afterEach(async () => {
  await app.close();
});

const titled = async (title: string) => {
  const { document, revision } = await (await app.get('/api/jobs/plunger?only=document')).json();
  const body = { baseRevision: revision, document: { ...document, title }, client: 'test' };
  return app.put('/api/jobs/plunger', body);
};

/** Whether a promise has settled, as of each look. */
function watched<T>(promise: Promise<T>): () => boolean {
  let settled = false;
  const settle = () => {
    settled = true;
  };
  promise.then(settle, settle);
  return () => settled;
}

describe('while long work is done', () => {
  test('a packet is set, others save', async () => {
    const packet = app.get('/api/jobs/plunger/packet.pdf');
    const isSet = watched(packet);
    expect((await titled('Saved meanwhile')).status).toBe(200);
    expect(isSet()).toBe(false);
    const bytes = await (await packet).text();
    expect(bytes.slice(0, 5)).toBe('%PDF-');
  });

  test('a backup is looked through, others save, and what they saved is kept beside', async () => {
    const backup = new Uint8Array(await (await app.get('/api/backup')).arrayBuffer());
    const restore = app.post('/api/restore', backup);
    const isRestored = watched(restore);
    // The body is written to the disk first; then the thread has it.
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect((await titled('Saved meanwhile')).status).toBe(200);
    expect(isRestored()).toBe(false);
    expect(await (await restore).json()).toMatchObject({ problems: [], kept: true });
    const { document } = await (await app.get('/api/jobs/plunger?only=document')).json();
    expect(document.title).toBe('Plunger of an orchard sprayer pump');
    const [kept = ''] = readdirSync(app.folder).filter((name) => /before-restore.*\.db$/.test(name));
    const old = connect(join(app.folder, kept));
    expect(old.column('SELECT title FROM job')).toContain('Saved meanwhile');
    old.close();
    expect(readdirSync(app.folder).filter((name) => name.includes('unfinished'))).toEqual([]);
  });

  test('a second backup to be restored is told to wait', async () => {
    const backup = new Uint8Array(await (await app.get('/api/backup')).arrayBuffer());
    const answers = await Promise.all([1, 2].map(() => app.post('/api/restore', backup)));
    expect(answers.map((a) => a.status).toSorted()).toEqual([200, 503]);
  });

  test('a backup is made, and a job brought in, others save', async () => {
    const backup = app.get('/api/backup');
    const isMade = watched(backup);
    expect((await titled('Saved while the backup is made')).status).toBe(200);
    expect(isMade()).toBe(false);
    expect((await backup).headers.get('sparewright-problems')).toBe('0');
    const file = await (await app.get('/api/jobs/plunger/export')).text();
    const brought = app.post('/api/import', new TextEncoder().encode(file));
    const isIn = watched(brought);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect((await titled('Saved while a job is brought in')).status).toBe(200);
    expect(isIn()).toBe(false);
    const { id, document } = await (await brought).json();
    expect(id).not.toBe('plunger');
    expect(document.title).toBe('Saved while the backup is made');
  });

  test('an archive that will not do is refused with the place and what was expected', async () => {
    const archive = await (await app.get('/api/jobs/plunger/export')).json();
    archive.revisions.at(-1).document.hazard = 'steam';
    const answer = await app.post('/api/import', new TextEncoder().encode(JSON.stringify(archive)));
    expect(answer.status).toBe(422);
    expect((await answer.json()).issues).toEqual([expect.objectContaining({ path: 'hazard', value: '"steam"' })]);
  });

  test('what the thread refuses comes back in words', async () => {
    const answer = await app.post('/api/restore', new TextEncoder().encode('no backup'));
    expect(answer.status).toBe(422);
    expect((await answer.json()).message).toMatch(/damaged|no database/);
    expect((await app.get('/api/jobs/plunger/packet.pdf')).status).toBe(200);
  });
});

test('at a start, photographs that were never put into a job go after a day', async () => {
  const folder = temporaryFolder();
  const png = Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
    'base64',
  );
  const store = openStore({ folder: folder.path });
  const { hash } = store.attachments.put(png, { type: 'image/png', name: 'worn.png' });
  store.close();
  const start = () => startServer({ examples: places.examples, web: places.web, data: folder.path, port: 0 });
  await (await start()).close();
  const files = () => readdirSync(join(folder.path, 'attachments'));
  expect(files()).toEqual([hash]);
  // As if it had come two days ago.
  const database = connect(join(folder.path, 'sparewright.db'));
  database.script("UPDATE attachment SET added = '2020-01-01T00:00:00.000Z'");
  database.close();
  utimesSync(join(folder.path, 'attachments', hash), new Date('2020-01-01'), new Date('2020-01-01'));
  await (await start()).close();
  expect(files()).toEqual([]);
  folder.remove();
});
