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

test('gives rows of ever dearer things in the order of a stable sort of them all', () => {
  const row = fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(fc.array(row, { maxLength: 12 }), (steps) => {
      // Prices of one row differ, and no two rows share one, so that there is one right order.
      const rows = steps.map((row, number) => {
        let sum = number / 100;
        return row.map((step) => {
          sum += step + 1;
          return sum;
        });
      });
      const queue = new PriceQueue(
        rows.map((prices) => ({ prices, at: 0, price: prices[0] ?? 0 })),
        ({ prices, at }) => {
          const price = prices[at + 1];
          return price === undefined ? undefined : { prices, at: at + 1, price };
        },
      );
      const all = rows.flat().toSorted((a, b) => a - b);
      expect(all.map(() => queue.next()?.price)).toEqual(all);
      expect(queue.next()).toBeUndefined();
    }),
  );
});
