import { afterEach, expect, test, vi } from 'vitest';
import { listJobs } from './ask-server.ts';

afterEach(() => vi.unstubAllGlobals());

/** A server with so many jobs, that lists at most 200 at a time. */
function serverWith(total: number): string[] {
  const asked: string[] = [];
  vi.stubGlobal('fetch', (address: string) => {
    const query = new URLSearchParams(address.split('?')[1]);
    const [limit, offset] = [Number(query.get('limit')), Number(query.get('offset'))];
    if (limit < 1 || limit > 200) return Promise.resolve(Response.json({ message: 'limit' }, { status: 422 }));
    asked.push(`${offset}+${limit}`);
    const jobs = Array.from({ length: Math.max(0, Math.min(limit, total - offset)) }, (_, i) => ({
      id: `${offset + i}`,
    }));
    return Promise.resolve(Response.json({ total, jobs }));
  });
  return asked;
}

test.each([
  [60, 1000, ['0+60']],
  [450, 1000, ['0+200', '200+200', '400+50']],
  [600, 430, ['0+200', '200+200', '400+200']],
  [60, 0, ['0+60']],
])('%i jobs of %i are asked for as %j', async (most, total, requests) => {
  const asked = serverWith(total);
  const list = await listJobs('', most, new AbortController().signal);
  expect(asked).toEqual(requests);
  expect(list.total).toBe(total);
  expect(list.jobs.map(({ id }) => Number(id))).toEqual(Array.from({ length: Math.min(most, total) }, (_, i) => i));
});
