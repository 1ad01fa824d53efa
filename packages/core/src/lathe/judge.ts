/**
 * How any cut of an operation fares on this lathe, cheap enough to be asked a thousand times while a route is planned.
 *
 *     const known = knownLathe(workshop);                        once for a workshop: what its tests taught
 *     const judge = judgeOf(known, setup, material);             once for an operation, with the work as it stands at that moment
 *     const fares = judge({ depth, feed, speed, sizeLimit });    for every cut thought of
 *
 * `setup` says what is cut, how the work is held and stands out, and with which cutter; `material` comes from `materialOf`. Eight
 * to twelve stations along the cut are plenty. When grooving or parting, `depth` is the width of the edge. Drilling, threading and
 * work by hand are not judged here.
 *
 * Twelve draws stand for what is not known of the lathe while cuts are looked through. `judge.chance` takes all that a chance is
 * counted from and answers as `judgeCut` does; what is shown to people goes by it.
 */
import { rubbing } from '../cutting/rubbing.ts';
import { cuttingSpeed } from '../cutting/speed.ts';
import type { Finding } from '../finding.ts';
import type { Mm, MmPerRev } from '../units/quantities.ts';
import { axialFloatOf } from './axial-float.ts';
import { bladeFindings } from './blade-findings.ts';
import { type JudgedCut, powerOf, usualEfficiency } from './capability.ts';
import type { Setup } from './chain.ts';
import { chatterFromFew, chatterProbability } from './chatter.ts';
import { type CutMaterial, cutForces } from './cut-forces.ts';
import { type AskedCut, checkAsked, rank, type Verdict, type Weighed, weigh } from './cut-verdict.ts';
import { drivePower } from './drive.ts';
import type { Values } from './elements.ts';
import { latheKnowledge } from './knowledge.ts';
import { type PreparedSetup, readyToDraw } from './prepare-setup.ts';
import { chanceDraws, draws, middle } from './sampling.ts';
import type { Workshop } from './schema.ts';
import { type ForceLadder, forceLadder, plunges, pushedOff, sizeAfter } from './size-after.ts';

/** What is known of a workshop's lathe, ready to judge with. */
export interface KnownLathe {
  readonly lathe: Workshop['lathe'];
  readonly middle: Values;
  /** Draws that stand for what is not known, as many as a chance is counted from. */
  readonly draws: readonly Values[];
}

/** Forces against depth, by everything they hang on but the feed, and then by feed: operations of a route share their cutters. */
const forceLadders = new WeakMap<KnownLathe, Map<string, Map<MmPerRev, ForceLadder>>>();

function laddersFor(
  known: KnownLathe,
  { operation, cutter }: Setup,
  material: CutMaterial,
): Map<MmPerRev, ForceLadder> {
  const { noseRadius, approachAngle, rake, edge } = cutter;
  const { specificForce, exponent, rakeReference = 0 } = material.cutData;
  const key = [operation, noseRadius, approachAngle, rake, edge, specificForce, exponent, rakeReference].join();
  const all = forceLadders.get(known) ?? new Map<string, Map<MmPerRev, ForceLadder>>();
  forceLadders.set(known, all);
  const found = all.get(key) ?? new Map<MmPerRev, ForceLadder>();
  all.set(key, found);
  return found;
}

/** How one cut fares. `size.most` is the greatest error one pass leaves, `size.taper` the difference along the work. */
export interface Fares extends JudgedCut {
  /** `goes`: everything good. `goes if`: something marginal. `not on this lathe`: something bad, at this depth, feed and speed. */
  readonly verdict: Verdict;
  /** The number that decides, with the limits it is held against. */
  readonly decides: Weighed;
  readonly weighed: readonly Weighed[];
}

export interface Judge {
  (asked: AskedCut): Fares;
  /** The chance that a cut sings, as `judgeCut` gives it: the one that is shown. */
  readonly chance: (asked: Pick<AskedCut, 'depth' | 'feed' | 'speed'>) => number;
  /** What is to be said of the blade of a plunge: that it digs in, may break, or that its height was not told. */
  readonly ofBlade: (asked: Pick<AskedCut, 'depth' | 'feed'>) => readonly Finding[];
}

const fewDraws = 12;
const fewRungs = 12;

/** A workshop document never changes, so that what its tests taught is worked out once. */
const remembered = new WeakMap<
  Workshop['lathe'],
  Map<string, { readonly cutters: unknown; readonly known: KnownLathe }>
>();

/**
 * What is known of a workshop's lathe in a state; in its present one when left out. The same workshop is worked out once.
 *
 * @throws InputError when a test names what is not there, DomainError when a push cannot be
 */
export function knownLathe(workshop: Pick<Workshop, 'lathe' | 'cutters'>, state?: string): KnownLathe {
  const { lathe, cutters } = workshop;
  const states = remembered.get(lathe) ?? new Map();
  const before = states.get(state ?? '');
  if (before?.cutters === cutters) return before.known;
  const { joint } = latheKnowledge(workshop, state);
  const known: KnownLathe = { lathe, middle: middle(joint), draws: draws(joint, chanceDraws) };
  states.set(state ?? '', { cutters, known });
  remembered.set(lathe, states);
  return known;
}

/**
 * Judges the cuts of one operation in one setup.
 *
 * @returns a function from depth [mm, on the radius], feed [mm/rev] and speed [rpm] to how the cut fares; it throws a DomainError
 * when the cut lies outside what the force model covers
 * @throws DomainError when the setup cannot stand: a station off the work, no grip, a tool without overhang
 */
export function judgeOf(known: KnownLathe, setup: Setup, material: CutMaterial): Judge {
  const floating = { axialFloat: axialFloatOf(known.lathe), ...setup };
  const { draw, ...ready } = readyToDraw(known.middle, floating, material);
  const prepared: PreparedSetup = { ...ready, drawn: known.draws.slice(0, fewDraws).map(draw) };
  const efficiency = known.lathe.drive.efficiency ?? usualEfficiency;
  const ladders = laddersFor(known, setup, material);
  const ladderFor = (depth: Mm, feed: MmPerRev) => {
    const before = ladders.get(feed);
    if (before && (before.depths.at(-1) ?? 0) >= depth) return before;
    const ladder = forceLadder(setup, material, feed, Math.max(2 * depth, setup.cutter.maxDepth), fewRungs);
    ladders.set(feed, ladder);
    return ladder;
  };
  let whole: PreparedSetup | undefined;
  const chance: Judge['chance'] = ({ depth, feed, speed }) => {
    whole ??= { ...ready, drawn: [...prepared.drawn, ...known.draws.slice(fewDraws).map(draw)] };
    return chatterProbability(whole, cutForces(setup, material, depth, feed), cuttingSpeed(setup.diameter, speed));
  };
  const judge = (asked: AskedCut): Fares => {
    checkAsked(asked);
    const { depth, feed, speed } = asked;
    const forces = cutForces(setup, material, depth, feed);
    const cut: JudgedCut = {
      depth,
      feed,
      speed,
      cutting: forces.cutting,
      square: forces.square,
      powerShare: powerOf(forces, setup.diameter, speed, efficiency) / drivePower(known.lathe, speed),
      size: plunges(setup) ? pushedOff(prepared, forces.square) : sizeAfter(prepared, ladderFor(depth, feed), depth),
      rubbing: rubbing(forces.chipThickness, setup.cutter.edge),
      chatter: chatterFromFew(prepared, forces, cuttingSpeed(setup.diameter, speed)),
    };
    const weighed = weigh(prepared, { ...cut, sizeLimit: asked.sizeLimit });
    const decides = weighed.reduce((worst, w) => (rank(w) > rank(worst) ? w : worst));
    const verdict = { good: 'goes', marginal: 'goes if', bad: 'not on this lathe' } as const;
    return { ...cut, verdict: verdict[decides.state], decides, weighed };
  };
  const ofBlade: Judge['ofBlade'] = ({ depth, feed }) =>
    plunges(setup) ? bladeFindings(setup, cutForces(setup, material, depth, feed), Math.min(...ready.give)) : [];
  return Object.assign(judge, { chance, ofBlade });
}
