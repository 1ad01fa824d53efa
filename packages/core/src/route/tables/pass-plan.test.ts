import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DomainError } from '../../errors.ts';
import { type Dial, slidePerDivision } from './dial.ts';
import { planPasses, shareOut } from './pass-plan.ts';

const work = fc.record({
  from: fc.double({ min: 5, max: 80, noNaN: true }),
  to: fc.double({ min: 5, max: 80, noNaN: true }),
  greatest: fc.double({ min: 0.05, max: 2, noNaN: true }),
  dial: fc.record({
    division: fc.constantFrom(0.01, 0.02, 0.05, 0.0254),
    perTurn: fc.constantFrom(1, 2.54, 4),
    reads: fc.constantFrom<Dial['reads'][]>('radius', 'diameter'),
  }),
});

test('passes come to within one division of the target and never past it, outside and in a bore', () => {
  fc.assert(
    fc.property(work, ({ from, to, greatest, dial }) => {
      const passes = planPasses(from, to, greatest, dial);
      const end = passes.at(-1)?.diameter ?? from;
      const left = from > to ? end - to : to - end;
      expect(left).toBeGreaterThanOrEqual(-1e-6);
      expect(left).toBeLessThan(2 * slidePerDivision(dial));
      // Depths sum to what the diameter has changed by.
      expect(2 * passes.reduce((sum, p) => sum + p.depth, 0)).toBeCloseTo(Math.abs(from - end), 9);
    }),
  );
});

test('no pass is deeper than asked for, and the last two are alike', () => {
  fc.assert(
    fc.property(work, ({ from, to, greatest, dial }) => {
      const depths = planPasses(from, to, greatest, dial).map((p) => p.depth);
      for (const depth of depths) expect(depth).toBeLessThanOrEqual(greatest + 1e-6);
      if (depths.length > 2) expect(depths.at(-1)).toBe(depths.at(-2));
    }),
  );
});

test('shares add up, differ by no more than one or two divisions, and there is no empty one', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 1, max: 900 }), (a, b) => {
      const [divisions, count] = [Math.max(a, b), Math.min(a, b)];
      const shares = shareOut(divisions, count);
      expect(shares).toHaveLength(count);
      expect(shares.reduce((sum, s) => sum + s, 0)).toBe(divisions);
      expect(Math.min(...shares)).toBeGreaterThanOrEqual(1);
      expect(Math.max(...shares)).toBeLessThanOrEqual(Math.ceil(divisions / count));
    }),
  );
});

test('less than a division to come off makes no pass', () => {
  expect(planPasses(20.01, 20, 0.3, { division: 0.02, perTurn: 1, reads: 'radius' })).toEqual([]);
});

test('a pass finer than a division is refused', () => {
  expect(() => planPasses(20, 19, 0.01, { division: 0.02, perTurn: 1, reads: 'radius' })).toThrow(DomainError);
});
