import fc from 'fast-check';
import { expect, test } from 'vitest';
import { curveThrough } from './biarc.ts';
import { definePart } from './define-part.ts';
import { boundingBox, closedLoop, innerRadiusAt, radiusAt, segmentPoints } from './outline-queries.ts';
import type { Outline, Point } from './outline-types.ts';
import { type PartDocument, partSchema } from './schema.ts';
import { distance, label, pointAt, tangentAt } from './segment.ts';

const outlineOf = (document: Omit<PartDocument, 'name'>): Outline =>
  definePart(partSchema('mm').parse({ name: 'test', ...document })).outline;

const stepped = outlineOf({
  outside: [
    { kind: 'cylinder', id: 'thin', diameter: 12, length: 20 },
    { kind: 'cylinder', id: 'thick', diameter: 30, length: 10 },
    { kind: 'cone', id: 'cone', startDiameter: 30, endDiameter: 10, length: 20 },
  ],
  inside: { left: [{ kind: 'bored', id: 'bore', diameter: 6, depth: 15 }] },
});

test('the radius at a step is the larger one, beyond the ends it is 0', () => {
  expect([-1, 0, 10, 20, 25, 30, 40, 50, 51].map((z) => radiusAt(stepped, z))).toEqual([0, 6, 6, 15, 15, 15, 10, 5, 0]);
  expect([0, 10, 15, 15.1].map((z) => innerRadiusAt(stepped, z))).toEqual([3, 3, 3, 0]);
  expect(boundingBox(stepped)).toEqual({ left: 0, right: 50, radius: 15 });
});

test('points along an arc stay within the tolerance', () => {
  const dome = outlineOf({ outside: [{ kind: 'crown', id: 'c', diameter: 20, length: 4 }] });
  const arc = closedLoop(dome).find((s) => s.kind === 'arc');
  if (arc?.kind !== 'arc') throw new Error('no arc');
  for (const tolerance of [0.1, 0.001]) {
    const points = segmentPoints(arc, tolerance);
    for (const [i, b] of points.entries()) {
      const a = points[i - 1];
      if (!a) continue;
      const middle = { z: (a.z + b.z) / 2, r: (a.r + b.r) / 2 };
      expect(arc.radius - distance(middle, arc.centre)).toBeLessThanOrEqual(tolerance + 1e-12);
    }
  }
});

test('a free curve goes through its points, without a corner, and is the circle itself where they lie on one', () => {
  const points: Point[] = [0.3, 0.8, 1.4, 1.9, 2.6].map((a) => ({ z: 20 - 12 * Math.cos(a), r: 12 * Math.sin(a) }));
  for (const s of curveThrough(points, label('c'))) {
    expect(s.kind).toBe('arc');
    if (s.kind === 'arc') expect(s.radius).toBeCloseTo(12, 9);
  }
  fc.assert(
    fc.property(fc.array(fc.double({ min: 5, max: 12, noNaN: true }), { minLength: 3, maxLength: 9 }), (radii) => {
      const through = radii.map((r, i): Point => ({ z: 6 * i, r }));
      const curve = curveThrough(through, label('c'));
      for (const p of through)
        expect(Math.min(...curve.flatMap((s) => [distance(s.from, p), distance(s.to, p)]))).toBeLessThan(1e-9);
      for (const [i, s] of curve.entries()) {
        const before = curve[i - 1];
        if (!before) continue;
        expect(distance(pointAt(before, 1), s.from)).toBeLessThan(1e-9);
        expect(distance(tangentAt(before, 1), tangentAt(s, 0))).toBeLessThan(1e-6);
      }
    }),
  );
});
