import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DomainError } from '../../errors.ts';
import { degrees } from '../../units/quantities.ts';
import { degreesMinutes } from './cone-setting.ts';
import { alongForDepth, closestLimits, dialServes, fineInfeed, fineTable, setOverForInfeed } from './fine-infeed.ts';

const topSlide = { division: 0.02, perTurn: 2, reads: 'travel' } as const;

test('a top slide set over 5° 44′ feeds a tenth of its travel, at 30° a half [table of sines: sin 5° 44′ = 0.0999]', () => {
  expect(degreesMinutes(setOverForInfeed(0.002, 0.02))).toBe('5° 44′');
  expect(degrees(setOverForInfeed(0.01, 0.02))).toBeCloseTo(30, 9);
});

test('infeed and movement along the work are the sides of a right triangle under the travel', () => {
  const size = fc.double({ min: 0.001, max: 1, noNaN: true });
  fc.assert(
    fc.property(size, size, (a, b) => {
      const [depth, travel] = [Math.min(a, b), Math.max(a, b)];
      if (depth === travel) return;
      const along = alongForDepth(depth, setOverForInfeed(depth, travel));
      expect(Math.hypot(along, depth)).toBeCloseTo(travel, 9);
    }),
  );
});

test('an infeed finer than the limits is chosen, as coarse as will do', () => {
  // A tenth of 0.02 mm takes 0.004 mm off the diameter: a quarter of 0.016 mm.
  expect(fineInfeed(topSlide, 0.016)?.oneIn).toBe(10);
  expect(fineInfeed(topSlide, 0.0159)?.oneIn).toBe(20);
  expect(fineInfeed(topSlide, closestLimits(topSlide))?.oneIn).toBe(50);
  expect(fineInfeed(topSlide, 0.99 * closestLimits(topSlide))).toBeUndefined();
});

test('a cross slide of 0.02 mm on the radius serves limits of 0.08 mm, one that reads the diameter those of 0.04 mm', () => {
  expect(dialServes({ ...topSlide, reads: 'radius' }, 0.08)).toBe(true);
  expect(dialServes({ ...topSlide, reads: 'radius' }, 0.079)).toBe(false);
  expect(dialServes({ ...topSlide, reads: 'diameter' }, 0.04)).toBe(true);
});

test('the last pass ends at or short of the target by less than one fine division, whatever was measured', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 4, max: 40, noNaN: true }),
      fc.double({ min: 0.06, max: 0.4, noNaN: true }),
      fc.constantFrom('outside' as const, 'bore' as const),
      fc.double({ min: 0.004, max: 0.05, noNaN: true }),
      (target, left, where, tolerance) => {
        const fine = fineInfeed(topSlide, tolerance);
        if (!fine) return;
        const sign = where === 'outside' ? 1 : -1;
        const table = fineTable({
          id: 't',
          operation: 'o',
          title: 'last',
          expected: target + sign * left,
          target,
          tolerance,
          where,
          topSlide,
          fine,
          leastDepth: 0.005,
        });
        expect(table.rows.length).toBeGreaterThan(2);
        for (const row of table.rows) {
          const short = sign * (Number(row.diameter) - target);
          expect(short).toBeGreaterThan(-1e-6);
          expect(short).toBeLessThan(2 * fine.infeed + 1e-6);
          const divisions = 100 * Number(row.turns) + Number(row.divisions);
          expect(sign * (Number(row.measured) - Number(row.diameter))).toBeCloseTo(2 * divisions * fine.infeed, 9);
        }
      },
    ),
  );
});

test('an infeed larger than the division, or none, is refused', () => {
  expect(() => setOverForInfeed(0.03, 0.02)).toThrow(DomainError);
  expect(() => setOverForInfeed(0, 0.02)).toThrow(DomainError);
  expect(() => alongForDepth(0.01, 0)).toThrow(DomainError);
});
