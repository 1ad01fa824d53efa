/**
 * The load at which one lathe sings in one setup, for every approach angle and rubbing time that a cut may have; and how far a
 * cut stays below it.
 */
import type { EdgeCondition } from '../cutting/edge.ts';
import { inPlaneRatio } from '../cutting/turning-force.ts';
import { DomainError } from '../errors.ts';
import { leastOnGrid } from '../structure/least-stable-width.ts';
import { emptyGrid, type FacedGrid, lookedAt, putOnGrid } from '../structure/lobe-grid.ts';
import { type MetrePerMinute, type Radian, radians } from '../units/quantities.ts';
import type { Setup } from './chain.ts';
import type { CutForces } from './cut-forces.ts';
import type { Values } from './elements.ts';
import { directionParts, type LatheMode, latheModes, type RingingWork } from './vibration.ts';

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
 * Modes that may sing together: their receptances summed by how they go with the way the cut faces, so that any way is a sum of
 * four. For each frequency, one behind the other, real and imaginary part [mm/N] of what counts by cos², cos, sin² and sin of the
 * effective approach angle.
 */
interface Choir {
  readonly omega: Float64Array;
  readonly sums: Float64Array;
  /**
   * By how much less the rubbing drives a blade that whips than the chip does: the land is pressed square to itself, and drags by
   * friction only. Real and imaginary part [mm/N], counting by cos; left out without a blade.
   */
  readonly eased?: Float64Array | undefined;
}

const perOmega = 8;
/** Friction of a flank that rubs, steel on steel and oiled; from memory. */
const flankFriction = 0.3;

function choirOf(modes: readonly LatheMode[], setup: Setup, inPlaneRatio: number): Choir {
  const square = setup.operation === 'facing' ? 'axial' : 'radial';
  const omega = lookedAt(modes, 'coarse');
  const sums = new Float64Array(perOmega * omega.length);
  const eased = modes.some((m) => m.of === 'blade') ? new Float64Array(2 * omega.length) : undefined;
  for (const mode of modes) {
    const { frequency, stiffness, damping, axis } = mode;
    const lessDriven = mode.of === 'blade' ? 1 - flankFriction * inPlaneRatio : 0;
    const { p, q } = directionParts(mode, inPlaneRatio);
    const first = axis === square ? 0 : 4;
    for (let i = 0; i < omega.length; i++) {
      const r = (omega[i] ?? 0) / frequency;
      const a = 1 - r * r;
      const b = 2 * damping * r;
      const share = 1 / (stiffness * (a * a + b * b));
      const at = perOmega * i + first;
      sums[at] = (sums[at] ?? 0) + p * share * a;
      sums[at + 1] = (sums[at + 1] ?? 0) - p * share * b;
      sums[at + 2] = (sums[at + 2] ?? 0) + q * share * a;
      sums[at + 3] = (sums[at + 3] ?? 0) - q * share * b;
      if (!eased || lessDriven === 0) continue;
      eased[2 * i] = (eased[2 * i] ?? 0) + lessDriven * q * share * a;
      eased[2 * i + 1] = (eased[2 * i + 1] ?? 0) - lessDriven * q * share * b;
    }
  }
  for (let i = 0; i < omega.length; i++) omega[i] = 2 * Math.PI * (omega[i] ?? 0);
  return { omega, sums, eased };
}

/**
 * All modes together; with a boring bar also the bar alone, and the rest without it. Together is what the theory asks, but the
 * bar's own give then quietens the low modes of the lathe, and a thicker or shorter bar comes out worse than a thin long one.
 * No turner has seen that, and it is not relied on.
 */
function choirsOf(modes: readonly LatheMode[], setup: Setup, inPlaneRatio: number): Choir[] {
  const choir = (some: readonly LatheMode[]) => choirOf(some, setup, inPlaneRatio);
  const bar = modes.filter((m) => m.of === 'boring bar');
  if (bar.length === 0) return [choir(modes)];
  return [choir(modes), choir(bar), choir(modes.filter((m) => m.of !== 'boring bar'))];
}

/** Where a cut with this effective approach angle can sing at all. */
function facedGrid({ omega, sums, eased }: Choir, effectiveApproach: Radian): FacedGrid {
  const c = Math.cos(effectiveApproach);
  const s = Math.sin(effectiveApproach);
  const realAt = (at: number) =>
    c * (c * (sums[at] ?? 0) + (sums[at + 2] ?? 0)) + s * (s * (sums[at + 4] ?? 0) + (sums[at + 6] ?? 0));
  // Counted first: most of a grid with room for all would lie empty, and thousands are made.
  let count = 0;
  for (let i = 0; i < omega.length; i++) if (realAt(perOmega * i) < 0) count++;
  const grid = emptyGrid(count);
  const rubs = eased && new Float64Array(2 * count);
  for (let i = 0; i < omega.length; i++) {
    const at = perOmega * i;
    const re = realAt(at);
    if (re >= 0) continue;
    const im =
      c * (c * (sums[at + 1] ?? 0) + (sums[at + 3] ?? 0)) + s * (s * (sums[at + 5] ?? 0) + (sums[at + 7] ?? 0));
    if (eased && rubs) {
      // Gᵣ/G = 1 − E/G.
      const [er, ei] = [c * (eased[2 * i] ?? 0), c * (eased[2 * i + 1] ?? 0)];
      const size = re * re + im * im;
      rubs[2 * grid.count] = 1 - (er * re + ei * im) / size;
      rubs[2 * grid.count + 1] = -(ei * re - er * im) / size;
    }
    putOnGrid(grid, omega[i] ?? 0, re, im);
  }
  return rubs ? { ...grid, rubs } : grid;
}

function leastOf(grids: readonly FacedGrid[], rubbingTime: number, landTime: number): number {
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

/** The limits of one draw in a setup, worked out as they are asked for. */
export interface DrawnLimits {
  readonly logForce: number;
  readonly logRubbing: number;
  /** ln of chip breadth times chip stiffness at the limit, by approach angle and rubbing time; NaN where not yet asked. */
  readonly limits: Float64Array;
  readonly choirs: readonly Choir[];
  readonly grids: (readonly FacedGrid[] | undefined)[];
  readonly land: number;
}

/** Readies one draw. `chipStiffness` is that of an everyday chip: the land does not hang on it closely. */
export function drawnLimits(
  values: Values,
  setup: Setup,
  ringing: RingingWork,
  inPlaneRatio: number,
  chipStiffness: number,
): DrawnLimits {
  return {
    logForce: Math.log(values.force),
    logRubbing: Math.log(values.rubbing),
    limits: new Float64Array(approachSteps * rubbingSteps).fill(Number.NaN),
    choirs: choirsOf(latheModes(values, setup, ringing), setup, inPlaneRatio),
    grids: [],
    land: landOverRubbing(values, setup, chipStiffness),
  };
}

function limitAt(draw: DrawnLimits, row: number, column: number): number {
  const at = row * rubbingSteps + column;
  const known = draw.limits[at] ?? unlimited;
  if (!Number.isNaN(known)) return known;
  const grids = draw.grids[row] ?? draw.choirs.map((choir) => facedGrid(choir, row * approachStep));
  draw.grids[row] = grids;
  const time = column === 0 ? 0 : rubbingLeast * rubbingRatio ** (column - 1);
  const least = leastOf(grids, time, time * draw.land);
  const limit = least < Infinity ? Math.min(unlimited, Math.log(least)) : unlimited;
  draw.limits[at] = limit;
  return limit;
}

/** ln of limit over load for each draw; between the entries of the tables straight lines. */
export function chatterMargins(
  drawn: readonly DrawnLimits[],
  edge: EdgeCondition,
  forces: CutForces,
  speed: MetrePerMinute,
): Float64Array {
  if (!(speed > 0)) throw new DomainError('cuttingSpeed', speed, 'more than 0 m/min');
  const blunt = edgeRubbing[edge];
  const time = Math.log((blunt * 60) / (forces.chipStiffness * speed * 1000) / rubbingLeast);
  const load = Math.log(forces.chipWidth * forces.chipStiffness);
  const a = Math.min(approachSteps - 1 - 1e-9, Math.max(0, forces.effectiveApproach / approachStep));
  const row = Math.floor(a);
  const u = a - row;
  const margins = new Float64Array(drawn.length);
  for (let i = 0; i < drawn.length; i++) {
    const draw = drawn[i];
    if (!draw) continue;
    const { logForce, logRubbing } = draw;
    const steps = 1 + (time + logRubbing - logForce) / logRatio;
    const r = Math.min(rubbingSteps - 1 - 1e-9, Math.max(0, steps));
    const column = Math.floor(r);
    const v = r - column;
    const here = (1 - v) * limitAt(draw, row, column) + v * limitAt(draw, row, column + 1);
    const next = (1 - v) * limitAt(draw, row + 1, column) + v * limitAt(draw, row + 1, column + 1);
    margins[i] = (1 - u) * here + u * next - load - logForce;
  }
  return margins;
}

/** ln of limit over load of one cut for one set of values, without tables. */
export function marginOf(
  values: Values,
  setup: Setup,
  ringing: RingingWork,
  forces: CutForces,
  speed: MetrePerMinute,
): number {
  const ratio = inPlaneRatio(radians(setup.cutter.rake));
  const choirs = choirsOf(latheModes(values, setup, ringing), setup, ratio);
  const grids = choirs.map((choir) => facedGrid(choir, forces.effectiveApproach));
  const rubbing = values.rubbing * edgeRubbing[setup.cutter.edge];
  const time = (rubbing * 60) / (forces.chipStiffness * values.force * speed * 1000);
  const land = landOverRubbing(values, setup, forces.chipStiffness);
  const limit = Math.min(unlimited, Math.log(leastOf(grids, time, time * land)));
  return limit - Math.log(forces.chipWidth * forces.chipStiffness * values.force);
}
