import { expect, test } from 'vitest';
import { askedAndRead } from './asked-and-read.ts';

test('mean and scatter are those of the differences', () => {
  // GUM (JCGM 100:2008) H.2, first column: voltages 5.007, 4.994, 5.005, 4.990, 4.999 V: mean 4.9990, s of the mean 0.0032.
  const passes = [5.007, 4.994, 5.005, 4.99, 4.999].map((read) => ({ asked: 0, read }));
  const found = askedAndRead(passes);
  expect(found?.mean).toBeCloseTo(4.999, 4);
  expect((found?.scatter ?? 0) / Math.sqrt(5)).toBeCloseTo(0.0032, 4);
});

test('one pass has no scatter, and none has nothing', () => {
  expect(askedAndRead([{ asked: 12, read: 12.03 }])).toMatchObject({ passes: 1, scatter: undefined });
  expect(askedAndRead([])).toBeUndefined();
});
