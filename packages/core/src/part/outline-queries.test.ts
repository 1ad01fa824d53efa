import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arbitraryPartIn } from '../../test/arbitrary-part.ts';
import { curveThrough } from './biarc.ts';
import { definePart } from './define-part.ts';
import { boundingBox, closedLoop, innerRadiusAt, radiusAt, sectionsForBeam, segmentPoints } from './outline-queries.ts';
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

test('cylinders are single sections for the beam, with their bores', () => {
  const sections = sectionsForBeam(stepped);
  expect(sections[0]).toEqual({
    from: 0,
    to: 15,
    outerDiameter: expect.closeTo(12, 12),
    innerDiameter: expect.closeTo(6, 12),
  });
  expect(sections[1]).toEqual({ from: 15, to: 20, outerDiameter: expect.closeTo(12, 12), innerDiameter: 0 });
  expect(sections[2]).toMatchObject({ from: 20, to: 30, innerDiameter: 0 });
  expect(sections[2]?.outerDiameter).toBeCloseTo(30, 12);
  expect(sectionsForBeam(stepped, 18, 22).map((s) => [s.from, s.to])).toEqual([
    [18, 20],
    [20, 22],
  ]);
});

test('the sections of a cone bend like the cone: ∫ x²/I dx of a clamped taper [closed form]', () => {
  const cone = outlineOf({ outside: [{ kind: 'cone', id: 'c', startDiameter: 20, endDiameter: 10, length: 100 }] });
  // With d = 10 + x/10 from the free end, ∫ x² 64/(π d⁴) dx over 0 … 100.
  const inertia = (d: number) => (Math.PI * d ** 4) / 64;
  const stations = sectionsForBeam(cone);
  const sum = stations.reduce((total, s) => {
    const [a, b] = [100 - s.to, 100 - s.from];
    return total + (b ** 3 - a ** 3) / 3 / inertia(s.outerDiameter);
  }, 0);
  // By d: x = 10(d − 10): ∫ 100(d − 10)² · 10 dd/(π d⁴/64), d from 10 to 20.
  const part = (d: number) => -1 / d + 10 / d ** 2 - 100 / (3 * d ** 3);
  const exact = ((1000 * 64) / Math.PI) * (part(20) - part(10));
  expect(Math.abs(sum / exact - 1)).toBeLessThan(0.001);
});

test('any part: the sections for the beam cover it from end to end and hold its mean d⁴', () => {
  fc.assert(
    fc.property(arbitraryPartIn(), ({ unit, document }) => {
      const { outline } = definePart(partSchema(unit).parse(document));
      const sections = sectionsForBeam(outline);
      expect(sections[0]?.from).toBe(0);
      expect(sections.at(-1)?.to).toBeCloseTo(outline.length, 6);
      for (const [i, s] of sections.entries()) {
        if (i > 0) expect(s.from - (sections[i - 1]?.to ?? 0)).toBeLessThan(1e-6);
        expect(s.outerDiameter).toBeGreaterThan(s.innerDiameter);
        expect(s.outerDiameter).toBeLessThanOrEqual(outline.largestDiameter + 1e-9);
      }
      const whole = sections.reduce((sum, s) => sum + s.outerDiameter ** 4 * (s.to - s.from), 0);
      const n = 4000;
      let sampled = 0;
      for (let i = 0; i < n; i++)
        sampled += (2 * radiusAt(outline, ((i + 0.5) / n) * outline.length)) ** 4 * (outline.length / n);
      expect(whole / sampled).toBeCloseTo(1, 2);
    }),
    { numRuns: 20 },
  );
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
