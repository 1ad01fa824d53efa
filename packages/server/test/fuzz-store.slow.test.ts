/** Whatever is sent to what keeps data: an answer or a refusal in words, nothing run, nothing lost. */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { placesIn, replaced, valueAt } from './document-places.ts';
import { answerOf, exampleDocument, jobDocument, picture } from './documents.ts';
import { openApp, own } from './test-app.ts';

const app = openApp();
afterAll(() => app.close());

const kept = jobDocument({ title: 'To be kept', notes: 'as they are' });
let hash = '';
beforeAll(async () => {
  await answerOf(await app.post('/api/jobs', JSON.stringify({ document: kept, id: 'kept' })), 201);
  ({ hash } = await answerOf(await app.post('/api/attachments?type=image/png', picture()), 201));
  const entries = [{ id: 'e', job: 'kept', at: '2026-03-01T09:30:00Z', kind: 'note' }];
  await answerOf(await app.post('/api/bench-log', JSON.stringify({ entries })));
});

/** The job, its log and its photograph are as they were. */
async function expectNothingLost(): Promise<void> {
  const { document } = await answerOf(await app.get('/api/jobs/kept/revisions/1'));
  expect(document).toEqual(kept);
  expect((await answerOf(await app.get('/api/jobs/kept/bench-log'))).entries[0]).toMatchObject({
    id: 'e',
    kind: 'note',
  });
  expect((await app.get(`/api/attachments/${hash}`)).status).toBe(200);
  expect((await answerOf(await app.get('/api/integrity?depth=thorough'))).problems).toEqual([]);
}

async function expectRefusal(response: Response): Promise<void> {
  const text = await response.text();
  expect(app.ownFaults()).toEqual([]);
  expect(response.status, text.slice(0, 200)).toBeGreaterThanOrEqual(400);
  expect(response.status, text.slice(0, 200)).toBeLessThan(500);
  expect(JSON.parse(text)).toMatchObject({ message: expect.stringMatching(/\S/), issues: expect.any(Array) });
}

/** An answer of any kind but a fault; never a page. */
async function expectAnswer(response: Response): Promise<void> {
  if (response.status >= 400) return expectRefusal(response);
  expect(app.ownFaults()).toEqual([]);
  expect(response.headers.get('content-type') ?? '').not.toMatch(/html/);
  expect(response.headers.get('x-content-type-options')).toBe('nosniff');
  await response.body?.cancel();
}

const json = [
  ['POST', '/api/jobs'],
  ['PUT', '/api/jobs/kept'],
  ['POST', '/api/jobs/kept/restore'],
  ['PUT', '/api/workshop'],
  ['POST', '/api/workshop/restore'],
  ['POST', '/api/bench-log'],
  ['POST', '/api/import'],
] as const;

const send = (method: string, path: string, body: BodyInit, headers: Record<string, string> = {}) =>
  method === 'PUT' || method === 'POST' ? request(method, path, body, headers) : app.send(method, path);

const request = (method: string, path: string, body: BodyInit, headers: Record<string, string>) =>
  app.ask(path, { method, body, headers: { host: own, 'content-type': 'application/json', ...headers } });

describe('fuzzed requests to what keeps data', () => {
  it.each(json)('%s %s refuses bodies of any text, any bytes and any JSON', async (method, path) => {
    const body = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc.uint8Array({ maxLength: 200 }).map((bytes) => new Uint8Array(bytes)),
      fc.json({ maxDepth: 5 }),
    );
    await fc.assert(
      fc.asyncProperty(body, async (sent) => expectRefusal(await send(method, path, sent))),
      { numRuns: 120 },
    );
    await expectNothingLost();
  });

  it.each(json)('%s %s takes fields of any kind in their places without a fault', async (method, path) => {
    const value = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.integer(),
      fc.constantFrom(
        'kept',
        '../kept',
        'x'.repeat(5000),
        1,
        2,
        1e15,
        -1,
        '2026-03-01T09:30:00Z',
        '9999999-01-01T00:00:00Z',
      ),
      fc.constantFrom<unknown>(kept, exampleDocument('bench-lathe.workshop.json'), [{ id: 'q', job: 'kept' }]),
    );
    const names = [
      'baseRevision',
      'document',
      'client',
      'undoes',
      'copyOf',
      'id',
      'revision',
      'entries',
      'title',
    ] as const;
    const fields = fc.dictionary(fc.constantFrom(...names), value, { maxKeys: 5 });
    await fc.assert(
      fc.asyncProperty(fields, async (sent) => expectAnswer(await send(method, path, JSON.stringify(sent)))),
      { numRuns: 120 },
    );
    await expectNothingLost();
  });

  it('saves with any one place of the job changed are taken or refused, and what was there before can be gone back to', async () => {
    const plunger = exampleDocument('plunger.job.json');
    await answerOf(await app.post('/api/jobs', JSON.stringify({ document: plunger, id: 'changed' })), 201);
    const place = fc.constantFrom(...placesIn(plunger));
    const value = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.constantFrom('__proto__', '<img src=x onerror=alert(1)>', '\u0000', '\ud800', '0', '1e9', '12 ±13', '40 zz99'),
    );
    await fc.assert(
      fc.asyncProperty(place, value, async (path, by) => {
        const { revision } = await answerOf(await app.get('/api/jobs/changed?only=document'));
        const body = JSON.stringify({ baseRevision: revision, document: replaced(plunger, path, by), client: 'fuzz' });
        const response = await send('PUT', '/api/jobs/changed', body);
        if (response.status !== 200) return expectRefusal(response);
        expect(app.ownFaults()).toEqual([]);
        expect((await app.get('/api/jobs/changed')).status).toBe(200);
      }),
      { numRuns: 120 },
    );
    expect((await answerOf(await app.get('/api/jobs/changed/revisions/1'))).document).toEqual(plunger);
    await expectNothingLost();
  });

  it('any path, query and header leads to an answer or a refusal', async () => {
    const word = fc.oneof(
      fc.webSegment(),
      fc.string({ unit: 'grapheme', maxLength: 40 }).map(encodeURIComponent),
      fc.constantFrom(
        '..',
        '%2e%2e',
        '..%2f..%2fetc%2fpasswd',
        '%00',
        'kept',
        'revisions',
        'bench-log',
        'export',
        '1',
        '%',
        '%zz',
      ),
    );
    const below = fc.array(word, { maxLength: 5 }).map((words) => words.join('/'));
    const method = fc.constantFrom('GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'HEAD');
    const under = fc.constantFrom('jobs', 'workshop', 'attachments', 'bench-log', 'ask', 'integrity', 'no');
    const header = fc.string({ unit: 'grapheme-ascii', maxLength: 60 }).map((text) => text.trim());
    await fc.assert(
      fc.asyncProperty(method, under, below, fc.webQueryParameters(), header, async (how, where, rest, query, text) => {
        // To remove the kept job is no fault: it is put back.
        const headers = { host: own, 'last-event-id': text, cookie: text, 'content-type': text };
        const path = `/api/${where}/${rest}`;
        const response = await app.ask(`${path}?${query}`, { method: how, headers });
        // A path that climbs out of /api leads to the page, or to nothing.
        const climbsOut = !new URL(path, `http://${own}`).pathname.startsWith('/api/');
        if (how === 'HEAD' || climbsOut) {
          expect(app.ownFaults()).toEqual([]);
          expect(response.status).toBeLessThan(500);
          await response.body?.cancel();
        } else await expectAnswer(response);
      }),
      { numRuns: 1500 },
    );
    await app.post('/api/jobs/kept/unbin', '{}');
    await expectNothingLost();
  });

  it('uploads of any bytes under any name and type are refused, or come back as exactly that kind of file', async () => {
    const starts = ['89504e470d0a1a0a', 'ffd8ff', '52494646000000005745425000', '524946460000000057415645'];
    const bytes = fc
      .tuple(fc.constantFrom('', ...starts), fc.uint8Array({ maxLength: 100 }))
      .map(([start, rest]) => new Uint8Array(Buffer.concat([Buffer.from(start, 'hex'), rest])));
    const type = fc.oneof(
      fc.constantFrom('image/png', 'image/jpeg', 'image/webp', 'audio/wav', 'text/html'),
      fc.string(),
    );
    const name = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('../../x', '..\\x', '/etc/passwd', 'x\u0000.png', 'CON'),
    );
    await fc.assert(
      fc.asyncProperty(bytes, type, name, async (content, kind, called) => {
        const query = new URLSearchParams({ type: kind, name: called });
        const response = await send('POST', `/api/attachments?${query}`, content);
        if (response.status !== 201) return expectRefusal(response);
        const back = await app.get(`/api/attachments/${(await answerOf(response, 201)).hash}`);
        expect(back.headers.get('content-type')).toBe(kind);
        expect(back.headers.get('content-disposition')).toMatch(/^inline; filename="[a-z0-9-]+"$/);
        expect(new Uint8Array(await back.arrayBuffer())).toEqual(content);
      }),
      { numRuns: 300 },
    );
    await expectNothingLost();
  });

  it('backups of any bytes, and a true one with any stretch of it changed, never leave less than was there', async () => {
    const backup = new Uint8Array(await (await app.get('/api/backup')).arrayBuffer());
    const stretch = fc.tuple(fc.nat(backup.length - 1), fc.uint8Array({ minLength: 1, maxLength: 4000 }));
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.uint8Array({ maxLength: 300 }), stretch), async (way) => {
        let body = new Uint8Array(0);
        if (way instanceof Uint8Array) body = new Uint8Array(way);
        else {
          const [at, bytes] = way;
          body = backup.slice();
          body.set(bytes.subarray(0, backup.length - at), at);
        }
        await expectAnswer(await send('POST', '/api/restore', body));
        await expectNothingLost();
      }),
      { numRuns: 25 },
    );
  });

  it.each([
    ['PUT', '/api/jobs/kept', 1_100_000],
    ['POST', '/api/jobs', 1_100_000],
    ['POST', '/api/bench-log', 1_100_000],
    ['POST', '/api/pair', 1_100_000],
    ['POST', '/api/attachments?type=image/png', 20_000_001],
  ])('%s %s refuses what is too large', async (method, path, size) => {
    const response = await send(method, path, new Uint8Array(size).fill(0x20));
    expect(response.status).toBe(413);
    await expectRefusal(response);
    await expectNothingLost();
  });

  it('text that would be hard to look through is looked through at once', async () => {
    for (const text of [
      '"\\'.repeat(260_000),
      '\\"'.repeat(260_000),
      '['.repeat(500_000),
      `"${'\\"'.repeat(260_000)}`,
    ]) {
      const began = performance.now();
      await expectRefusal(await send('POST', '/api/jobs', text));
      expect(performance.now() - began).toBeLessThan(1500);
    }
  });

  it('script in every place where a person writes is text in every answer', async () => {
    const script = '</title><script>alert(1)</script><img src=x onerror=alert(2)>';
    for (const file of ['plunger', 'gland-spindle', 'valve-guide-pin']) {
      const example = exampleDocument(`${file}.job.json`);
      for (const path of placesIn(example)) {
        if (typeof valueAt(example, path) !== 'string') continue;
        const body = JSON.stringify({ document: replaced(example, path, script) });
        const response = await send('POST', '/api/jobs', body);
        if (response.status !== 201) {
          await expectRefusal(response);
          continue;
        }
        const { id } = await answerOf(response, 201);
        const page = await answerOf(await app.get(`/api/jobs/${id}`));
        expect(page.drawing ?? '').not.toMatch(/<(script|img)/);
        const drawing = await app.get(`/api/jobs/${id}/drawing.svg`);
        if (drawing.status === 200) expect(await drawing.text()).not.toMatch(/<(script|img)/);
        const packet = await app.get(`/api/jobs/${id}/export`);
        expect(packet.headers.get('content-disposition')).toMatch(/^attachment; filename="[a-z0-9.-]+"$/);
        await packet.body?.cancel();
      }
    }
    expect(app.ownFaults()).toEqual([]);
    await expectNothingLost();
  });
});
