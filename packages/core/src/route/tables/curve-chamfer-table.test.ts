import fc from 'fast-check';
import { expect, test } from 'vitest';
import { radians } from '../../units/quantities.ts';
import { curveChamferTable } from './curve-chamfer-table.ts';
import { type StepCurve, tipRadius } from './curve-steps.ts';
import { stepsOf } from './curve-table.ts';
import type { Dial } from './dial.ts';
import { curveOf } from './step-generator.ts';

const across: Dial = { division: 0.02, perTurn: 1, reads: 'radius' };
const along: Dial = { division: 0.02, perTurn: 1, reads: 'travel' };
const coarse: Dial = { division: 0.25, perTurn: 18, reads: 'travel' };
const title = { id: 'corners', operation: 'curve', title: 'curve' } as const;

const nose = 0.3;
const stepsFor = (curve: StepCurve) =>
  stepsOf({ curve, noseRadius: nose, touch: 2 * (curve.pieces.at(-1)?.to.r ?? 0) + 1, along, across });

const curves = fc.oneof(
  fc
    .tuple(fc.double({ min: 8, max: 80, noNaN: true }), fc.double({ min: 0.05, max: 0.7, noNaN: true }))
    .map(([radius, share]) => curveOf({ shape: 'sphere', radius, height: share * radius })),
  fc
    .tuple(fc.double({ min: 2, max: 20, noNaN: true }), fc.double({ min: 2, max: 20, noNaN: true }))
    .map(([length, rise]) => curveOf({ shape: 'cone', startDiameter: 6, endDiameter: 6 + 2 * rise, length })),
);

/** Radius that a step leaves at a depth: its tip, and the quarter circle of the nose before its face. */
function floorAt(step: { depth: number; radius: number } | undefined, z: number): number {
  if (!step || z > step.depth) return Number.POSITIVE_INFINITY;
  const centre = step.depth - nose;
  return z <= centre ? step.radius : step.radius + nose - Math.sqrt(Math.max(0, nose ** 2 - (z - centre) ** 2));
}

test('in whole divisions no chamfer cut goes below the curve, and none is listed that leaves a corner as it was', () => {
  let cuts = 0;
  fc.assert(
    fc.property(curves, fc.constantFrom(coarse, along, undefined), (curve, saddle) => {
      const steps = stepsFor(curve);
      const found = curveChamferTable(title, curve, steps, nose, { crossSlide: across, saddle });
      for (const row of found?.table.rows ?? []) {
        cuts++;
        const [before, step] = [steps[Number(row.step) - 2], steps[Number(row.step) - 1]];
        const start = before?.depth ?? 0;
        const angle = radians(Number(row.angle));
        const height = (z: number, r: number) => r * Math.cos(angle) - z * Math.sin(angle);
        const dial = row.by === 'saddle' ? (saddle ?? across) : across;
        const travel = Number(row.turns) * dial.perTurn + Number(row.divisions) * dial.division;
        const touched = Math.max(
          // The step before leaves its face standing up to the floor of this one.
          height(start, floorAt(step, start)),
          ...Array.from({ length: 2001 }, (_, i) => {
            const z = Math.max(0, start - nose) + ((start - Math.max(0, start - nose)) * i) / 2000;
            return height(z, Math.min(floorAt(before, z), floorAt(step, z)));
          }),
        );
        const kept = touched - travel * (row.by === 'saddle' ? Math.sin(angle) : Math.cos(angle));
        for (let i = 0; i <= 100; i++) {
          const z = start + (((step?.depth ?? 0) - start) * i) / 100;
          expect(height(z, tipRadius(curve, z, 0))).toBeLessThanOrEqual(kept + 3e-4);
        }
        expect(Number(row.left)).toBeLessThan(step?.cusp ?? 0);
      }
    }),
    { numRuns: 60 },
  );
  expect(cuts).toBeGreaterThan(50);
});

test('the side of a cone is one line: its chamfer cuts leave no more than their dials cannot set', () => {
  const cone = curveOf({ shape: 'cone', startDiameter: 10, endDiameter: 22, length: 6 });
  const found = curveChamferTable(title, cone, stepsFor(cone), nose, { crossSlide: across });
  // 45°: a division of 0.02 mm takes 0.014 mm off square to it, the steps themselves are a division off either way.
  expect(found?.after).toBeLessThan(0.06);
  expect(found?.before).toBeGreaterThan(0.12);
  for (const row of found?.table.rows ?? []) expect(row.angle).toBe(45);
});

test('a flat dome gets its cuts with the cross slide, whose division takes little off at a steep angle', () => {
  const dome = curveOf({ shape: 'sphere', radius: 65, height: 2 });
  const found = curveChamferTable(title, dome, stepsFor(dome), nose, { crossSlide: across, saddle: coarse });
  expect(found?.table.rows.every((r) => r.by === 'cross slide')).toBe(true);
  expect(found?.after).toBeLessThan(0.5 * (found?.before ?? 0));
});

test('dials too coarse to put the cuts on give no table', () => {
  const cone = curveOf({ shape: 'cone', startDiameter: 10, endDiameter: 22, length: 6 });
  const blunt: Dial = { division: 0.5, perTurn: 5, reads: 'radius' };
  expect(curveChamferTable(title, cone, stepsFor(cone), nose, { crossSlide: blunt, saddle: blunt })).toBeUndefined();
  expect(curveChamferTable(title, cone, [], nose, { crossSlide: across })).toBeUndefined();
});
