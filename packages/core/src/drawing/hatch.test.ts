import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crowdedPart } from '../../test/crowded-part.ts';
import { definePart } from '../part/define-part.ts';
import { closedLoop, segmentPoints } from '../part/outline-queries.ts';
import type { Outline, Segment } from '../part/outline-types.ts';
import { partSchema } from '../part/schema.ts';
import { hatchParts } from './hatch.ts';
import type { PathPart } from './scene.ts';

const view = { x: 0, y: 0, scale: 1 };

function lengths(parts: readonly PathPart[]): number {
  let sum = 0;
  parts.forEach((part, i) => {
    const before = parts[i - 1];
    if (part.to === 'line' && before && before.to !== 'close') sum += Math.hypot(part.x - before.x, part.y - before.y);
  });
  return sum;
}

/** Shoelace over a fine polygon: another way to the area than cutting 45° lines. */
function area(loop: readonly Segment[]): number {
  let sum = 0;
  for (const segment of loop) {
    const points = segmentPoints(segment, 1e-4);
    points.slice(1).forEach((p, i) => {
      const q = points[i] ?? p;
      sum += q.z * p.r - p.z * q.r;
    });
  }
  return Math.abs(sum) / 2;
}

function hollow(outline: Outline): boolean {
  return outline.insideLeft.length + outline.insideRight.length > 0;
}

test('length of the lining times its spacing is the area that is cut', () => {
  fc.assert(
    fc.property(crowdedPart(), (document) => {
      const { outline, findings } = definePart(partSchema('mm').parse(document));
      fc.pre(hollow(outline) && !findings.some((f) => f.level === 'stop'));
      const loop = closedLoop(outline);
      const whole = area(loop);
      fc.pre(whole > 20);
      const spacing = Math.sqrt(whole) / 150;
      const lined = lengths(hatchParts(loop, view, spacing)) * spacing;
      expect(Math.abs(lined / whole - 1)).toBeLessThan(0.03);
    }),
    { numRuns: 60 },
  );
});

test('a bound keeps the lining inside its circle', () => {
  const square: Segment[] = (
    [
      [0, 0, 0, 10],
      [0, 10, 10, 10],
      [10, 10, 10, 0],
      [10, 0, 0, 0],
    ] as const
  ).map(([z0, r0, z1, r1]) => ({ kind: 'line', from: { z: z0, r: r0 }, to: { z: z1, r: r1 }, feature: 'square' }));
  const parts = hatchParts(square, view, 0.05, { z: 5, r: 5, radius: 3 });
  for (const part of parts) if (part.to !== 'close') expect(Math.hypot(part.x - 5, -part.y - 5)).toBeLessThan(3 + 1e-9);
  expect(lengths(parts) * 0.05).toBeCloseTo(Math.PI * 9, 1);
});
