/**
 * A curve turned by steps: facing cuts from the free end, each run in until the nose of the cutter touches the curve and never
 * past it. What is left between the steps is filed off.
 *
 * Knowledge: after step k the work is a cylinder of the cutter tip's radius rₖ back to the depth xₖ₋₁ of the step before; the
 * corner (rₖ, xₖ₋₁) stands highest above the curve. The largest corner is least when all are equal.
 */
import { DomainError } from '../../errors.ts';
import { findRoot } from '../../numerics/root.ts';
import type { Arc, Point, Segment } from '../../part/outline-types.ts';
import type { Mm } from '../../units/quantities.ts';

/** A curve seen from the free end: x is the depth from the free end, r the radius, r never falling as x grows. */
export interface StepCurve {
  /** Pieces in order of depth; z of their points is the depth from the free end. */
  readonly pieces: readonly Segment[];
  readonly depth: Mm;
}

export interface CurveStep {
  /** Depth of the face of this step from the free end. */
  readonly depth: Mm;
  /** Radius at which the tip of the cutter stops. */
  readonly radius: Mm;
  /** Height of the corner left over, square to the curve. */
  readonly cusp: Mm;
}

/** How closely corners and depths are sought: far finer than any dial. */
const exactCusp: Mm = 1e-8;
const exactDepth: Mm = 1e-9;

/** More steps than this nobody cuts. */
const mostSteps = 500;

/**
 * Least radius that the tip of a round-nosed cutter may reach when its leading side stands at a depth, without touching the curve.
 *
 *     centre at x_c = x − ρ;  r_c = largest over the pieces of the curve's offset by ρ at x_c;  tip = r_c − ρ
 *
 * @param curve  the curve
 * @param depth  depth of the cutter's leading side from the free end [mm]
 * @param noseRadius  nose radius ρ of the cutter, 0 for a pointed one [mm]
 * @returns radius of the tip; negative when the nose may pass the axis [mm]
 * @source geometry
 * @valid lines and arcs; a nose larger than a hollow arc rests on its ends
 * @example tipRadius({ pieces: [{ kind: 'line', from: { z: 0, r: 5 }, to: { z: 10, r: 5 }, feature: 'a' }], depth: 10 }, 4, 0.4) → 5
 */
export function tipRadius(curve: StepCurve, depth: Mm, noseRadius: Mm): Mm {
  const centre = depth - noseRadius;
  // A plain loop: this is called some ten thousand times for one table.
  let highest = Number.NEGATIVE_INFINITY;
  for (const piece of curve.pieces) {
    if (piece.from.z > depth + noseRadius || piece.to.z < centre - noseRadius) continue;
    const over =
      piece.kind === 'line' ? overLine(piece.from, piece.to, centre, noseRadius) : overArc(piece, centre, noseRadius);
    highest = Math.max(
      highest,
      over,
      overPoint(piece.from, centre, noseRadius),
      overPoint(piece.to, centre, noseRadius),
    );
  }
  return highest - noseRadius;
}

function overPoint(p: Point, centre: Mm, nose: Mm): Mm {
  const reach = nose ** 2 - (p.z - centre) ** 2;
  return reach < 0 ? Number.NEGATIVE_INFINITY : p.r + Math.sqrt(reach);
}

function overLine(from: Point, to: Point, centre: Mm, nose: Mm): Mm {
  const run = to.z - from.z;
  if (run === 0) return Number.NEGATIVE_INFINITY;
  const slope = (to.r - from.r) / run;
  const touch = centre + (slope * nose) / Math.hypot(1, slope);
  if (touch < Math.min(from.z, to.z) || touch > Math.max(from.z, to.z)) return Number.NEGATIVE_INFINITY;
  return from.r + slope * (centre - from.z) + nose * Math.hypot(1, slope);
}

/** The arc bulges out when its points lie on the far side of its centre from the axis. */
function bulgesOut(arc: Arc): boolean {
  const middle = { z: (arc.from.z + arc.to.z) / 2, r: (arc.from.r + arc.to.r) / 2 };
  return middle.r >= arc.centre.r;
}

function overArc(arc: Arc, centre: Mm, nose: Mm): Mm {
  const out = bulgesOut(arc);
  const offset = out ? arc.radius + nose : arc.radius - nose;
  const across = centre - arc.centre.z;
  if (offset <= 0 || Math.abs(across) > offset) return Number.NEGATIVE_INFINITY;
  const touch = arc.centre.z + (across * arc.radius) / offset;
  if (touch < Math.min(arc.from.z, arc.to.z) || touch > Math.max(arc.from.z, arc.to.z)) return Number.NEGATIVE_INFINITY;
  const rise = Math.sqrt(offset ** 2 - across ** 2);
  return arc.centre.r + (out ? rise : -rise);
}

/** Distance of a point outside the curve from it. */
export function distanceToCurve(curve: StepCurve, point: Point): Mm {
  let nearest = Number.POSITIVE_INFINITY;
  for (const piece of curve.pieces) nearest = Math.min(nearest, distanceToPiece(piece, point));
  return nearest;
}

function distanceToPiece(piece: Segment, p: Point): Mm {
  const ends = Math.min(
    Math.hypot(p.z - piece.from.z, p.r - piece.from.r),
    Math.hypot(p.z - piece.to.z, p.r - piece.to.r),
  );
  if (piece.kind === 'line') {
    const dz = piece.to.z - piece.from.z;
    const dr = piece.to.r - piece.from.r;
    const length2 = dz * dz + dr * dr;
    const t = length2 === 0 ? -1 : ((p.z - piece.from.z) * dz + (p.r - piece.from.r) * dr) / length2;
    if (t < 0 || t > 1) return ends;
    return Math.hypot(p.z - piece.from.z - t * dz, p.r - piece.from.r - t * dr);
  }
  const away = Math.hypot(p.z - piece.centre.z, p.r - piece.centre.r);
  if (away === 0) return piece.radius;
  const foot = piece.centre.z + ((p.z - piece.centre.z) * piece.radius) / away;
  const within = foot >= Math.min(piece.from.z, piece.to.z) && foot <= Math.max(piece.from.z, piece.to.z);
  // The nearest point of the whole circle may lie across from the arc.
  const facing = p.r >= piece.centre.r === bulgesOut(piece);
  return within && facing ? Math.abs(away - piece.radius) : ends;
}

/**
 * The steps for a curve, as many as asked, with equal corners.
 *
 * @param curve  the curve, its radius never falling away from the free end
 * @param count  number of steps [-]
 * @param noseRadius  of the cutter [mm]
 * @returns the steps from the free end, exact (before the dials round them)
 * @throws DomainError when there is no depth, no step, or the curve narrows away from the free end
 * @source geometry equal corners by the exchange argument
 * @valid monotone curves; the check values for a dome are in the metrology reference, rows P03 to P05
 * @example curveSteps({ pieces: [{ kind: 'line', from: { z: 0, r: 5 }, to: { z: 2, r: 7 }, feature: 'a' }], depth: 2 }, 4, 0)[0].depth → 0.5
 */
export function curveSteps(curve: StepCurve, count: number, noseRadius: Mm): CurveStep[] {
  checkCurve(curve);
  if (!(Number.isInteger(count) && count >= 1 && count <= mostSteps))
    throw new DomainError('count', count, 'a whole number from 1 to 500');
  let low = 0;
  let high = cuspBetween(curve, 0, curve.depth, noseRadius);
  while (high - low > exactCusp) {
    const trial = (low + high) / 2;
    if (march(curve, trial, count, noseRadius) >= curve.depth) high = trial;
    else low = trial;
  }
  const depths: Mm[] = [];
  let depth = 0;
  for (let k = 1; k <= count && depth < curve.depth; k++) {
    depth = k === count ? curve.depth : nextDepth(curve, depth, high, noseRadius);
    depths.push(depth);
  }
  return stepsAt(curve, depths, noseRadius);
}

/**
 * Steps of equal depth, or of equal radius for turning along: quicker to set, with corners that differ.
 *
 *     facing x_k = k h/n;  turning r_k = r_0 + k (r_n − r_0)/n, as deep as the nose may go there
 *
 * @param curve  the curve, its radius never falling away from the free end
 * @param count  number of steps [-]
 * @param noseRadius  of the cutter [mm]
 * @param direction  facing: each step in to its radius; turning: each along to its depth
 * @returns the steps from the free end, exact
 * @throws DomainError when there is no depth, no step, or the curve narrows away from the free end
 * @source geometry
 * @valid monotone curves; check values for a dome in the metrology reference, rows P02, P07, P08
 * @example equalSteps({ pieces: [{ kind: 'line', from: { z: 0, r: 5 }, to: { z: 2, r: 7 }, feature: 'a' }], depth: 2 }, 4, 0, 'facing')[0].depth → 0.5
 */
export function equalSteps(
  curve: StepCurve,
  count: number,
  noseRadius: Mm,
  direction: 'facing' | 'turning',
): CurveStep[] {
  checkCurve(curve);
  if (!(Number.isInteger(count) && count >= 1 && count <= mostSteps))
    throw new DomainError('count', count, 'a whole number from 1 to 500');
  const share = (k: number) => (k + 1) / count;
  if (direction === 'facing')
    return stepsAt(
      curve,
      Array.from({ length: count }, (_, k) => curve.depth * share(k)),
      noseRadius,
    );
  const first = curve.pieces[0]?.from.r ?? 0;
  const last = Math.max(0, tipRadius(curve, curve.depth, noseRadius));
  const depths = Array.from({ length: count }, (_, k) =>
    deepestAt(curve, Math.min(last, first + (last - first) * share(k)), noseRadius),
  );
  return stepsAt(curve, [...new Set([...depths.filter((d) => d > 0), curve.depth])], noseRadius);
}

/**
 * The greatest depth to which the leading side may go while the tip stands at a radius, by halving.
 *
 * @param curve  the curve
 * @param radius  at which the tip stands [mm]
 * @param nose  radius of the cutter's nose [mm]
 * @returns depth from the free end, 0 where the tip may not go in at all [mm]
 */
export function deepestAt(curve: StepCurve, radius: Mm, nose: Mm): Mm {
  if (tipRadius(curve, curve.depth, nose) <= radius + exactDepth) return curve.depth;
  let [low, high] = [0, curve.depth];
  if (tipRadius(curve, 0, nose) > radius) return 0;
  while (high - low > exactDepth) {
    const depth = (low + high) / 2;
    if (tipRadius(curve, depth, nose) <= radius) low = depth;
    else high = depth;
  }
  return low;
}

/**
 * Fewest steps whose corners stay within a height, at most 500.
 *
 * @param curve  the curve, its radius never falling away from the free end
 * @param cusp  greatest height of the corners, square to the curve [mm]
 * @param noseRadius  of the cutter [mm]
 * @returns number of steps [-]
 * @throws DomainError when the height is not above zero, or the curve narrows away from the free end
 * @source geometry greedy: each step as deep as the corner allows
 * @valid monotone curves; 500 when even that is not enough
 * @example stepsForCusp({ pieces: [{ kind: 'line', from: { z: 0, r: 5 }, to: { z: 2, r: 7 }, feature: 'a' }], depth: 2 }, 0.4, 0) → 4
 */
export function stepsForCusp(curve: StepCurve, cusp: Mm, noseRadius: Mm): number {
  checkCurve(curve);
  if (!(cusp > 0)) throw new DomainError('cusp', cusp, 'above 0 mm');
  let depth = 0;
  for (let n = 1; n <= mostSteps; n++) {
    depth = nextDepth(curve, depth, cusp, noseRadius);
    if (depth >= curve.depth - 1e-9) return n;
  }
  return mostSteps;
}

function checkCurve(curve: StepCurve): void {
  if (!(curve.depth > 0) || curve.pieces.length === 0) throw new DomainError('depth', curve.depth, 'above 0 mm');
  for (const piece of curve.pieces)
    if (piece.to.r < piece.from.r - 1e-9)
      throw new DomainError(
        'curve',
        piece.to.r,
        `a radius that does not shrink away from the free end (${piece.feature} does)`,
      );
}

function cuspBetween(curve: StepCurve, before: Mm, depth: Mm, nose: Mm): Mm {
  const r = Math.max(0, tipRadius(curve, depth, nose));
  return r === 0 ? 0 : distanceToCurve(curve, { z: before, r });
}

/** The depth at which the corner against the step before reaches the trial height. */
function nextDepth(curve: StepCurve, before: Mm, cusp: Mm, nose: Mm): Mm {
  if (cuspBetween(curve, before, curve.depth, nose) <= cusp) return curve.depth;
  const over = (depth: Mm) => cuspBetween(curve, before, depth, nose) - cusp;
  // The nose alone may already leave a higher corner than the trial allows.
  if (over(before) >= 0) return before;
  return findRoot(over, before, curve.depth, exactDepth);
}

function march(curve: StepCurve, cusp: Mm, count: number, nose: Mm): Mm {
  let depth = 0;
  for (let k = 0; k < count && depth < curve.depth; k++) depth = nextDepth(curve, depth, cusp, nose);
  return depth >= curve.depth - 1e-9 ? curve.depth : depth;
}

function stepsAt(curve: StepCurve, depths: readonly Mm[], nose: Mm): CurveStep[] {
  return depths.map((depth, k) => ({
    depth,
    radius: Math.max(0, tipRadius(curve, depth, nose)),
    cusp: cuspBetween(curve, depths[k - 1] ?? 0, depth, nose),
  }));
}
