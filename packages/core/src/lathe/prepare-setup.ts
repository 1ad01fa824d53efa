/**
 * A setup with the spread of all that is not known of the lathe, so that whatever does not depend on the cut is worked out once.
 */
import { inPlaneRatio } from '../cutting/turning-force.ts';
import type { MmPerNewton } from '../structure/stepped-beam.ts';
import { radians } from '../units/quantities.ts';
import { checkSetup, clampedWork, giveAtCut, type Setup } from './chain.ts';
import { type CutMaterial, cutForces } from './cut-forces.ts';
import type { Values } from './elements.ts';
import { chanceDraws, draws, type Joint, middle } from './sampling.ts';
import { type DrawnLimits, drawnLimits } from './singing-limit.ts';
import { ringingWork } from './vibration.ts';

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

interface Drawn extends DrawnLimits {
  readonly values: Values;
  readonly least: MmPerNewton;
  readonly most: MmPerNewton;
}

/** Draws that stand for what is not known: three batches, for bounds of sizes within a tenth of those of 1500 draws. */
const usualDraws = 3 * chanceDraws;

/**
 * Makes a setup ready for any number of cuts.
 *
 * @throws DomainError when the setup cannot stand
 */
export function prepareSetup(joint: Joint, setup: Setup, material: CutMaterial, count = usualDraws): PreparedSetup {
  return prepareWith({ middle: middle(joint), draws: draws(joint, count) }, setup, material);
}

/** A lathe as it may be: its most likely values, and draws that stand for what is not known. */
export interface DrawnLathe {
  readonly middle: Values;
  readonly draws: readonly Values[];
}

/**
 * As {@link prepareSetup}, with draws made before.
 *
 * @throws DomainError when the setup cannot stand
 */
export function prepareWith(lathe: DrawnLathe, setup: Setup, material: CutMaterial): PreparedSetup {
  const { draw, ...ready } = readyToDraw(lathe.middle, setup, material);
  return { ...ready, drawn: lathe.draws.map(draw) };
}

/** A setup with what all draws share. */
interface ReadyToDraw extends Omit<PreparedSetup, 'drawn'> {
  readonly draw: (values: Values) => Drawn;
}

/**
 * Works out what all draws of a setup share, so that some may be drawn now and more when they are needed.
 *
 * @throws DomainError when the setup cannot stand
 */
export function readyToDraw(likeliest: Values, setup: Setup, material: CutMaterial): ReadyToDraw {
  checkSetup(setup);
  const bending = clampedWork(setup.work, setup.stations);
  const give = giveAtCut(likeliest, setup, bending);
  const softest = give.reduce((best, c, i) => (c > (give[best] ?? 0) ? i : best), 0);
  const ratio = inPlaneRatio(radians(setup.cutter.rake));
  const ringing = ringingWork(setup.work, setup.stations[softest] ?? 0);
  const usualStiffness = cutForces(setup, material, setup.cutter.width ?? 0.2, 0.05).chipStiffness;
  const draw = (values: Values): Drawn => {
    const all = giveAtCut(values, setup, bending);
    return {
      values,
      least: Math.min(...all),
      most: Math.max(...all),
      ...drawnLimits(values, setup, ringing, ratio, usualStiffness),
    };
  };
  return { setup, material, give, softest, draw };
}
