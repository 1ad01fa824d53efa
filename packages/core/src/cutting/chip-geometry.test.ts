import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { degrees, radians } from '../units/quantities.ts';
import { chipGeometry, enteringAngle } from './chip-geometry.ts';

describe('round inserts meet the surface as the maker prints [SVH]', () => {
  for (const row of referenceRows('cutting', 'chip-geometry-check')) {
    test(`${row.id}: ${row.inputs}, ${row.quantity} ${row.published}`, ({ task }) => {
      const depthShare = Number(row.inputs?.split('=')[1]);
      // ap/iC, and the nose radius is half of iC.
      const angle = enteringAngle(2 * depthShare, 1);
      const wanted = /h=([\d.]+)/.exec(row.quantity ?? '');
      const published = Number(row.published);
      if (row.unit === 'deg') expect(Math.abs(degrees(angle) - published)).toBeLessThanOrEqual(0.5);
      else if (wanted) expect(Math.abs(Number(wanted[1]) / Math.sin(angle) - published)).toBeLessThanOrEqual(0.01);
      else expect(Math.abs(1 / Math.sin(angle) - published)).toBeLessThanOrEqual(0.0101);
      countOutside(task, 1);
    });
  }
});

test('without a nose radius the chip is a/sin κ broad and f sin κ thick [SVT; GATE15 row F023]', ({ task }) => {
  const chip = chipGeometry({ depth: 2, feed: 0.2, noseRadius: 0, approachAngle: radians(30) });
  expect(chip.chipThickness).toBeCloseTo(0.1, 12); // F023: 0.1 mm at a side cutting edge angle of 60°
  expect(chip.chipWidth).toBeCloseTo(4, 12);
  expect(degrees(chip.effectiveApproach)).toBeCloseTo(30, 9);
  countOutside(task, 1);
});

const anyCut = fc.record({
  depth: fc.double({ min: 0.01, max: 3, noNaN: true }),
  feed: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
  noseRadius: fc.double({ min: 0.1, max: 1.2, noNaN: true }),
  approachAngle: fc.double({ min: radians(15), max: radians(107), noNaN: true }),
});

test('the edge engaged is as long as the outline of the cutter walked in small steps', () => {
  fc.assert(
    fc.property(anyCut, (cut) => {
      const { depth, feed, noseRadius: r, approachAngle: kappa } = cut;
      const behind = Math.min(Math.asin(Math.min(1, feed / (2 * r))), Math.acos(Math.max(-1, 1 - depth / r)), kappa);
      // Walk along the outline by angle on the nose, then along the straight edge, until the depth is reached.
      const steps = 20_000;
      let [length, x, y] = [0, -r * Math.sin(behind), r * (1 - Math.cos(behind))];
      const start = { x, y };
      for (let i = 0; i < steps; i++) {
        const next = -behind + ((kappa + behind) * (i + 1)) / steps;
        const [nx, ny] = [r * Math.sin(next), r * (1 - Math.cos(next))];
        if (next > 0 && ny > depth) break;
        length += Math.hypot(nx - x, ny - y);
        [x, y] = [nx, ny];
      }
      const rest = (depth - y) / Math.sin(kappa);
      const above = r * (1 - Math.cos(kappa)) < depth;
      if (above) {
        length += rest;
        [x, y] = [x + rest * Math.cos(kappa), depth];
      }
      const chip = chipGeometry(cut);
      expect(chip.chipWidth / length).toBeCloseTo(1, 2);
      expect(chip.effectiveApproach).toBeCloseTo(Math.atan2(Math.max(0, y - start.y), x - start.x), 2);
    }),
    { numRuns: 40 },
  );
});

test('breadth times mean thickness is depth times feed, and no chip is thicker than the feed', () => {
  fc.assert(
    fc.property(anyCut, (cut) => {
      const chip = chipGeometry(cut);
      expect(chip.chipWidth * chip.chipThickness).toBeCloseTo(cut.depth * cut.feed, 12);
      expect(chip.thickestChip).toBeLessThanOrEqual(cut.feed + 1e-12);
    }),
  );
});

test('the edge faces about half the entering angle when only the nose cuts [CF052 of cutting/correction-factors, geometry]', () => {
  const chip = chipGeometry({ depth: 0.2, feed: 0.001, noseRadius: 0.8, approachAngle: radians(95) });
  expect(chip.effectiveApproach).toBeCloseTo(enteringAngle(0.2, 0.8) / 2, 2);
});

test('refuses a cut without depth, an edge along the feed and a feed like a plough', () => {
  const cut = { depth: 1, feed: 0.1, noseRadius: 0.4, approachAngle: radians(90) };
  expect(() => chipGeometry({ ...cut, depth: 0 })).toThrow('more than 0 to 20 mm');
  expect(() => chipGeometry({ ...cut, approachAngle: radians(5) })).toThrow('10 to 135 degrees');
  expect(() => chipGeometry({ ...cut, feed: 3 })).toThrow('2 mm/rev');
  expect(() => chipGeometry({ ...cut, noseRadius: Number.NaN })).toThrow('0 to 16 mm');
});
