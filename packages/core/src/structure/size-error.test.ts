import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthTaken, forceThrough, onePass, passes } from './size-error.ts';
import { clamped, deflectionUnderUnitLoad } from './stepped-beam.ts';

test('with force in proportion to depth, each repeated pass leaves the share Kr c/(1 + Kr c) of what was left [error-copying]', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 800, noNaN: true }),
      fc.double({ min: 1e-5, max: 5e-3, noNaN: true }),
      (slope, c) => {
        const done = passes([6], [5.5, 5.5, 5.5], (a) => slope * a, [c]);
        const left = (slope * c) / (1 + slope * c);
        done.forEach((pass, i) => {
          expect(pass.diameterError[0]).toBeCloseTo(2 * 0.5 * left ** (i + 1), 5);
        });
      },
    ),
  );
});

test('work that does not give comes out as set', () => {
  expect(onePass([6, 6], 5.5, (a) => 900 * a ** 0.8, [0, 0]).diameterError).toEqual([0, 0]);
});

test('an edge that pushes harder than the setting can hold does not bite at all', () => {
  expect(depthTaken(0.01, (a) => 20 + 100 * a, 0.001)).toBe(0);
  expect(depthTaken(0.03, (a) => 20 + 100 * a, 0.001)).toBeGreaterThan(0);
});

test('a bar out of the chuck comes out larger towards its free end, and a spring pass brings the ends nearer', () => {
  const stations = [5, 15, 25, 35];
  const yielding = deflectionUnderUnitLoad(
    { sections: [{ from: 0, to: 40, outerDiameter: 10 }], youngsModulus: 193_000, poissonRatio: 0.29, chuck: clamped },
    stations,
  );
  const [first, spring] = passes([5.3, 5.3, 5.3, 5.3], [5, 5], (a) => 8 + 60 * a, yielding);
  const spread = (errors: readonly number[] = []) => Math.max(...errors) - Math.min(...errors);
  expect(first?.diameterError.toSorted((a, b) => a - b)).toEqual(first?.diameterError);
  expect(spread(spring?.diameterError)).toBeLessThan(spread(first?.diameterError));
});

describe('a force law through known points', () => {
  const law = forceThrough([
    { depth: 0.5, force: 30 },
    { depth: 0.1, force: 10 },
  ]);

  test('passes through them, and carries the last line on', () => {
    expect([0.1, 0.3, 0.5, 0.7].map(law).map((f) => Number(f.toFixed(9)))).toEqual([10, 20, 30, 40]);
  });

  test('keeps a force at no depth, as an edge does', () => {
    expect(law(0)).toBeCloseTo(5, 9);
  });

  test('refuses a force that falls with depth', () => {
    expect(() =>
      forceThrough([
        { depth: 0.1, force: 10 },
        { depth: 0.5, force: 5 },
      ]),
    ).toThrow('growing with depth');
  });
});
