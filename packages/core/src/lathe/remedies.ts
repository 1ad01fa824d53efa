/**
 * What would help: every remedy tried on the model of this very cut, with the same draws, and ranked by what it gains.
 */
import { rubbing } from '../cutting/rubbing.ts';
import { cuttingSpeed } from '../cutting/speed.ts';
import { DomainError } from '../errors.ts';
import type { Mm } from '../units/quantities.ts';
import { powerOf, usualEfficiency } from './capability.ts';
import { chanceOf } from './chatter.ts';
import { type CutMaterial, cutForces } from './cut-forces.ts';
import { allGood, rank, type Weighed, weigh } from './cut-verdict.ts';
import { drivePower } from './drive.ts';
import { prepareSetup } from './prepare-setup.ts';
import { type Effort, notReckoned, type Remedy, remedies, type Trial } from './remedy-list.ts';
import { chanceDraws } from './sampling.ts';
import type { Lathe } from './schema.ts';
import { chatterMargins } from './singing-limit.ts';
import { forceLadder, plunges, pushedOff, sizeAfter } from './size-after.ts';

/** How a cut fares, in the numbers by which remedies are told apart. */
export interface Outcome {
  /** Greatest depth with everything good; 0 when there is none. When grooving or parting, the width of the edge. */
  readonly safeDepth: Mm;
  readonly chatter: number;
  /** ln of limit over load, at most 2 either way, in the mean of all draws: moves evenly where the chance jumps. */
  readonly margin: number;
  /** Difference of size along the work at the depth asked for. */
  readonly taper: Mm;
  /** Greatest size error there. */
  readonly sizeError: Mm;
  /** Metal taken at the safe depth with this feed and speed [mm³/min]. */
  readonly rate: number;
  /** What decides at the depth asked for. */
  readonly decides: Weighed;
}

export interface TriedRemedy extends Outcome {
  readonly name: string;
  readonly effort: Effort;
  readonly assumes?: string | undefined;
  /** Score it is ranked by: above 0 it helps. */
  readonly gain: number;
}

export interface RemedyList {
  readonly asItStands: Outcome;
  readonly remedies: readonly TriedRemedy[];
  /** Known in the trade, but not something this model can tell. */
  readonly notReckoned: readonly string[];
}

/**
 * Tries every remedy that applies to a cut.
 *
 * @throws DomainError when the cut or the setup cannot be
 */
export function whatWouldHelp(trial: Trial, material: CutMaterial, lathe: Lathe): RemedyList {
  const asItStands = outcome(trial, material, lathe);
  const found = remedies.flatMap((remedy): TriedRemedy[] => {
    const tried = remedy.apply(trial, lathe);
    if (!tried) return [];
    const after = outcome(tried, material, lathe);
    return [{ ...labels(remedy), ...after, gain: gainOf(asItStands, after) }];
  });
  return { asItStands, remedies: found.toSorted((a, b) => b.gain - a.gain), notReckoned };
}

/** What is told of a remedy beside its figures. */
export function labels({
  name,
  effort,
  assumes,
}: Omit<Remedy, 'apply'>): Pick<TriedRemedy, 'name' | 'effort' | 'assumes'> {
  return { name, effort, ...(assumes === undefined ? {} : { assumes }) };
}

/**
 * How much better one outcome is than another: room before it sings, depth, size and time, each as a logarithm, so that none
 * drowns the others. Depth and time count little beside the rest: they jump where a limit is crossed.
 */
export function gainOf(before: Outcome, after: Outcome): number {
  const ratio = (a: number, b: number, floor: number) => Math.log((a + floor) / (b + floor));
  const depth = ratio(after.safeDepth, before.safeDepth, 0.05);
  const size = ratio(before.sizeError, after.sizeError, 0.002);
  const time = ratio(after.rate, before.rate, 20);
  return after.margin - before.margin + depth / 4 + size / 2 + time / 4;
}

/**
 * How a cut fares.
 *
 * @throws DomainError when the cut or the setup cannot be
 */
export function outcome(
  { setup, asked, joint }: Trial,
  material: CutMaterial,
  lathe: Lathe,
  count = chanceDraws,
): Outcome {
  if (!(asked.depth > 0)) throw new DomainError('depth', asked.depth, 'more than 0 mm');
  const prepared = prepareSetup(joint, setup, material, count);
  const plunge = plunges(setup);
  const rungs = plunge ? plungeRungs : depthRungs;
  const deepest = Math.max(asked.depth, rungs.at(-1) ?? 1);
  const ladder = plunge ? undefined : forceLadder(setup, material, asked.feed, deepest);
  const safeDepth = rungs.findLast((depth) => allGood(prepared, lathe, { ...asked, depth }, ladder)) ?? 0;
  const forces = cutForces(setup, material, asked.depth, asked.feed);
  const speed = cuttingSpeed(setup.diameter, asked.speed);
  const margins = chatterMargins(prepared.drawn, setup.cutter.edge, forces, speed);
  const size = ladder ? sizeAfter(prepared, ladder, asked.depth) : pushedOff(prepared, forces.square);
  const chatter = chanceOf(margins);
  const power = powerOf(forces, setup.diameter, asked.speed, lathe.drive.efficiency ?? usualEfficiency);
  const weighed = weigh(prepared, {
    ...asked,
    size,
    chatter,
    powerShare: power / drivePower(lathe, asked.speed),
    rubbing: rubbing(forces.chipThickness, setup.cutter.edge),
  });
  return {
    safeDepth,
    chatter,
    margin: margins.reduce((sum, m) => sum + Math.min(2, Math.max(-2, m)), 0) / margins.length,
    taper: size.taper.middle,
    sizeError: size.most.middle,
    rate: 1000 * speed * asked.feed * safeDepth,
    decides: weighed.reduce((worst, w) => (rank(w) > rank(worst) ? w : worst)),
  };
}

const depthRungs = Array.from({ length: 24 }, (_, i) => Number((0.02 * 1.19 ** i).toPrecision(2)));
const plungeRungs = [0.3, 0.5, 0.6, 0.8, 1, 1.2, 1.5, 1.8, 2, 2.5, 3];
