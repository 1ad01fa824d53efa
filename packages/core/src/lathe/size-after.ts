/**
 * What size a pass leaves when edge and work give way to its force.
 */
import type { MmPerNewton } from '../structure/stepped-beam.ts';
import type { Mm, MmPerRev, Newton } from '../units/quantities.ts';
import type { Setup } from './chain.ts';
import { type CutMaterial, cutForces } from './cut-forces.ts';
import type { PreparedSetup } from './prepare-setup.ts';

/** Force square to the surface against depth, known at a ladder of depths. */
export interface ForceLadder {
  readonly depths: Float64Array;
  readonly forces: Float64Array;
}

const usualRungs = 20;

/** The ladder of one feed, up to a depth. */
export function forceLadder(
  setup: Setup,
  material: CutMaterial,
  feed: MmPerRev,
  deepest: Mm,
  rungs = usualRungs,
): ForceLadder {
  const shallowest = Math.min(0.002, deepest / 4);
  const depths = new Float64Array(rungs);
  const forces = new Float64Array(rungs);
  for (let i = 0; i < rungs; i++) {
    const depth = shallowest * (deepest / shallowest) ** (i / (rungs - 1));
    depths[i] = depth;
    forces[i] = cutForces(setup, material, depth, feed).square;
  }
  return { depths, forces };
}

/**
 * Depth really taken when a depth is set: a = a₀ − F(a) c, F straight between the rungs.
 *
 * Below the lowest rung the force is that of the lowest rung: the edge's own push does not vanish.
 */
export function takenOnLadder({ depths, forces }: ForceLadder, set: Mm, give: MmPerNewton): Mm {
  let [lower, lowerForce] = [0, forces[0] ?? 0];
  if (give * lowerForce >= set) return 0;
  for (let i = 0; i < depths.length; i++) {
    const [depth, force] = [depths[i] ?? 0, forces[i] ?? 0];
    if (depth + give * force >= set || i === depths.length - 1) {
      const slope = depth > lower ? (force - lowerForce) / (depth - lower) : 0;
      return Math.min(set, (set - give * (lowerForce - slope * lower)) / (1 + give * slope));
    }
    [lower, lowerForce] = [depth, force];
  }
  return set;
}

/** What giving way does to the size, on the diameter (or to the length, when facing). */
export interface SizeResult {
  /** At each station with the middle values. */
  readonly error: readonly Mm[];
  /** Greatest less least along the work; middle, and bounds of nine in ten draws. */
  readonly taper: { readonly low: Mm; readonly middle: Mm; readonly high: Mm };
  /** Greatest error, bounds of nine in ten draws. */
  readonly most: { readonly low: Mm; readonly middle: Mm; readonly high: Mm };
}

/** A plunge has its edge's width for a depth, and is set by its feed. */
export function plunges({ operation }: Pick<Setup, 'operation'>): boolean {
  return operation === 'grooving' || operation === 'parting';
}

/** A plunge is set by its feed: what gives way is the edge pushed off by the whole force, on the radius. */
export function pushedOff(prepared: PreparedSetup, force: Newton): SizeResult {
  const error = prepared.give.map((c) => c * force);
  const all = prepared.drawn.map(({ most, values }) => most * force * values.force);
  return { error, taper: { low: 0, middle: 0, high: 0 }, most: band(Float64Array.from(all)) };
}

/** Size along the work after one pass. */
export function sizeAfter(prepared: PreparedSetup, ladder: ForceLadder, depth: Mm): SizeResult {
  const sides = prepared.setup.operation === 'facing' ? 1 : 2;
  const left = (give: MmPerNewton) => sides * (depth - takenOnLadder(ladder, depth, give));
  const error = prepared.give.map(left);
  const tapers = new Float64Array(prepared.drawn.length);
  const mosts = new Float64Array(prepared.drawn.length);
  prepared.drawn.forEach(({ values, least, most }, i) => {
    const worst = left(most * values.force);
    mosts[i] = worst;
    tapers[i] = worst - left(least * values.force);
  });
  const most = band(mosts);
  const { axialFloat = 0, operation } = prepared.setup;
  if (operation !== 'facing' || axialFloat === 0) return { error, taper: band(tapers), most };
  // The spindle may have stood anywhere in its float when the edge touched.
  return {
    error: error.map((e) => e + axialFloat / 2),
    taper: band(tapers),
    most: { low: most.low, middle: most.middle + axialFloat / 2, high: most.high + axialFloat },
  };
}

function band(values: Float64Array): { low: number; middle: number; high: number } {
  const sorted = inOrder(values);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return { low: at(0.05), middle: at(0.5), high: at(0.95) };
}

/** Sorts in place; for as few numbers as a route's draws the plain way is the quickest. */
export function inOrder(values: Float64Array): Float64Array {
  if (values.length > 24) return values.sort();
  for (let i = 1; i < values.length; i++) {
    const value = values[i] ?? 0;
    let at = i;
    while (at > 0 && (values[at - 1] ?? 0) > value) {
      values[at] = values[at - 1] ?? 0;
      at--;
    }
    values[at] = value;
  }
  return values;
}
