import type { Appended, NewEntry } from '@sparewright/store/bench-log';
import { expect, test } from 'vitest';
import { together } from '../src/together.ts';

const entry = (id: string): NewEntry => ({ id, job: 'pin', at: '2026-03-01T09:30:00Z', content: {} });
const added = ({ id }: NewEntry): Appended => ({ id, outcome: 'added' });

test('what comes at the same moment is written in one go, and each hears of its own', async () => {
  const written: string[][] = [];
  const append = together((entries) => {
    written.push(entries.map(({ id }) => id));
    return entries.map(added);
  });
  const answers = await Promise.all([append([entry('a')]), append([entry('b'), entry('c')]), append([entry('d')])]);
  expect(written).toEqual([['a', 'b', 'c', 'd']]);
  expect(answers.map((one) => one.map(({ id }) => id))).toEqual([['a'], ['b', 'c'], ['d']]);
  await append([entry('e')]);
  expect(written).toHaveLength(2);
});

test('what one of them breaks off does not keep the others from being written', async () => {
  const append = together((entries) => {
    if (entries.some(({ id }) => id === 'bad')) throw new Error('no such luck');
    return entries.map(added);
  });
  const [good, bad] = await Promise.allSettled([append([entry('a')]), append([entry('bad')])]);
  expect(good).toEqual({ status: 'fulfilled', value: [{ id: 'a', outcome: 'added' }] });
  expect(bad?.status).toBe('rejected');
});
