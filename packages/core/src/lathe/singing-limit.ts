/**
 * The load at which one lathe sings in one setup, for every approach angle and rubbing time that a cut may have; and how far a
 * cut stays below it.
 */
import type { EdgeCondition } from '../cutting/edge.ts';
import { inPlaneRatio } from '../cutting/turning-force.ts';
import { DomainError } from '../errors.ts';
import { leastOnGrid } from '../structure/least-stable-width.ts';
import { type LobeGrid, lobeGrid, lookedAt } from '../structure/lobe-grid.ts';
import { type MetrePerMinute, type Mm, radians } from '../units/quantities.ts';
import type { Setup } from './chain.ts';
import type { CutForces } from './cut-forces.ts';
import type { Values } from './elements.ts';
import { type Facing, type LatheMode, latheModes, oriented } from './vibration.ts';

/** What the limit of one draw is looked up with. */
export interface DrawnLimits {
  readonly logForce: number;
  readonly logRubbing: number;
  /** ln of chip breadth times chip stiffness at the limit, by approach angle and rubbing time. */
  readonly limits: Float64Array;
}

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

export function limitTable(
  values: Values,
  setup: Setup,
  station: Mm,
  ratio: number,
  chipStiffness: number,
): Float64Array {
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
