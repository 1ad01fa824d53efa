/** One cut that might be taken: what it asks of cutter, drive, work and lathe, and which limits it breaks. */
import type { Cutter } from '../cutting/cutter.ts';
import { cuttingPower, motorPower } from '../cutting/power.ts';
import { minimumChip } from '../cutting/rubbing.ts';
import { cuttingSpeed } from '../cutting/speed.ts';
import { type CutData, type TurningForce, turningForce } from '../cutting/turning-force.ts';
import { drivePower } from '../lathe/drive.ts';
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
import { passHandling, singingBorne, usablePower, usualEfficiency } from './practice.ts';

/** What an operation asks of its cut. */
export interface CutWanted {
  /** Diameter where the cut is fastest. */
  readonly diameter: Mm;
  /** Distance fed in one pass. */
  readonly length: Mm;
  /** To take off altogether, on the radius. */
  readonly total: Mm;
  /** Least step of the slide that sets the depth; passes are whole multiples of it. */
  readonly division: Mm;
  readonly fewestPasses: number;
  /** Give of the work, or of the boring bar, at the worst station; for where the lathe is not judged. */
  readonly yielding: MmPerNewton;
  /** How a cut fares on the lathe as it is; it takes the place of `yielding`. */
  readonly fares?: ((cut: Setting) => OnLathe) | undefined;
  /** Most that it may give way, on the diameter. */
  readonly bendingLimit: Mm;
  readonly finish: Micrometre | undefined;
  /** Largest feed published for it, or that its nose stands. */
  readonly feedLimit?: MmPerRev | undefined;
  readonly speeds: { readonly low: MetrePerMinute; readonly high: MetrePerMinute };
  readonly cutData: CutData;
  readonly where: 'outside' | 'bore';
}

export interface Setting {
  readonly depth: Mm;
  readonly feed: MmPerRev;
  readonly rpm: Rpm;
}

/** How a cut fares on the lathe. */
export interface OnLathe {
  /** Error of size that counts, on the diameter: what stays of it, or for a last cut its difference along the work. */
  readonly error: Mm;
  /** Greatest error of size, on the diameter. */
  readonly most: Mm;
  /** Difference of size along the work, on the diameter. */
  readonly taper: Mm;
  /** Probability that it sings. */
  readonly sings: number;
}

export type Limit = 'bending' | 'sings' | 'power' | 'cutter' | 'chip' | 'finish' | 'feed';

/** A value held against its limit: above it the limit is broken, for the chip below it. */
export interface Measure {
  readonly limit: Limit;
  readonly value: number;
  readonly most: number;
}

export interface Candidate extends Setting {
  readonly passes: number;
  readonly force: TurningForce;
  readonly power: number;
  readonly powerShare: number;
  readonly bending: Mm;
  /** How it fares on the lathe; undefined where that is not judged. */
  readonly onLathe: OnLathe | undefined;
  readonly over: readonly Measure[];
  readonly broken: readonly Limit[];
  readonly weight: number;
  /** How far the broken limits are passed, as a sum of ratios. */
  readonly excess: number;
  readonly time: Second;
}

/** What is given up first when no cut keeps all limits: a rough surface can be papered, a stalled motor cuts nothing. */
const weights: Record<Limit, number> = { finish: 1, feed: 1, bending: 2, chip: 2, sings: 3, cutter: 4, power: 4 };

/** Feeds a hand keeps up on a lathe without power feed; `common practice`. */
export const handFeeds: readonly MmPerRev[] = [0.05, 0.08, 0.12];

export function feedsOf(lathe: Lathe): readonly MmPerRev[] {
  return lathe.feeds.length === 0 ? handFeeds : lathe.feeds;
}

/** Roughness Ra to be sure of at a feed: the careful end of what the chapter on finish expects. */
function roughness(feed: MmPerRev, noseRadius: Mm): Micrometre {
  return noseRadius > 0 && feed <= noseRadius ? expectedRa(feed, noseRadius).high : Number.POSITIVE_INFINITY;
}

export function passTime(wanted: CutWanted, feed: MmPerRev, rpm: Rpm): Second {
  return (60 * wanted.length) / (feed * rpm) + passHandling;
}

export function forceOf(wanted: CutWanted, cutter: Cutter, depth: Mm, feed: MmPerRev): TurningForce {
  return turningForce({
    depth,
    feed,
    noseRadius: cutter.noseRadius,
    approachAngle: radians(cutter.approachAngle),
    rake: radians(cutter.rake),
    edge: cutter.edge,
    cutData: wanted.cutData,
    where: wanted.where,
  });
}

/** How far a limit is passed: above 1 it is broken. */
export function excess({ limit, value, most }: Measure): number {
  return limit === 'chip' ? most / value : value / most;
}

/** The better of two: what breaks the lighter limits, by the least; of two that keep them all the quicker. */
export function pick(a: Candidate, b: Candidate): Candidate {
  const order = b.weight - a.weight || (b.weight > 0 ? b.excess - a.excess : 0) || b.time - a.time;
  return order < 0 ? b : a;
}

/** Everything that a cut asks, and the limits it breaks. */
export function judge(
  wanted: CutWanted,
  cutter: Cutter,
  lathe: Lathe,
  cut: Setting & { readonly passes: number; readonly force: TurningForce },
): Candidate {
  const { force, feed, rpm, passes, depth } = cut;
  const onLathe = wanted.fares?.({ depth, feed, rpm });
  const speed = cuttingSpeed(wanted.diameter, rpm);
  const power = motorPower(cuttingPower(force.cutting, speed), lathe.drive.efficiency ?? usualEfficiency);
  const powerShare = power / drivePower(lathe, rpm);
  const bending = onLathe ? onLathe.error : 2 * force.radial * wanted.yielding;
  const over: Measure[] = [];
  const held = (limit: Limit, value: number, most: number) => {
    if (excess({ limit, value, most }) > 1) over.push({ limit, value, most });
  };
  held('bending', bending, wanted.bendingLimit);
  held('sings', onLathe?.sings ?? 0, singingBorne);
  held('power', powerShare, usablePower);
  held('cutter', depth, cutter.maxDepth + 1e-9);
  held('chip', force.chipThickness, minimumChip(cutter.edge).usual);
  if (wanted.feedLimit !== undefined) held('feed', feed, wanted.feedLimit + 1e-9);
  if (wanted.finish !== undefined) held('finish', roughness(feed, cutter.noseRadius), wanted.finish);
  return {
    depth,
    feed,
    rpm,
    passes,
    force,
    power,
    powerShare,
    bending,
    onLathe,
    over,
    broken: over.map(({ limit }) => limit),
    weight: over.reduce((sum, { limit }) => sum + weights[limit], 0),
    excess: over.reduce((sum, m) => sum + Math.min(excess(m), 1e6), 0),
    time: passes * passTime(wanted, feed, rpm),
  };
}
