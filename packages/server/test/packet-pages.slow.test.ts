import { gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { get } from './ask-app.ts';
import { answerOf } from './documents.ts';

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

test('what is not there is refused', async () => {
  await answerOf(await get('/api/jobs/gland-spindle/packet/0.svg'), 404);
  await answerOf(await get('/api/jobs/gland-spindle/packet/999.svg'), 404);
  await answerOf(await get('/api/jobs/gland-spindle/packet/1e9.svg'), 404);
  await answerOf(await get('/api/jobs/gland-spindle/packet?paper=A3'), 400);
  await answerOf(await get('/api/jobs/nobody/packet'), 404);
});
