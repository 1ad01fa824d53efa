import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerOf, jobDocument } from './documents.ts';
import { openApp } from './test-app.ts';

const app = openApp({ bare: true });
afterAll(() => app.close());
beforeAll(async () => {
  await answerOf(await app.post('/api/jobs', JSON.stringify({ document: jobDocument(), id: 'pin' })), 201);
});

const entry = (id: string, changes: object = {}) => ({
  id,
  job: 'pin',
  at: '2026-03-01T09:30:00Z',
  kind: 'measured',
  value: 11.98,
  ...changes,
});
const log = async (...entries: object[]) => answerOf(await app.post('/api/bench-log', JSON.stringify({ entries })));
const listed = async (query = '') => (await answerOf(await app.get(`/api/jobs/pin/bench-log${query}`))).entries;

describe('the bench log', () => {
  it('takes entries once, however often they are sent', async () => {
    expect(await log(entry('a'), entry('b'))).toEqual({ accepted: ['a', 'b'], known: [], refused: [] });
    expect(await log(entry('b'), entry('c'))).toEqual({ accepted: ['c'], known: ['b'], refused: [] });
    const entries = await listed();
    expect(entries.map((e: { id: string }) => e.id)).toEqual(['a', 'b', 'c']);
    expect(entries[0]).toMatchObject({ kind: 'measured', value: 11.98, at: '2026-03-01T09:30:00Z' });
    expect(await listed(`?after=${entries[1].sequence}`)).toEqual([entries[2]]);
  });

  it('keeps an entry as it was and says so when another comes under its id', async () => {
    await log(entry('d'));
    const { refused } = await log(entry('d', { value: 12 }));
    expect(refused).toEqual([{ id: 'd', why: expect.stringContaining('something else') }]);
    expect((await listed()).find((e: { id: string }) => e.id === 'd').value).toBe(11.98);
  });

  it('takes what is sound and says of the rest why it is not', async () => {
    const { accepted, refused } = await log(entry('e'), entry('f', { job: 'none' }), entry('g', { at: 'today' }));
    expect(accepted).toEqual(['e']);
    expect(refused.map((r: { id: string }) => r.id)).toEqual(['f', 'g']);
  });

  it.each([
    {},
    { entries: [] },
    { entries: [{ id: 'x' }] },
    { entries: 'all' },
    { entries: Array(501).fill(entry('x')) },
  ])('refuses what holds no entries', async (body) => {
    await answerOf(await app.post('/api/bench-log', JSON.stringify(body)), 422);
  });

  it('is not there for a job that is not', async () => {
    await answerOf(await app.get('/api/jobs/none/bench-log'), 404);
  });
});
