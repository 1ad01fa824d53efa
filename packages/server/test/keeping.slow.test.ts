import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { answerOf, jobDocument, picture } from './documents.ts';
import { openApp, type TestApp, type TestAppOptions } from './test-app.ts';

const running: TestApp[] = [];
const open = (options: TestAppOptions = { bare: true }): TestApp => {
  const app = openApp(options);
  running.push(app);
  return app;
};
afterEach(() => Promise.all(running.splice(0).map((app) => app.close())));

const bytesOf = async (response: Response) => {
  expect(response.status).toBe(200);
  return new Uint8Array(await response.arrayBuffer());
};

/** A job with two revisions, a bench entry and a photograph. */
async function filled(): Promise<TestApp> {
  const app = open();
  await answerOf(
    await app.post('/api/jobs', JSON.stringify({ document: jobDocument({ notes: 'one' }), id: 'pin' })),
    201,
  );
  const { hash } = await answerOf(await app.post('/api/attachments?name=a.png&type=image/png', picture()), 201);
  const document = jobDocument({ notes: `two, see ${hash}` });
  await answerOf(await app.put('/api/jobs/pin', { baseRevision: 1, document, client: 'desk' }));
  const entries = [{ id: 'e', job: 'pin', at: '2026-03-01T09:30:00Z', kind: 'measured', value: 1 }];
  await answerOf(await app.post('/api/bench-log', JSON.stringify({ entries })));
  return app;
}

async function expectFilled(app: TestApp, id = 'pin'): Promise<void> {
  const { document, revision } = await answerOf(await app.get(`/api/jobs/${id}?only=document`));
  expect(revision).toBe(2);
  const hash = /[0-9a-f]{64}/.exec(document.notes)?.[0] ?? '';
  expect(await bytesOf(await app.get(`/api/attachments/${hash}`))).toEqual(picture());
  expect((await answerOf(await app.get(`/api/jobs/${id}/bench-log`))).entries).toHaveLength(1);
  expect((await answerOf(await app.get('/api/integrity?depth=thorough'))).problems).toEqual([]);
}

/** A file is removed when it is closed, which may be a moment after its last byte was read. */
const expectNothingLeft = (app: TestApp) => expect.poll(() => readdirSync(join(app.folder, 'passing'))).toEqual([]);

describe('one job as one file', () => {
  it('goes to another store with revisions, bench log and photographs', async () => {
    const response = await (await filled()).get('/api/jobs/pin/export');
    expect(response.headers.get('content-disposition')).toContain('pin.sparewright.json');
    const file = await bytesOf(response);
    const other = open();
    const { id, document } = await answerOf(await other.post('/api/import', file), 201);
    expect(document.notes).toContain('two');
    await expectFilled(other, id);
    // Once more, it comes in beside the first.
    const again = await answerOf(await other.post('/api/import', file), 201);
    expect(again.id).not.toBe(id);
    await expectNothingLeft(other);
  });

  it.each(['', 'no archive', '{}', '[]', '{"sparewright":"job archive","version":2}', '['.repeat(1000)])(
    'is refused when it is none: %s',
    async (text) => {
      const app = open();
      await answerOf(await app.post('/api/import', text), 422);
      expect((await answerOf(await app.get('/api/jobs?limit=1'))).total).toBe(0);
      await expectNothingLeft(app);
    },
  );
});

describe('everything as one file', () => {
  it('comes back on another computer, in place of what is there, which is kept', async () => {
    const app = await filled();
    const response = await app.get('/api/backup');
    expect(response.headers.get('content-disposition')).toMatch(/sparewright-\d{4}-\d\d-\d\d\.backup/);
    const file = await bytesOf(response);
    expect(file.length).toBe(Number(response.headers.get('content-length')));
    const other = open();
    await answerOf(await other.post('/api/jobs', JSON.stringify({ document: jobDocument(), id: 'other' })), 201);
    expect(await answerOf(await other.post('/api/restore', file))).toMatchObject({
      problems: [],
      documents: 1,
      kept: true,
    });
    await expectFilled(other);
    await answerOf(await other.get('/api/jobs/other'), 404);
    expect(readdirSync(other.folder).some((name) => name.startsWith('sparewright.before-restore-'))).toBe(true);
    // And it can be worked in as before.
    await answerOf(
      await other.put('/api/jobs/pin', { baseRevision: 2, document: jobDocument({ notes: 'three' }), client: 'desk' }),
    );
    for (const one of [app, other]) await expectNothingLeft(one);
  });

  it('is refused when it is damaged or none, and what is there stays', async () => {
    const app = await filled();
    const file = await bytesOf(await app.get('/api/backup'));
    const damaged = file.slice();
    damaged.fill(0x55, Math.floor(damaged.length / 3), Math.floor((damaged.length * 2) / 3));
    for (const body of [damaged, file.slice(0, 5000), new Uint8Array(), picture(), new Uint8Array(100_000)]) {
      const { message } = await answerOf(await app.post('/api/restore', body), 422);
      expect(message).not.toContain(app.folder);
      await expectFilled(app);
    }
    await expectNothingLeft(app);
  });

  it('is made a second time while the first is on its way', async () => {
    const app = await filled();
    const [one, two] = await Promise.all([app.get('/api/backup'), app.get('/api/backup')]);
    expect((await bytesOf(one)).length).toBe((await bytesOf(two)).length);
    await expectNothingLeft(app);
  });

  it('leaves nothing behind when nobody wants it any more', async () => {
    const app = await filled();
    const response = await app.get('/api/backup');
    await response.body?.cancel();
    await expectNothingLeft(app);
    expect(existsSync(join(app.folder, 'sparewright.db'))).toBe(true);
  });
});

describe('whether the data is whole', () => {
  it('is said in numbers and sentences', async () => {
    const app = await filled();
    expect(await answerOf(await app.get('/api/integrity'))).toEqual({
      problems: [],
      documents: 1,
      revisions: 2,
      benchEntries: 1,
      attachments: 1,
    });
    await answerOf(await app.get('/api/integrity?depth=deep'), 422);
  });
});
