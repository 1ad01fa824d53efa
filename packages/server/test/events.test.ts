import { afterEach, describe, expect, it } from 'vitest';
import { answerOf, exampleDocument, jobDocument } from './documents.ts';
import { openApp, type TestApp, type TestAppOptions } from './test-app.ts';

const running: TestApp[] = [];
const open = (options: TestAppOptions = {}): TestApp => {
  const app = openApp({ bare: true, ...options });
  running.push(app);
  return app;
};
afterEach(() => Promise.all(running.splice(0).map((app) => app.close())));

/** What a screen hears, read as the standard of server-sent events says: blocks of fields, an empty line after each. */
async function listen(app: TestApp, lastHeard?: string) {
  const response = await app.get('/api/events', lastHeard === undefined ? {} : { 'last-event-id': lastHeard });
  expect(response.status).toBe(200);
  expect(response.headers.get('content-type')).toBe('text/event-stream');
  const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader();
  if (!reader) throw new Error('no stream');
  let text = '';
  const blocks = async (wanted: (block: string) => boolean): Promise<string | undefined> => {
    for (;;) {
      const end = text.indexOf('\n\n');
      if (end >= 0) {
        const block = text.slice(0, end);
        text = text.slice(end + 2);
        if (wanted(block)) return block;
        continue;
      }
      const { done, value } = await reader.read();
      if (done) return undefined;
      text += value;
    }
  };
  const field = (block: string | undefined, name: string) =>
    new RegExp(`^${name}: (.*)$`, 'm').exec(block ?? '')?.[1] ?? '';
  return {
    /** The next event; undefined when the stream has ended. */
    async next() {
      const block = await blocks((b) => /^data:/m.test(b));
      return block && { event: field(block, 'id'), kind: field(block, 'event'), ...JSON.parse(field(block, 'data')) };
    },
    comment: () => blocks((b) => b.startsWith(':')),
    opening: async () => field(await blocks((b) => b.startsWith('retry')), 'id'),
    stop: () => reader.cancel(),
  };
}

const create = async (app: TestApp, id: string) =>
  answerOf(await app.post('/api/jobs', JSON.stringify({ document: jobDocument(), id })), 201);
const save = async (app: TestApp, id: string, baseRevision: number, client: string) =>
  answerOf(
    await app.put(`/api/jobs/${id}`, {
      baseRevision,
      document: jobDocument({ notes: `${client} ${baseRevision}` }),
      client,
    }),
  );

describe('a screen that listens', () => {
  it('hears of each change, by whom it was made, in their order', async () => {
    const app = open();
    const screen = await listen(app);
    await create(app, 'pin');
    await save(app, 'pin', 1, 'phone');
    await answerOf(
      await app.put('/api/workshop', {
        baseRevision: 0,
        document: exampleDocument('bench-lathe.workshop.json'),
        client: 'desk',
      }),
    );
    const entries = [{ id: 'e', job: 'pin', at: '2026-03-01T09:30:00Z', kind: 'note' }];
    await answerOf(await app.post('/api/bench-log', JSON.stringify({ entries })));
    await answerOf(await app.send('DELETE', '/api/jobs/pin'));
    expect(await screen.next()).toMatchObject({ kind: 'created', id: 'pin' });
    expect(await screen.next()).toMatchObject({ kind: 'saved', revision: 2, client: 'phone' });
    expect(await screen.next()).toMatchObject({ kind: 'workshop', revision: 1, client: 'desk' });
    expect(await screen.next()).toMatchObject({ kind: 'bench', job: 'pin' });
    expect(await screen.next()).toMatchObject({ kind: 'removed', id: 'pin' });
    await screen.stop();
  });

  it('hears nothing of a save that changed nothing, a refused one, or entries that were known', async () => {
    const app = open();
    await create(app, 'pin');
    await save(app, 'pin', 1, 'desk');
    const screen = await listen(app);
    await save(app, 'pin', 1, 'desk');
    await answerOf(
      await app.put('/api/jobs/pin', { baseRevision: 1, document: jobDocument({ notes: 'other' }), client: 'x' }),
      409,
    );
    await create(app, 'last');
    expect(await screen.next()).toMatchObject({ kind: 'created', id: 'last' });
    await screen.stop();
  });

  it('hears what it missed when it comes back with the id it heard last', async () => {
    const app = open();
    await create(app, 'pin');
    const first = await listen(app);
    const atOpening = await first.opening();
    await save(app, 'pin', 1, 'a');
    const heard = await first.next();
    await first.stop();
    await save(app, 'pin', 2, 'b');
    await save(app, 'pin', 3, 'c');
    const back = await listen(app, heard?.event);
    expect(await back.next()).toMatchObject({ kind: 'saved', client: 'b' });
    expect(await back.next()).toMatchObject({ kind: 'saved', client: 'c' });
    // One that was cut off before it heard anything knows from the opening where it was.
    const other = await listen(app, atOpening);
    for (const client of ['a', 'b', 'c']) expect(await other.next()).toMatchObject({ kind: 'saved', client });
    await back.stop();
    await other.stop();
  });

  it.each(['from-an-earlier-run-7', 'x\u00e9', '', 'a'.repeat(5000)])(
    'is told that it missed something when its last id means nothing here: %s',
    async (id) => {
      const app = open();
      await create(app, 'pin');
      const screen = await listen(app, id);
      expect(await screen.next()).toMatchObject({ kind: 'missed' });
      await screen.stop();
    },
  );

  it('gets a sign of life while nothing happens', async () => {
    const screen = await listen(open({ heartbeat: 20 }));
    expect(await screen.comment()).toContain('still here');
    expect(await screen.comment()).toContain('still here');
    await screen.stop();
  });

  it('is sent away when the server stops, and after a restore, to come back and ask anew', async () => {
    const app = open();
    await create(app, 'pin');
    const stopped = await listen(app);
    app.endEvents();
    expect(await stopped.next()).toBeUndefined();
    const screen = await listen(app);
    const id = await screen.opening();
    const backup = new Uint8Array(await (await app.get('/api/backup')).arrayBuffer());
    await answerOf(await app.post('/api/restore', backup));
    expect(await screen.next()).toBeUndefined();
    const back = await listen(app, id);
    expect(await back.next()).toMatchObject({ kind: 'missed' });
    await back.stop();
  });

  it('is one of two hundred at most', async () => {
    const app = open();
    const screens = [];
    for (let i = 0; i < 200; i++) screens.push(await listen(app));
    await answerOf(await app.get('/api/events'), 503);
    await screens[0]?.stop();
    await expect.poll(async () => (await app.get('/api/events')).status).toBe(200);
  });
});
