import fc from 'fast-check';
import { expect, test } from 'vitest';
import { PriceQueue } from './price-queue.ts';

test('gives everything in the order of a stable sort by price', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 60 }), (prices) => {
      const things = prices.map((price, number) => ({ price, number }));
      const queue = new PriceQueue(things);
      expect(things.map(() => queue.next())).toEqual(things.toSorted((a, b) => a.price - b.price));
      expect(queue.next()).toBeUndefined();
    }),
  );
});
