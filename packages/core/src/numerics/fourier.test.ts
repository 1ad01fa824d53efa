import fc from 'fast-check';
import { expect, test } from 'vitest';
import { powerSpectrum } from './fourier.ts';

/** The definition, term by term. */
function directly(x: readonly number[], k: number): number {
  let [re, im] = [0, 0];
  for (const [n, value] of x.entries()) {
    re += value * Math.cos((2 * Math.PI * k * n) / x.length);
    im -= value * Math.sin((2 * Math.PI * k * n) / x.length);
  }
  return re ** 2 + im ** 2;
}

test('is what its definition says, for any values', () => {
  const some = fc.integer({ min: 1, max: 7 }).chain((log) => {
    const n = 2 ** log;
    return fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: n, maxLength: n });
  });
  fc.assert(
    fc.property(some, (x) => {
      const found = powerSpectrum(x);
      const whole = x.reduce((sum, v) => sum + v * v, 0) * x.length;
      expect(found.length).toBe(x.length / 2 + 1);
      for (const [k, p] of found.entries())
        expect(Math.abs(p - directly(x, k))).toBeLessThanOrEqual(1e-9 * whole + 1e-9);
    }),
    { numRuns: 60 },
  );
});

test('refuses any other number of values', () => {
  expect(() => powerSpectrum([1, 2, 3])).toThrow('power of two');
});
