import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DomainError } from '../errors.ts';
import { radians } from '../units/quantities.ts';
import { groovingForce } from './grooving.ts';
import { type ThreadPass, threadForce } from './threading.ts';

const cutData = { specificForce: 2000, exponent: 0.25 };
const pass = (before: number, after: number, more: Partial<ThreadPass> = {}): ThreadPass => ({
  before,
  after,
  includedAngle: radians(60),
  infeed: 'straight',
  rake: 0,
  edge: 'sharp',
  cutData,
  ...more,
});

describe('a pass of a thread', () => {
  test('takes its share of the V: all passes together take the whole', () => {
    const depth = fc.double({ min: 0.05, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(fc.array(depth, { minLength: 1, maxLength: 10 }), fc.constantFrom(55, 60, 47.5), (steps, angle) => {
        let [reached, area] = [0, 0];
        for (const step of steps) {
          area += threadForce(pass(reached, reached + step, { includedAngle: radians(angle) })).chipArea;
          reached += step;
        }
        // A triangle as deep as the thread, its base 2 a tan(α/2).
        expect(area).toBeCloseTo((reached * 2 * reached * Math.tan(radians(angle) / 2)) / 2, 9);
      }),
    );
  });

  test('by depths that grow as the square root of the pass, each takes the same area', () => {
    const areas = [1, 2, 3, 4].map((n) => threadForce(pass(0.4 * Math.sqrt(n - 1), 0.4 * Math.sqrt(n))).chipArea);
    for (const area of areas) expect(area).toBeCloseTo(areas[0] ?? 0, 12);
  });

  test('along a flank the chip is twice as thick on half the edge, and needs less force', () => {
    const [straight, flank] = [threadForce(pass(0.3, 0.4)), threadForce(pass(0.3, 0.4, { infeed: 'flank' }))];
    expect(flank.chipThickness / straight.chipThickness).toBeCloseTo(2, 12);
    expect(flank.cutting).toBeLessThan(straight.cutting);
    expect([straight.axial, flank.axial > 0]).toEqual([0, true]);
  });

  test('its edge opened flat pushes like a plunge as broad: the same law of force', () => {
    const made = threadForce(pass(0.3, 0.4));
    const plunge = groovingForce({ width: made.chipWidth, feed: made.chipThickness, rake: 0, edge: 'sharp', cutData });
    expect(made.cutting).toBeCloseTo(plunge.cutting, 9);
    expect(made.radial).toBeCloseTo(plunge.radial * 0.5, 9);
  });

  test.each([
    ['after', pass(0.3, 0.3)],
    ['before', pass(-0.1, 0.3)],
    ['includedAngle', pass(0, 0.3, { includedAngle: radians(90) })],
  ])('refuses %s out of range', (name, asked) => {
    expect(() => threadForce(asked)).toThrow(DomainError);
    expect(() => threadForce(asked)).toThrow(name);
  });
});
