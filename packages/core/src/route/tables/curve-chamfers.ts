/**
 * Cuts with the top slide set over that take the corners off the steps of a curve, so that less is left to file.
 *
 * Knowledge: each corner is cut along a line that touches the curve and nowhere goes below it. What is left are two smaller corners, where
 * that line meets the floor and the face of the step.
 */
import { DomainError } from '../../errors.ts';
import type { Point } from '../../part/outline-types.ts';
import { degrees, type Mm, type Radian, radians } from '../../units/quantities.ts';
import { type CurveStep, distanceToCurve, type StepCurve, tipRadius } from './curve-steps.ts';

export interface ChamferCut {
  /** Between the top slide and the axis, in whole degrees. */
  readonly angle: Radian;
  /** How far a slide goes in after the cutter has touched the corner. */
  readonly infeed: Mm;
  /** The slide for which that is the shorter way: nearly square to the axis the saddle, else the cross slide. */
  readonly by: 'cross slide' | 'saddle';
  /** Height of the highest corner left. */
  readonly left: Mm;
}

/** Places of the curve over a step that are looked at. */
const looked = 24;

/**
 * The chamfer cut of every step, on the corner between it and the step before.
 *
 *     line through the corner's step at β to the axis: r cos β − z sin β = greatest of the curve there
 *
 * @param curve  the curve
 * @param steps  its steps, from the free end
 * @returns one cut for each step; infeed 0 where nothing can come off
 * @throws DomainError when there is no step
 * @source geometry
 * @valid steps of this curve; pieces of the curve are looked at in places close together
 * @example chamferCuts({ pieces: [{ kind: 'line', from: { z: 0, r: 0 }, to: { z: 8, r: 8 }, feature: 'a' }], depth: 8 }, [{ depth: 4, radius: 4, cusp: 2.8284 }, { depth: 8, radius: 8, cusp: 2.8284 }])[1].infeed → 4
 */
export function chamferCuts(curve: StepCurve, steps: readonly CurveStep[]): ChamferCut[] {
  if (steps.length === 0) throw new DomainError('steps', 0, 'at least one');
  return steps.map((step, k) => {
    const before = steps[k - 1] ?? { depth: 0, radius: 0 };
    const corner = { z: before.depth, r: step.radius };
    const over = step.depth - before.depth;
    const even = Array.from({ length: looked + 1 }, (_, i) => before.depth + (over * i) / looked);
    // Where one piece ends and the next begins the curve may have a corner.
    const ends = curve.pieces.map((p) => p.from.z).filter((z) => z > before.depth && z < step.depth);
    const near = [...even, ...ends].toSorted((a, b) => a - b).map((z): Point => ({ z, r: tipRadius(curve, z, 0) }));
    const chord = { z: step.depth - before.depth, r: step.radius - before.radius };
    const angle = radians(Math.min(89, Math.max(1, Math.round(degrees(Math.atan2(chord.r, chord.z))))));
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const by = c >= s ? 'cross slide' : 'saddle';
    const height = (p: Point) => p.r * c - p.z * s;
    const highest = Math.max(...near.map(height), Number.NEGATIVE_INFINITY) + between(near, angle);
    const deep = Math.max(0, height(corner) - highest);
    if (!Number.isFinite(deep) || deep === 0) return { angle, infeed: 0, by, left: step.cusp };
    // Where the cut meets the face of the step and its floor.
    const onFace = { z: corner.z, r: Math.max(before.radius, corner.r - deep / c) };
    const onFloor = { z: Math.min(step.depth, corner.z + deep / s), r: corner.r };
    const left = Math.max(distanceToCurve(curve, onFace), distanceToCurve(curve, onFloor));
    return { angle, infeed: deep / Math.max(c, s), by, left: Math.min(step.cusp, left) };
  });
}

/** How far the curve may stand above the places looked at: the height of a flat arc over its chord. */
function between(points: readonly Point[], angle: Radian): Mm {
  let most = 0;
  for (const [i, p] of points.entries()) {
    const [a, b] = [points[i - 1], points[i + 1]];
    if (!a || !b) continue;
    const height = (q: Point) => q.r * Math.cos(angle) - q.z * Math.sin(angle);
    most = Math.max(most, Math.abs(height(p) - (height(a) + height(b)) / 2) / 2);
  }
  return most;
}
