import { gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { get } from './ask-app.ts';
import { answerOf } from './documents.ts';
import { openApp } from './test-app.ts';

test('the packet is answered page by page, packed or plain, on the paper asked for', async () => {
  const { pages, paper } = await answerOf(await get('/api/jobs/gland-spindle/packet'));
  expect(paper).toBe('Letter');
  expect(pages).toBeGreaterThan(5);
  const plain = await get('/api/jobs/gland-spindle/packet/1.svg');
  expect(plain.headers.get('content-type')).toContain('image/svg+xml');
  const text = await plain.text();
  expect(text).toMatch(/^<svg .*viewBox="0 0 612 792"/);
  const packed = await get('/api/jobs/gland-spindle/packet/1.svg', { 'accept-encoding': 'gzip' });
  expect(packed.headers.get('content-encoding')).toBe('gzip');
  expect(gunzipSync(await packed.arrayBuffer()).toString()).toBe(text);
  expect(await (await get('/api/jobs/gland-spindle/packet/1.svg?paper=A4')).text()).toContain('viewBox="0 0 595.2');
});

/** A whole picture of one grey dot, for the typesetter reads it to the end. */
const greyDot = new Uint8Array(
  Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGOoAAAAegB5s2G1ewAAAABJRU5ErkJggg==', 'base64'),
);

test('photographs of the job are on its last page', async () => {
  const app = openApp();
  const { hash } = await answerOf(await app.post('/api/attachments?name=a.png&type=image/png', greyDot), 201);
  const { document, revision } = await answerOf(await app.get('/api/jobs/plunger?only=document'));
  const photographs = [{ id: 'one', file: hash, shows: 'Scores along the working end' }];
  const body = { baseRevision: revision, document: { ...document, photographs }, client: 'test' };
  await answerOf(await app.put('/api/jobs/plunger', body));
  const { pages } = await answerOf(await app.get('/api/jobs/plunger/packet'));
  const last = await app.get(`/api/jobs/plunger/packet/${pages}.svg`);
  expect((await last.text()).match(/<image /g)?.length).toBe(1);
  await app.close();
});

test('what is not there is refused', async () => {
  await answerOf(await get('/api/jobs/gland-spindle/packet/0.svg'), 404);
  await answerOf(await get('/api/jobs/gland-spindle/packet/999.svg'), 404);
  await answerOf(await get('/api/jobs/gland-spindle/packet/1e9.svg'), 404);
  await answerOf(await get('/api/jobs/gland-spindle/packet?paper=A3'), 400);
  await answerOf(await get('/api/jobs/nobody/packet'), 404);
});
