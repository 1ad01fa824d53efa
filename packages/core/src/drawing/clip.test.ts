import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crowdedPart } from '../../test/crowded-part.ts';
import { definePart } from '../part/define-part.ts';
import type { Segment } from '../part/outline-types.ts';
import { partSchema } from '../part/schema.ts';
import { lengthOf, pointAt } from '../part/segment.ts';
import { between, mirrored } from './between.ts';
import { insideCircle } from './clip-circle.ts';

const outline = crowdedPart().map((document) => definePart(partSchema('mm').parse(document)).outline);

function total(chain: readonly Segment[]): number {
  return chain.reduce((sum, s) => sum + lengthOf(s), 0);
}

test('stretches that follow one another make the whole outline', () => {
  fc.assert(
    fc.property(outline, fc.double({ min: 0.01, max: 0.99, noNaN: true }), ({ outside, length }, f) => {
      const cut = f * length;
      fc.pre(outside.every((s) => Math.abs(s.from.z - cut) > 1e-6));
      const sum = total(between(outside, -1, cut)) + total(between(outside, cut, length + 1));
      expect(sum).toBeCloseTo(total(outside), 6);
    }),
    { numRuns: 60 },
  );
});

test('what is clipped to a circle lies inside it, and what is left out lies outside', () => {
  fc.assert(
    fc.property(
      outline,
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0.5, max: 30, noNaN: true }),
      (o, f, radius) => {
        const bound = { z: f * o.length, r: o.largestDiameter / 3, radius };
        const away = (p: { z: number; r: number }) => Math.hypot(p.z - bound.z, p.r - bound.r);
        const inside = insideCircle(o.outside, bound);
        for (const s of inside) for (const t of [0, 0.5, 1]) expect(away(pointAt(s, t))).toBeLessThan(radius + 1e-6);
        const samples = o.outside.flatMap((s) =>
          Array.from({ length: 400 }, (_, i) => ({ p: pointAt(s, (i + 0.5) / 400), part: lengthOf(s) / 400 })),
        );
        const sampled = samples.reduce((sum, { p, part }) => sum + (away(p) <= radius ? part : 0), 0);
        expect(total(inside)).toBeCloseTo(sampled, 0);
      },
    ),
    { numRuns: 40 },
  );
});

test('turned end for end twice, an outline is itself', () => {
  fc.assert(
    fc.property(outline, (o) => {
      const back = mirrored(mirrored(o));
      for (const [i, s] of back.outside.entries()) {
        expect(s.from.z).toBeCloseTo(o.outside[i]?.from.z ?? Number.NaN, 12);
        expect(pointAt(s, 0.5).r).toBeCloseTo(pointAt(o.outside[i] ?? s, 0.5).r, 9);
      }
    }),
    { numRuns: 20 },
  );
});
