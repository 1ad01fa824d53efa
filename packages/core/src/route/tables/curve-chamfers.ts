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
import { cornerOf, leftBy, type Stop } from './step-corner.ts';

export interface ChamferCut {
  /** Between the top slide and the axis, in half degrees. */
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
 *     line through the corner at β to the axis: r cos β − z sin β = greatest of the curve there
 *
 * @param curve  the curve
 * @param steps  its steps, from the free end
 * @param noseRadius  of the cutter that cut the steps, 0 for a pointed one [mm]
 * @returns one cut for each step; infeed 0 where nothing can come off
 * @throws DomainError when there is no step
 * @source geometry
 * @valid steps of this curve; pieces of the curve are looked at in places close together
 * @example chamferCuts({ pieces: [{ kind: 'line', from: { z: 0, r: 0 }, to: { z: 8, r: 8 }, feature: 'a' }], depth: 8 }, [{ depth: 4, radius: 4, cusp: 2.8284 }, { depth: 8, radius: 8, cusp: 2.8284 }], 0)[1].infeed → 4
 */
export function chamferCuts(curve: StepCurve, steps: readonly CurveStep[], noseRadius: Mm): ChamferCut[] {
  if (steps.length === 0) throw new DomainError('steps', 0, 'at least one');
  return steps.map((step, k) => {
    const before = steps[k - 1];
    const corner = cornerOf(before, step, noseRadius);
    const over = step.depth - corner.z;
    const even = Array.from({ length: looked + 1 }, (_, i) => corner.z + (over * i) / looked);
    // Where one piece ends and the next begins the curve may have a corner.
    const ends = curve.pieces.map((p) => p.from.z).filter((z) => z > corner.z && z < step.depth);
    const near = [...even, ...ends].toSorted((a, b) => a - b).map((z): Point => ({ z, r: tipRadius(curve, z, 0) }));
    // Before the first step there is only the curve itself.
    const rise = before
      ? step.radius - before.radius
      : tipRadius(curve, step.depth, 0) - (curve.pieces[0]?.from.r ?? 0);
    const chord = Math.atan2(rise, step.depth - (before?.depth ?? 0));
    const angle = radians(Math.min(89, Math.max(1, Math.round(2 * degrees(chord)) / 2)));
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const by = c >= s ? 'cross slide' : 'saddle';
    const height = (p: Point) => p.r * c - p.z * s;
    const highest = Math.max(...near.map(height), Number.NEGATIVE_INFINITY) + between(near, angle);
    const deep = Math.max(0, height(corner) - highest);
    if (!Number.isFinite(deep) || deep === 0) return { angle, infeed: 0, by, left: step.cusp };
    const infeed = deep / Math.max(c, s);
    return { angle, infeed, by, left: leftAfter(curve, before, step, noseRadius, { angle, infeed }) };
  });
}

/**
 * What is left of a step's corner after an infeed, which may be less than the full one: a dial has whole divisions.
 *
 * @param before  the step before, nearer to the free end; undefined at the free end
 * @returns height of the highest place that stands above the curve there, square to it [mm]
 */
export function leftAfter(
  curve: StepCurve,
  before: Stop | undefined,
  step: CurveStep,
  noseRadius: Mm,
  { angle, infeed }: Pick<ChamferCut, 'angle' | 'infeed'>,
): Mm {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const corner = cornerOf(before, step, noseRadius);
  const kept = corner.r * c - corner.z * s - infeed * Math.max(c, s);
  if (noseRadius === 0) {
    const face = before?.depth ?? 0;
    const onFace = { z: face, r: Math.max(before?.radius ?? 0, Math.min(corner.r, (kept + face * s) / c)) };
    const onFloor = { z: Math.min(step.depth, (step.radius * c - kept) / s), r: step.radius };
    return Math.min(step.cusp, Math.max(distanceToCurve(curve, onFace), distanceToCurve(curve, onFloor)));
  }
  const above = (z: Mm, r: Mm) => (r > tipRadius(curve, z, 0) ? distanceToCurve(curve, { z, r }) : 0);
  // From the corner either way to where the nose touched the curve: there the next corner begins.
  const down = (end: Mm, leaves: (z: Mm) => Mm): Mm => {
    let [most, last] = [0, Number.POSITIVE_INFINITY];
    for (let i = 0; i <= looked; i++) {
      const z = corner.z + ((end - corner.z) * i) / looked;
      const stood = above(z, leaves(z));
      if (stood > last) break;
      last = stood;
      most = Math.max(most, above(z, Math.min(leaves(z), (kept + z * s) / c)));
    }
    return most;
  };
  const back = before ? down(Math.max(0, corner.z - noseRadius), (z) => leftBy(before, z, noseRadius)) : 0;
  return Math.min(
    step.cusp,
    Math.max(
      back,
      down(step.depth, (z) => leftBy(step, z, noseRadius)),
    ),
  );
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
