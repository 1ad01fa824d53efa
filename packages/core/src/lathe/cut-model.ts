/**
 * What cuts of one setup do on this lathe: force, size along the work, and whether they sing, with the spread of all that is
 * not known of the lathe. Whatever does not depend on the cut is worked out once.
 */
import type { EdgeCondition } from '../cutting/edge.ts';
import { groovingForce } from '../cutting/grooving.ts';
import { type CutData, chipCompression, inPlaneRatio, rakeCorrection, turningForce } from '../cutting/turning-force.ts';
import { DomainError } from '../errors.ts';
import { type LobeGrid, leastOnGrid, lobeGrid, lookedAt } from '../structure/stability.ts';
import type { MmPerNewton } from '../structure/stepped-beam.ts';
import { type MetrePerMinute, type Mm, type MmPerRev, type Newton, type Radian, radians } from '../units/quantities.ts';
import { checkSetup, clampedWork, giveAtCut, type Setup } from './chain.ts';
import type { Values } from './elements.ts';
import { draws, type Joint, middle } from './sampling.ts';
import { type Facing, type LatheMode, latheModes, oriented } from './vibration.ts';

/** Forces and chip of a cut, before anything gives way. */
export interface CutForces {
  readonly cutting: Newton;
  /** Square to the surface cut. */
  readonly square: Newton;
  readonly feed: Newton;
  readonly chipWidth: Mm;
  readonly chipThickness: Mm;
  readonly effectiveApproach: Radian;
  /** By how much the in-plane force grows for each mm of breadth and of thickness [MPa]. */
  readonly chipStiffness: number;
}

export interface CutMaterial {
  readonly cutData: CutData;
  /** Hardens where it is rubbed. */
  readonly hardens: boolean;
}

/** A setup made ready: the spread of its give, and of its limits. */
export interface PreparedSetup {
  readonly setup: Setup;
  readonly material: CutMaterial;
  /** Give at every station with the middle values. */
  readonly give: readonly MmPerNewton[];
  /** Station that gives most. */
  readonly softest: number;
  /** One for each draw. */
  readonly drawn: readonly Drawn[];
}

interface Drawn {
  readonly values: Values;
  readonly logForce: number;
  readonly logRubbing: number;
  readonly least: MmPerNewton;
  readonly most: MmPerNewton;
  /** ln of chip breadth times chip stiffness at the limit, by approach angle and rubbing time. */
  readonly limits: Float64Array;
}

/** Draws that stand for what is not known. */
export const usualDraws = 64;
const approachSteps = 7;
const approachStep = Math.PI / 2 / (approachSteps - 1);
/** Rubbing time C/(Kf v) the limits are worked out for [s], evenly in logarithm; below the first it does not matter. */
const rubbingLeast = 5e-6;
const rubbingSteps = 10;
const rubbingRatio = 2.2;
const logRatio = Math.log(rubbingRatio);
/** Rubbing of an edge over that of a honed one: the land that rubs grows with the rounding, and the rubbing with its square. */
const edgeRubbing: Record<EdgeCondition, number> = { sharp: 0.4, honed: 1, moulded: 2.5 };
/** ln of a load that no cut reaches [N/mm]. */
const unlimited = Math.log(1e6);

/**
 * Makes a setup ready for any number of cuts.
 *
 * @throws DomainError when the setup cannot stand
 */
export function prepareSetup(joint: Joint, setup: Setup, material: CutMaterial, count = usualDraws): PreparedSetup {
  checkSetup(setup);
  const bending = clampedWork(setup.work, setup.stations);
  const give = giveAtCut(middle(joint), setup, bending);
  const softest = give.reduce((best, c, i) => (c > (give[best] ?? 0) ? i : best), 0);
  const ratio = inPlaneRatio(radians(setup.cutter.rake));
  // Thickness of an everyday chip: the land does not hang on it closely.
  const usualStiffness = cutForces(setup, material, setup.cutter.width ?? 0.2, 0.05).chipStiffness;
  const drawn = draws(joint, count).map((values): Drawn => {
    const all = giveAtCut(values, setup, bending);
    return {
      values,
      logForce: Math.log(values.force),
      logRubbing: Math.log(values.rubbing),
      least: Math.min(...all),
      most: Math.max(...all),
      limits: limitTable(values, setup, setup.stations[softest] ?? 0, ratio, usualStiffness),
    };
  });
  return { setup, material, give, softest, drawn };
}

/**
 * All modes together; with a boring bar also the bar alone, and the rest without it. Together is what the theory asks, but the
 * bar's own give then quietens the low modes of the lathe, and a thicker or shorter bar comes out worse than a thin long one.
 * No turner has seen that, and it is not relied on.
 */
function gridsOf(modes: readonly LatheMode[], facing: Facing, frequencies: Float64Array): LobeGrid[] {
  const grid = (some: readonly LatheMode[]) => {
    const felt = oriented(some, facing);
    return felt.length === 0 ? [] : [lobeGrid(felt, some === modes ? frequencies : lookedAt(felt, 'coarse'))];
  };
  const bar = modes.filter((m) => m.of === 'boring bar');
  if (bar.length === 0) return grid(modes);
  return [...grid(modes), ...grid(bar), ...grid(modes.filter((m) => m.of !== 'boring bar'))];
}

function leastOf(grids: readonly LobeGrid[], rubbingTime: number, landTime: number): number {
  let least = Infinity;
  for (const grid of grids) least = Math.min(least, leastOnGrid(grid, rubbingTime, landTime));
  return least;
}

/** Metal pressed aside by the flank [N/mm³]; wu-1989, from memory, somewhere in 4·10⁴ to 4·10⁵ for steel. */
const pressedAside = 1.3e5;

/**
 * Time in which the cut passes the land that rubs, over the rubbing time: with C = K l²/2, l/v = C/(Kf v) · Kf √(2/(K C)).
 */
function landOverRubbing(values: Values, setup: Setup, chipStiffness: number): number {
  const rubbing = values.rubbing * edgeRubbing[setup.cutter.edge];
  return chipStiffness * values.force * Math.sqrt(2 / (pressedAside * rubbing));
}

function limitTable(values: Values, setup: Setup, station: Mm, ratio: number, chipStiffness: number): Float64Array {
  const land = landOverRubbing(values, setup, chipStiffness);
  const modes = latheModes(values, setup, station);
  const frequencies = lookedAt(modes, 'coarse');
  const square = setup.operation === 'facing' ? 'axial' : 'radial';
  const table = new Float64Array(approachSteps * rubbingSteps);
  for (let a = 0; a < approachSteps; a++) {
    const facing = { effectiveApproach: a * approachStep, square, inPlaneRatio: ratio } as const;
    const grids = gridsOf(modes, facing, frequencies);
    for (let r = 0; r < rubbingSteps; r++) {
      const time = r === 0 ? 0 : rubbingLeast * rubbingRatio ** (r - 1);
      const limit = leastOf(grids, time, time * land);
      table[a * rubbingSteps + r] = limit < Infinity ? Math.min(unlimited, Math.log(limit)) : unlimited;
    }
  }
  return table;
}

/** Forces of a cut in this setup; depth is the width of the edge when grooving or parting. */
export function cutForces(setup: Setup, material: CutMaterial, depth: Mm, feed: MmPerRev): CutForces {
  const { cutter, operation } = setup;
  const { cutData } = material;
  const rake = radians(cutter.rake);
  const slope = (thickness: Mm, squeeze: number) =>
    (1 - cutData.exponent) *
    cutData.specificForce *
    thickness ** -cutData.exponent *
    squeeze *
    rakeCorrection(rake, cutData.rakeReference ?? 0) *
    inPlaneRatio(rake);
  if (operation === 'grooving' || operation === 'parting') {
    const made = groovingForce({ width: depth, feed, rake, edge: cutter.edge, cutData });
    return {
      cutting: made.cutting,
      square: made.radial,
      feed: 0,
      chipWidth: depth,
      chipThickness: feed,
      effectiveApproach: 0,
      chipStiffness: slope(feed, chipCompression.groove),
    };
  }
  const where = operation === 'boring' ? 'bore' : 'outside';
  const { noseRadius } = cutter;
  const approachAngle = radians(cutter.approachAngle);
  const made = turningForce({ depth, feed, noseRadius, approachAngle, rake, edge: cutter.edge, cutData, where });
  return {
    cutting: made.cutting,
    square: made.radial,
    feed: made.feed,
    chipWidth: made.chipWidth,
    chipThickness: made.chipThickness,
    effectiveApproach: Math.min(made.effectiveApproach, Math.PI / 2),
    chipStiffness: slope(made.chipThickness, chipCompression[where]),
  };
}

/** How near a cut is to singing. */
export interface Chatter {
  /** Share of the draws in which it sings. */
  readonly probability: number;
  /** Limit over what the cut asks, at most 20: above 1 it is quiet; middle, and the bounds of nine in ten draws. */
  readonly margin: { readonly low: number; readonly middle: number; readonly high: number };
}

/** A margin beyond this says only that nothing sings. */
const muchMargin = 20;

/** Whether a cut sings, over all draws. */
export function chatter(prepared: PreparedSetup, forces: CutForces, speed: MetrePerMinute): Chatter {
  const margins = chatterMargins(prepared, forces, speed);
  const sings = margins.reduce((n, m) => n + (m < 0 ? 1 : 0), 0);
  const sorted = margins.sort();
  const at = (share: number) =>
    Math.min(muchMargin, Math.exp(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0));
  return {
    probability: rounded(sings, margins.length),
    margin: { low: at(0.05), middle: at(0.5), high: at(0.95) },
  };
}

/** The probability alone. */
export function chatterProbability(prepared: PreparedSetup, forces: CutForces, speed: MetrePerMinute): number {
  const margins = chatterMargins(prepared, forces, speed);
  let sings = 0;
  for (const margin of margins) if (margin < 0) sings++;
  return rounded(sings, margins.length);
}

/** Half a draw more on either side: none of 64 singing does not prove that none ever will. */
function rounded(sings: number, draws: number): number {
  return (sings + 0.5) / (draws + 1);
}

/** ln of limit over load for each draw; between the entries of the tables straight lines. */
function chatterMargins(prepared: PreparedSetup, forces: CutForces, speed: MetrePerMinute): Float64Array {
  if (!(speed > 0)) throw new DomainError('cuttingSpeed', speed, 'more than 0 m/min');
  const blunt = edgeRubbing[prepared.setup.cutter.edge];
  const time = Math.log((blunt * 60) / (forces.chipStiffness * speed * 1000) / rubbingLeast);
  const load = Math.log(forces.chipWidth * forces.chipStiffness);
  const a = Math.min(approachSteps - 1 - 1e-9, Math.max(0, forces.effectiveApproach / approachStep));
  const row = Math.floor(a);
  const u = a - row;
  const { drawn } = prepared;
  const margins = new Float64Array(drawn.length);
  for (let i = 0; i < drawn.length; i++) {
    const draw = drawn[i];
    if (!draw) continue;
    const { limits, logForce, logRubbing } = draw;
    const steps = 1 + (time + logRubbing - logForce) / logRatio;
    const r = Math.min(rubbingSteps - 1 - 1e-9, Math.max(0, steps));
    const column = Math.floor(r);
    const v = r - column;
    const at = row * rubbingSteps + column;
    const here = (1 - v) * (limits[at] ?? 0) + v * (limits[at + 1] ?? 0);
    const next = (1 - v) * (limits[at + rubbingSteps] ?? 0) + v * (limits[at + rubbingSteps + 1] ?? 0);
    margins[i] = (1 - u) * here + u * next - load - logForce;
  }
  return margins;
}

/** ln of limit over load of one cut for one set of values, without tables. */
export function marginOf(values: Values, setup: Setup, station: Mm, forces: CutForces, speed: MetrePerMinute): number {
  const square = setup.operation === 'facing' ? 'axial' : 'radial';
  const facing = {
    effectiveApproach: forces.effectiveApproach,
    square,
    inPlaneRatio: inPlaneRatio(radians(setup.cutter.rake)),
  } as const;
  const modes = latheModes(values, setup, station);
  const grids = gridsOf(modes, facing, lookedAt(modes, 'coarse'));
  const rubbing = values.rubbing * edgeRubbing[setup.cutter.edge];
  const time = (rubbing * 60) / (forces.chipStiffness * values.force * speed * 1000);
  const land = landOverRubbing(values, setup, forces.chipStiffness);
  const limit = Math.min(unlimited, Math.log(leastOf(grids, time, time * land)));
  return limit - Math.log(forces.chipWidth * forces.chipStiffness * values.force);
}

/** Force square to the surface against depth, known at a ladder of depths. */
export interface ForceLadder {
  readonly depths: Float64Array;
  readonly forces: Float64Array;
}

/** The ladder of one feed, up to a depth. */
export function forceLadder(setup: Setup, material: CutMaterial, feed: MmPerRev, deepest: Mm): ForceLadder {
  const rungs = 20;
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
  return { error, taper: band(tapers), most: band(mosts) };
}

function band(values: Float64Array): { low: number; middle: number; high: number } {
  const sorted = values.sort();
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return { low: at(0.05), middle: at(0.5), high: at(0.95) };
}
