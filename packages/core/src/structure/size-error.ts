/**
 * What a yielding machine leaves on: the depth really taken is less than the depth set, by as much as the force bends
 * everything away.
 *
 * Knowledge: at each station the depth taken satisfies a = a₀ − F(a)·c, F the radial force at that depth and c the
 * compliance there. What one pass leaves, the next finds.
 */
import { DomainError } from '../errors.ts';
import { findRoot } from '../numerics/root.ts';
import type { Mm, Newton } from '../units/quantities.ts';
import type { MmPerNewton } from './stepped-beam.ts';

/** Radial force against depth really taken: grows with depth, and need not vanish at zero depth. */
export type RadialForce = (depth: Mm) => Newton;

/** A point of a radial force known at some depths. */
export interface ForceAtDepth {
  readonly depth: Mm;
  readonly force: Newton;
}

/** What a pass did at each station. */
export interface PassResult {
  /** Radius the cutter was set to. */
  readonly setRadius: Mm;
  readonly depthTaken: readonly Mm[];
  readonly force: readonly Newton[];
  /** Radius left on the work. */
  readonly radius: readonly Mm[];
  /** Diameter left, less the diameter set: positive is too big. */
  readonly diameterError: readonly Mm[];
}

/** The least depth looked at, so that a force law is never asked for nothing [mm]. */
const grazing: Mm = 1e-6;

/**
 * The depth really taken when a depth is set.
 *
 *     a = a₀ − F(a) c
 *
 * @param set  depth set, on the radius a₀ [mm]
 * @param force  radial force against depth taken
 * @param yielding  compliance at the cut, work and machine together c [mm/N]
 * @returns depth taken a, 0 when the edge is pushed off without biting [mm]
 * @throws DomainError when the compliance is negative
 * @source error-copying
 * @valid force growing with depth; static, no chatter
 * @example depthTaken(0.5, (depth) => 100 * depth, 0.01) → 0.25
 */
export function depthTaken(set: Mm, force: RadialForce, yielding: MmPerNewton): Mm {
  if (!(yielding >= 0)) throw new DomainError('yielding', yielding, '0 mm/N or more');
  if (set <= grazing) return 0;
  const short = (a: Mm) => a + yielding * force(a) - set;
  if (short(grazing) >= 0) return 0;
  return findRoot(short, grazing, set, 1e-10);
}

/**
 * One pass along the work.
 *
 * @param before  radius of the work at each station before the pass [mm]
 * @param setRadius  radius the cutter is set to, counted from the axis with nothing bent [mm]
 * @param force  radial force against depth taken
 * @param yielding  compliance at each station [mm/N]
 * @returns what the pass did at each station
 * @throws DomainError when there is not one compliance a station, or the radius set is negative
 * @source error-copying
 * @valid compliance taken as it was before the pass: the work hardly thinner after it
 * @example onePass([5], 4.5, (depth) => 100 * depth, [0.01]).diameterError[0] → 0.5
 */
export function onePass(
  before: readonly Mm[],
  setRadius: Mm,
  force: RadialForce,
  yielding: readonly MmPerNewton[],
): PassResult {
  if (before.length !== yielding.length)
    throw new DomainError('yielding', yielding.length, `${before.length} values, one a station`);
  if (!(setRadius >= 0)) throw new DomainError('setRadius', setRadius, '0 mm or more');
  const taken = before.map((radius, i) => depthTaken(radius - setRadius, force, yielding[i] ?? 0));
  const radius = before.map((r, i) => r - (taken[i] ?? 0));
  return {
    setRadius,
    depthTaken: taken,
    force: taken.map((a) => (a > 0 ? force(a) : 0)),
    radius,
    diameterError: radius.map((r) => 2 * (r - setRadius)),
  };
}

/**
 * Passes one after another; a setting repeated is a spring pass.
 *
 * @param before  radius of the work at each station before the first pass [mm]
 * @param setRadii  radius the cutter is set to, pass after pass [mm]
 * @param force  radial force against depth taken
 * @param yielding  compliance at each station [mm/N]
 * @returns what each pass did
 * @throws DomainError as {@link onePass}
 * @source error-copying
 * @valid as {@link onePass}
 * @example passes([5], [4.5, 4.5], (depth) => 100 * depth, [0.01])[1].diameterError[0] → 0.25
 */
export function passes(
  before: readonly Mm[],
  setRadii: readonly Mm[],
  force: RadialForce,
  yielding: readonly MmPerNewton[],
): PassResult[] {
  const done: PassResult[] = [];
  for (const setRadius of setRadii) {
    done.push(onePass(done[done.length - 1]?.radius ?? before, setRadius, force, yielding));
  }
  return done;
}

/**
 * A radial force law through forces known at some depths: straight lines between them, the last line carried on, and
 * the first carried down towards zero depth but never below no force.
 *
 * @param points  forces known, at two depths or more
 * @returns the force law
 * @throws DomainError when there are fewer than two, two share a depth, or the force falls with depth
 * @source geometry
 * @valid near the depths given
 * @example forceThrough([{ depth: 0.1, force: 10 }, { depth: 0.5, force: 30 }])(0.3) → 20
 */
export function forceThrough(points: readonly ForceAtDepth[]): RadialForce {
  const sorted = points.toSorted((p, q) => p.depth - q.depth);
  if (sorted.length < 2) throw new DomainError('points', sorted.length, 'forces at two depths or more');
  for (let i = 1; i < sorted.length; i++) {
    const [low, high] = [sorted[i - 1], sorted[i]];
    if (low && high && !(high.depth > low.depth && high.force >= low.force)) {
      throw new DomainError(
        'points',
        `${low.force} N at ${low.depth} mm, ${high.force} N at ${high.depth} mm`,
        'force growing with depth',
      );
    }
  }
  return (depth) => {
    const above = sorted.findIndex((p) => p.depth >= depth);
    const right = Math.max(1, above < 0 ? sorted.length - 1 : above);
    const [p, q] = [sorted[right - 1], sorted[right]];
    if (!p || !q) return 0;
    return Math.max(0, p.force + ((q.force - p.force) * (depth - p.depth)) / (q.depth - p.depth));
  };
}
