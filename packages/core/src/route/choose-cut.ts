/**
 * Chooses depth, feed and speed for an operation: the quickest of all the lathe's own speeds and feeds that stays within
 * power, bending, cutter and chip limits. When none does, says which limit stands in the way.
 */
import type { Cutter } from '../cutting/cutter.ts';
import { cuttingPower, motorPower } from '../cutting/power.ts';
import { minimumChip } from '../cutting/rubbing.ts';
import { cuttingSpeed } from '../cutting/speed.ts';
import { type CutData, type TurningForce, turningForce } from '../cutting/turning-force.ts';
import { drivePower, spindleSpeeds } from '../lathe/drive.ts';
import type { Lathe } from '../lathe/schema.ts';
import { expectedRa } from '../standards/finish/turned-roughness.ts';
import type { MmPerNewton } from '../structure/stepped-beam.ts';
import {
  type MetrePerMinute,
  type Micrometre,
  type Mm,
  type MmPerRev,
  type Rpm,
  radians,
  type Second,
} from '../units/quantities.ts';
import { passHandling, usablePower } from './practice.ts';
import type { CutNumbers } from './route-result.ts';

/** What an operation asks of its cut. */
export interface CutWanted {
  /** Diameter where the cut is fastest. */
  readonly diameter: Mm;
  /** Distance fed in one pass. */
  readonly length: Mm;
  /** To take off altogether, on the radius. */
  readonly total: Mm;
  readonly fewestPasses: number;
  /** Give of the work at the worst station. */
  readonly yielding: MmPerNewton;
  /** Most that the work may give way, on the diameter. */
  readonly bendingLimit: Mm;
  readonly finish: Micrometre | undefined;
  readonly speeds: { readonly low: MetrePerMinute; readonly high: MetrePerMinute };
  readonly cutData: CutData;
  readonly where: 'outside' | 'bore';
}

export type Limit = 'bending' | 'power' | 'cutter' | 'chip' | 'finish';

export interface ChosenCut {
  readonly numbers: CutNumbers;
  /** The radial forces for the chosen cut, for the pass table. */
  readonly force: TurningForce;
  readonly time: Second;
  /** Limits that even the best cut breaks; empty when it goes. */
  readonly broken: readonly Limit[];
  readonly tooFast: boolean;
}

/** Feeds a hand keeps up on a lathe without power feed; `common practice`. */
const handFeeds: readonly MmPerRev[] = [0.05, 0.08, 0.12];

/** Roughness Ra to be sure of at a feed: the careful end of what the chapter on finish expects. */
function roughness(feed: MmPerRev, noseRadius: Mm): Micrometre {
  return noseRadius > 0 && feed <= noseRadius ? expectedRa(feed, noseRadius).high : Number.POSITIVE_INFINITY;
}

/** The best cut, with the limits it breaks if there is none that keeps them all. */
export function chooseCut(wanted: CutWanted, cutter: Cutter, lathe: Lathe): ChosenCut {
  const speeds = allowedSpeeds(lathe, wanted);
  const byHand = lathe.feeds.length === 0;
  const feeds = byHand ? handFeeds : lathe.feeds;
  const candidates = speeds.rpm.flatMap((rpm) =>
    feeds.flatMap((feed) =>
      passCounts(wanted, cutter).map((passes) => evaluate(wanted, cutter, lathe, rpm, feed, passes, byHand)),
    ),
  );
  const best = candidates.reduce((a, b) => (better(b, a) ? b : a));
  return { ...best, tooFast: speeds.tooFast };
}

type Candidate = Omit<ChosenCut, 'tooFast'>;

function better(a: Candidate, b: Candidate): boolean {
  if (a.broken.length !== b.broken.length) return a.broken.length < b.broken.length;
  return a.time < b.time;
}

/** The lathe's speeds inside the material's range; failing that the nearest slower, failing that the slowest. */
function allowedSpeeds(lathe: Lathe, wanted: CutWanted): { rpm: readonly Rpm[]; tooFast: boolean } {
  const all = spindleSpeeds(lathe);
  const at = (rpm: Rpm) => cuttingSpeed(wanted.diameter, rpm);
  const inside = all.filter((rpm) => at(rpm) >= wanted.speeds.low && at(rpm) <= wanted.speeds.high);
  if (inside.length > 0) return { rpm: inside, tooFast: false };
  const slower = all.filter((rpm) => at(rpm) < wanted.speeds.low);
  if (slower.length > 0) return { rpm: [Math.max(...slower)], tooFast: false };
  return { rpm: [Math.min(...all)], tooFast: true };
}

function passCounts(wanted: CutWanted, cutter: Cutter): number[] {
  const fewest = Math.max(wanted.fewestPasses, Math.ceil(wanted.total / cutter.maxDepth - 1e-9), 1);
  return Array.from({ length: 12 }, (_, i) => Math.round(fewest * 1.25 ** i + (i > 0 ? i * 0.5 : 0)));
}

function evaluate(
  wanted: CutWanted,
  cutter: Cutter,
  lathe: Lathe,
  rpm: Rpm,
  feed: MmPerRev,
  passes: number,
  byHand: boolean,
): Candidate {
  const depth = wanted.total / passes;
  const force = turningForce({
    depth,
    feed,
    noseRadius: cutter.noseRadius,
    approachAngle: radians(cutter.approachAngle),
    rake: radians(cutter.rake),
    edge: cutter.edge,
    cutData: wanted.cutData,
    where: wanted.where,
  });
  const speed = cuttingSpeed(wanted.diameter, rpm);
  const power = motorPower(cuttingPower(force.cutting, speed), lathe.drive.efficiency ?? 0.75);
  const powerShare = power / drivePower(lathe, rpm);
  const bending = 2 * force.radial * wanted.yielding;
  const broken: Limit[] = [];
  if (bending > wanted.bendingLimit) broken.push('bending');
  if (powerShare > usablePower) broken.push('power');
  if (depth > cutter.maxDepth) broken.push('cutter');
  if (force.chipThickness < minimumChip(cutter.edge).usual) broken.push('chip');
  if (wanted.finish !== undefined && roughness(feed, cutter.noseRadius) > wanted.finish) broken.push('finish');
  const cuttingTime = (60 * wanted.length) / (feed * rpm);
  return {
    numbers: {
      depth,
      feed,
      byHand,
      speed: rpm,
      cuttingSpeed: speed,
      passes,
      cuttingForce: force.cutting,
      radialForce: force.radial,
      power,
      powerShare,
      bending,
      specificForce: wanted.cutData.specificForce,
    },
    force,
    time: passes * (cuttingTime + passHandling),
    broken,
  };
}
