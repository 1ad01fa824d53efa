import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import {
  arcRa,
  arcRt,
  expectedRa,
  feedForRt,
  parabolaRa,
  parabolaRt,
  pointedRt,
  springRt,
} from './turned-roughness.ts';

const cut = fc
  .tuple(fc.double({ min: 0.05, max: 5, noNaN: true }), fc.double({ min: 0.01, max: 1, noNaN: true }))
  .map(([noseRadius, share]) => ({ noseRadius, feed: share * noseRadius }));

/** Ra of the arc by adding up thin strips: an independent way. */
function strippedRa(feed: number, r: number): number {
  const strips = 20_000;
  const height = (i: number) => r - Math.sqrt(r ** 2 - (((i + 0.5) / strips - 0.5) * feed) ** 2);
  let mean = 0;
  for (let i = 0; i < strips; i++) mean += height(i) / strips;
  let ra = 0;
  for (let i = 0; i < strips; i++) ra += Math.abs(height(i) - mean) / strips;
  return 1000 * ra;
}

describe('the round nose', () => {
  test('leaves the heights and Ra of the reference, reckoned there by parabola, arc and numeric mean', () => {
    for (const row of referenceRows('surface', 'turned-finish-theoretical')) {
      const [r, f] = [Number(row.nose_radius_mm), Number(row.feed_mm_per_rev)];
      expect(parabolaRt(f, r)).toBeCloseTo(Number(row.rt_parabola_um), 3);
      expect(arcRt(f, r)).toBeCloseTo(Number(row.rt_circle_um), 3);
      expect(parabolaRa(f, r)).toBeCloseTo(Number(row.ra_parabola_um), 3);
      expect(arcRa(f, r)).toBeCloseTo(Number(row.ra_circle_numeric_um), 3);
    }
  });

  test('has the Ra that thin strips add up to', () => {
    fc.assert(
      fc.property(cut, ({ feed, noseRadius }) => {
        const stripped = strippedRa(feed, noseRadius);
        expect(Math.abs(arcRa(feed, noseRadius) - stripped)).toBeLessThan(1e-4 * stripped + 1e-9);
      }),
      { numRuns: 20 },
    );
  });

  test('takes the feeds that the insert maker prints for 8 µm, to his rounding of 0.01 mm [SVH]', ({ task }) => {
    const printed = [
      [0.8, 0.22],
      [1.2, 0.27],
      [4, 0.5],
      [5, 0.57],
      [6, 0.62],
    ] as const;
    for (const [r, f] of printed) expect(Math.abs(feedForRt(8, r) - f)).toBeLessThan(0.0075);
    expect(parabolaRt(0.2, 0.8)).toBeCloseTo(6.25, 6);
    countOutside(task, printed.length + 1);
  });

  test('leaves a parabola within 2 % of the arc up to half the radius, and 7 % low at the radius', () => {
    fc.assert(
      fc.property(cut, ({ feed, noseRadius }) => {
        const low = 1 - parabolaRt(feed, noseRadius) / arcRt(feed, noseRadius);
        expect(low).toBeGreaterThanOrEqual(-1e-12);
        expect(low).toBeLessThan(feed <= noseRadius / 2 ? 0.02 : 0.07);
      }),
    );
  });

  test('leaves finer work the smaller the feed and the larger the nose', () => {
    fc.assert(
      fc.property(cut, ({ feed, noseRadius }) => {
        expect(arcRt(feed / 2, noseRadius)).toBeLessThan(arcRt(feed, noseRadius));
        expect(arcRt(feed, 2 * noseRadius)).toBeLessThan(arcRt(feed, noseRadius));
        expect(feedForRt(parabolaRt(feed, noseRadius), noseRadius)).toBeCloseTo(feed, 9);
      }),
    );
  });

  test('refuses a feed beyond its reach', () => {
    expect(() => parabolaRt(0.5, 0.4)).toThrow('over 0 to 0.4 mm/rev');
    expect(() => arcRt(0.8, 0.4)).toThrow('under 0.8');
    expect(() => arcRt(0, 0.4)).toThrow('feed');
    expect(() => feedForRt(8, Number.NaN)).toThrow('noseRadius');
  });
});

test('a pointed tool at 45° and 45° leaves half the feed, a flat trailing edge nothing to speak of [by hand]', () => {
  expect(pointedRt(0.1, Math.PI / 4, Math.PI / 4)).toBeCloseTo(50, 9);
  expect(pointedRt(0.1, Math.PI / 2, 0.001)).toBeLessThan(0.11);
});

test('with metal sliding under the edge, a finer feed ends up rougher again', () => {
  expect(springRt(0.05, 0.4, 0)).toBeCloseTo(parabolaRt(0.05, 0.4), 12);
  // The minimum lies where f⁴ = 4 r² h², by setting the derivative to nought.
  const best = Math.sqrt(2 * 0.4 * 0.004);
  expect(springRt(best, 0.4, 0.004)).toBeLessThan(springRt(best * 1.1, 0.4, 0.004));
  expect(springRt(best, 0.4, 0.004)).toBeLessThan(springRt(best / 1.1, 0.4, 0.004));
});

test('what is expected is never finer than turning usually gets, nor finer than the geometry', () => {
  fc.assert(
    fc.property(cut, ({ feed, noseRadius }) => {
      const { theory, low, high, floor, atFloor } = expectedRa(feed, noseRadius);
      expect(low).toBeGreaterThanOrEqual(Math.max(floor, theory));
      expect(high).toBeGreaterThanOrEqual(low);
      expect(atFloor).toBe(low === floor && 1.5 * theory < floor);
    }),
  );
});
