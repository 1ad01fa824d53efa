/**
 * One cut on this lathe: what it pushes and needs, what size it leaves, whether it rubs or sings, and whether it goes.
 */

import { rubbing } from '../cutting/rubbing.ts';
import { cuttingSpeed } from '../cutting/speed.ts';
import { DomainError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import { formatLength } from '../units/format.ts';
import type { LengthUnit } from '../units/length.ts';
import type { Mm, MmPerRev, Newton, Rpm, Watt } from '../units/quantities.ts';
import { floatFindings } from './axial-float.ts';
import { bladeFindings } from './blade-findings.ts';
import { depthLadder, type JudgedCut, powerOf, usualEfficiency } from './capability.ts';
import { type Chatter, chatter, chatterProbability } from './chatter.ts';
import { cutForces } from './cut-forces.ts';
import { drivePower } from './drive.ts';
import type { PreparedSetup } from './prepare-setup.ts';
import type { Lathe } from './schema.ts';
import { type ForceLadder, forceLadder, plunges, pushedOff, type SizeResult, sizeAfter } from './size-after.ts';

export interface AskedCut {
  /** On the radius; the width of the edge when grooving or parting. */
  readonly depth: Mm;
  readonly feed: MmPerRev;
  readonly speed: Rpm;
  /** Greatest difference of size along the work that will do, on the diameter; not judged when left out. */
  readonly sizeLimit?: Mm | undefined;
}

/** What a verdict rests on. */
export type Criterion = 'chatter' | 'power' | 'rubbing' | 'size' | 'cutter' | 'push';

/** A number held against its limits: up to `good` it goes, beyond `bad` it does not. */
export interface Weighed {
  readonly criterion: Criterion;
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly good: number;
  readonly bad: number;
  readonly state: 'good' | 'marginal' | 'bad';
}

export type Verdict = 'goes' | 'goes if' | 'not on this lathe';

export interface CutVerdict {
  readonly verdict: Verdict;
  /** In one sentence. */
  readonly says: string;
  /** The number that decides. */
  readonly decides: Weighed;
  readonly weighed: readonly Weighed[];
  /** Greatest depth with the same feed and speed at which everything is good; absent when there is none. */
  readonly safeDepth?: Mm | undefined;
  readonly cutting: Newton;
  /** Square to the surface cut, and along the feed. */
  readonly square: Newton;
  readonly feedForce: Newton;
  readonly power: Watt;
  readonly powerShare: number;
  readonly size: SizeResult;
  readonly chatter: Chatter;
  readonly findings: readonly Finding[];
}

/** Probability of singing that one may start with, and that at which one need not start; judgement. */
export const chatterLimits = { good: 0.25, bad: 0.6 } as const;
/** Share of the motor's power; common practice. */
const powerLimits = { good: 0.85, bad: 1 } as const;
/** How far a plunging edge may be pushed off before it digs in or the groove is spoilt, on the radius [mm]; judgement. */
const pushLimits = { good: 0.05, bad: 0.25 } as const;
/** A difference of size up to this many times the limit can be turned out by partial passes. */
const correctable = 4;

/**
 * Judges one cut.
 *
 * @param units  unit of lengths in the sentence; all numbers are in mm
 * @throws DomainError when the cut lies outside what the force model covers
 */
export function judgeCut(
  prepared: PreparedSetup,
  lathe: Pick<Lathe, 'speeds' | 'drive' | 'tests'>,
  asked: AskedCut,
  units: LengthUnit = 'mm',
): CutVerdict {
  checkAsked(asked);
  const { setup, material } = prepared;
  const forces = cutForces(setup, material, asked.depth, asked.feed);
  const ladder = forceLadder(setup, material, asked.feed, asked.depth);
  const size = plunges(prepared.setup) ? pushedOff(prepared, forces.square) : sizeAfter(prepared, ladder, asked.depth);
  const speed = cuttingSpeed(setup.diameter, asked.speed);
  const power = powerOf(forces, setup.diameter, asked.speed, lathe.drive.efficiency ?? usualEfficiency);
  const powerShare = power / drivePower(lathe, asked.speed);
  const sings = chatter(prepared, forces, speed);
  const rubs = rubbing(forces.chipThickness, setup.cutter.edge);
  const weighed = weigh(prepared, { ...asked, powerShare, size, rubbing: rubs, chatter: sings.probability });
  const decides = weighed.reduce((worst, w) => (rank(w) > rank(worst) ? w : worst));
  const safeDepth = decides.state === 'good' ? asked.depth : deepestGood(prepared, lathe, asked);
  const verdict: Verdict =
    decides.state === 'good'
      ? 'goes'
      : decides.state === 'marginal' || safeDepth !== undefined
        ? 'goes if'
        : 'not on this lathe';
  return {
    verdict,
    says: sentence(verdict, decides, safeDepth, plunges(prepared.setup), units),
    decides,
    weighed,
    ...(safeDepth === undefined ? {} : { safeDepth }),
    cutting: forces.cutting,
    square: forces.square,
    feedForce: forces.feed,
    power,
    powerShare,
    size,
    chatter: sings,
    findings: [
      ...weighed.filter((w) => w.state !== 'good').map((w) => finding(w, material.hardens)),
      ...(plunges(setup) ? bladeFindings(setup, forces, Math.min(...prepared.give)) : []),
      ...floatFindings(prepared, forces.square, lathe.tests?.axialFloat !== undefined),
    ],
  };
}

export function checkAsked({ depth, feed, speed, sizeLimit }: AskedCut): void {
  if (!(depth > 0)) throw new DomainError('depth', depth, 'more than 0 mm');
  if (!(feed > 0)) throw new DomainError('feed', feed, 'more than 0 mm/rev');
  if (!(speed > 0)) throw new DomainError('speed', speed, 'more than 0 rpm');
  if (sizeLimit !== undefined && !(sizeLimit > 0)) throw new DomainError('sizeLimit', sizeLimit, 'more than 0 mm');
}

type ToWeigh = Pick<JudgedCut, 'depth' | 'powerShare' | 'size' | 'rubbing' | 'chatter'> & Pick<AskedCut, 'sizeLimit'>;

/** Every number of a cut against its limits. */
export function weigh(prepared: PreparedSetup, cut: ToWeigh): Weighed[] {
  const { cutter } = prepared.setup;
  const { hardens } = prepared.material;
  const one = (
    criterion: Criterion,
    what: string,
    value: number,
    unit: string,
    good: number,
    bad: number,
  ): Weighed => ({
    criterion,
    what,
    value,
    unit,
    good,
    bad,
    state: value <= good ? 'good' : value <= bad ? 'marginal' : 'bad',
  });
  const rubs = { cuts: 0, 'may rub': 1, rubs: 2 }[cut.rubbing];
  const plunge = plunges(prepared.setup);
  return [
    one('chatter', 'probability that it sings', cut.chatter, '', chatterLimits.good, chatterLimits.bad),
    one('power', 'share of the motor’s power', cut.powerShare, '', powerLimits.good, powerLimits.bad),
    one('rubbing', 'chip against the edge: 0 cuts, 1 may rub, 2 rubs', rubs, '', hardens ? 0 : 1, hardens ? 1 : 2),
    plunge
      ? one('push', 'edge and work pushed apart', Math.abs(cut.size.most.middle), 'mm', pushLimits.good, pushLimits.bad)
      : one('cutter', 'depth of cut', cut.depth, 'mm', cutter.maxDepth + 1e-9, 1.5 * cutter.maxDepth),
    ...(cut.sizeLimit === undefined || plunge
      ? []
      : [
          one(
            'size',
            'difference of size along the work',
            cut.size.taper.middle,
            'mm',
            cut.sizeLimit,
            correctable * cut.sizeLimit,
          ),
        ]),
  ];
}

/** How bad a weighed number is, to find the one that decides: whole steps for its state, and how far into it. */
export function rank({ state, value, good, bad }: Weighed): number {
  if (state === 'bad') return 2 + Math.min(0.99, value / bad / 100);
  if (state === 'marginal') return 1 + (value - good) / (bad - good || 1) / 1.01;
  return good > 0 ? Math.min(0.99, value / good) : 0;
}

/** Greatest depth of the ladder, below the one asked, at which all is good. */
function deepestGood(prepared: PreparedSetup, lathe: Pick<Lathe, 'speeds' | 'drive'>, asked: AskedCut): Mm | undefined {
  const rungs = plunges(prepared.setup) ? [0.5, 0.8, 1, 1.2, 1.5, 2, 2.5, 3] : depthLadder;
  return rungs.findLast((depth) => depth < asked.depth && allGood(prepared, lathe, { ...asked, depth }));
}

/** Whether everything of a cut is good; cheaper than a whole verdict. */
export function allGood(
  prepared: PreparedSetup,
  lathe: Pick<Lathe, 'speeds' | 'drive'>,
  asked: AskedCut,
  ladder?: ForceLadder,
): boolean {
  const { setup, material } = prepared;
  const forces = cutForces(setup, material, asked.depth, asked.feed);
  const power = powerOf(forces, setup.diameter, asked.speed, lathe.drive.efficiency ?? usualEfficiency);
  const size = plunges(prepared.setup)
    ? pushedOff(prepared, forces.square)
    : sizeAfter(prepared, ladder ?? forceLadder(setup, material, asked.feed, asked.depth), asked.depth);
  return weigh(prepared, {
    ...asked,
    size,
    powerShare: power / drivePower(lathe, asked.speed),
    rubbing: rubbing(forces.chipThickness, setup.cutter.edge),
    chatter: chatterProbability(prepared, forces, cuttingSpeed(setup.diameter, asked.speed)),
  }).every(({ state }) => state === 'good');
}

/** To a micrometre, or to a ten-thousandth of an inch. */
const length = (mm: Mm, units: LengthUnit) =>
  `${formatLength(mm, units, { decimals: units === 'in' ? 4 : 3 })} ${units}`;
const shown = (w: Weighed, units: LengthUnit) =>
  w.unit === 'mm' ? length(w.value, units) : `${Math.round(100 * w.value)} %`;

const conditions: Record<Criterion, string> = {
  chatter: 'it is watched for singing',
  power: 'the motor is not asked for more',
  rubbing: 'the chip is made thicker',
  size: 'the taper is turned out by partial passes',
  cutter: 'the cutter stands it',
  push: 'the plunge is fed gently and the groove widened by side cuts',
};

function sentence(
  verdict: Verdict,
  decides: Weighed,
  safe: Mm | undefined,
  plunge: boolean,
  units: LengthUnit,
): string {
  const number =
    decides.criterion === 'rubbing' ? 'the chip is thin for this edge' : `${decides.what} ${shown(decides, units)}`;
  if (verdict === 'goes') return `Goes: ${number}.`;
  if (verdict === 'not on this lathe') return `Not on this lathe as it stands: ${number}.`;
  const less =
    safe === undefined
      ? ''
      : ` or ${plunge ? 'the edge is no wider than' : 'the depth is no more than'} ${units === 'in' ? length(safe, units) : `${safe} mm`}`;
  const condition = decides.state === 'bad' ? less.replace(/^ or /, '') : `${conditions[decides.criterion]}${less}`;
  return `Goes if ${condition}: ${number}.`;
}

const remedies: Record<Criterion, readonly string[]> = {
  chatter: ['cut less deep', 'shorten what stands out', 'use a smaller nose radius', 'lower the speed'],
  power: ['cut less deep', 'feed less', 'choose a slower speed where the drive has full power'],
  rubbing: ['feed more', 'use a sharper edge', 'cut deeper and leave nothing for a last light pass'],
  size: [
    'support the end with the tailstock',
    'take partial passes where it is thick',
    'use a sharper edge with a smaller nose',
  ],
  cutter: ['take two passes', 'use a stouter cutter'],
  push: ['use a narrower edge and widen the groove by side cuts', 'feed less', 'groove nearer to the jaws'],
};

function finding(w: Weighed, hardens: boolean): Finding {
  const level = w.state === 'bad' && (w.criterion !== 'rubbing' || hardens) ? 'stop' : 'caution';
  return {
    id: `lathe.cut-${w.criterion}`,
    level,
    stage: 'route',
    at: 'cut',
    says: `${w.what.slice(0, 1).toUpperCase()}${w.what.slice(1)}: ${w.state === 'bad' ? 'too much for this lathe' : 'on the edge'}.`,
    because: [
      { what: w.what, value: Number(w.value.toPrecision(3)), unit: w.unit, limit: Number(w.good.toPrecision(3)) },
    ],
    remedies: remedies[w.criterion],
  };
}
