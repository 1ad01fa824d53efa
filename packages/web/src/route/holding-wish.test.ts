import { expect, test } from 'vitest';
import { heldAsPlanned, heldSo } from './holding-wish.ts';

const job = { part: { name: 'pin' }, route: { firstEndOut: 'left', holdOn: 'head', count: 2 } };

test('a way takes the place of another, and leaves the other wishes of the route', () => {
  expect(heldSo(job, { firstEndOut: 'right', tailstock: true, hold: 'in the chuck' })).toEqual({
    part: { name: 'pin' },
    route: { firstEndOut: 'right', tailstock: true, hold: 'in the chuck', count: 2 },
  });
});

test('left to the planner, nothing is said of it any more', () => {
  expect(heldAsPlanned(job)).toEqual({ part: { name: 'pin' }, route: { count: 2 } });
});
