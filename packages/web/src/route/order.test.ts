import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canMove, orderWith } from './order.ts';

const operations = ['face', 'drill', 'rough', 'groove', 'thread'].map((id) => ({ id, setup: 'first' }));
const second = { id: 'back', setup: 'second' };

test('a moved operation is named with the two it now stands between', () => {
  expect(orderWith(operations, [], 3, 1)).toEqual(['face', 'groove', 'drill']);
  expect(orderWith(operations, [], 0, 1)).toEqual(['drill', 'face', 'rough']);
});

test('keeping one where it is names its neighbours, of its own setup only', () => {
  expect(orderWith([...operations, second], [], 4, 4)).toEqual(['groove', 'thread']);
  expect(orderWith([...operations, second], [], 5, 5)).toEqual(['back']);
});

test('what was wished before stays, in the order in which it stands; unknown ids are not lost', () => {
  expect(orderWith(operations, ['face', 'thread', 'gone'], 2, 1)).toEqual(['face', 'rough', 'drill', 'thread', 'gone']);
});

test('an operation does not leave its setup, nor the list', () => {
  const all = [...operations, second];
  expect([canMove(all, 4, 5), canMove(all, 0, -1), canMove(all, 5, 6), canMove(all, 1, 2)]).toEqual([
    false,
    false,
    false,
    true,
  ]);
});

test('whatever is moved, the wish names each operation once and puts the moved one where it was put', () => {
  fc.assert(
    fc.property(fc.nat(4), fc.nat(4), fc.subarray(operations.map((o) => o.id)), (from, to, order) => {
      const wish = orderWith(operations, order, from, to);
      expect(new Set(wish).size).toBe(wish.length);
      const others = operations.filter((_, i) => i !== from).map((o) => o.id);
      const id = operations[from]?.id ?? '';
      const at = wish.indexOf(id);
      expect(others.indexOf(wish[at - 1] ?? '')).toBe(to - 1);
      expect(wish[at + 1]).toBe(others[to]);
    }),
  );
});
