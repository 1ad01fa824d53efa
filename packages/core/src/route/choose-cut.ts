/**
 * Chooses depth, feed and speed for an operation: the quickest of all the lathe's own speeds and feeds, and of all depths its dial
 * can set, that stays within power, bending, cutter and chip limits. When none does, says which limits stand in the way and takes
 * the cut that breaks the least by the least.
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
import { passHandling, usablePower, usualEfficiency } from './practice.ts';
import type { CutNumbers } from './route-result.ts';

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
  /** Give of the work, or of the boring bar, at the worst station. */
  readonly yielding: MmPerNewton;
  /** Most that it may give way, on the diameter. */
  readonly bendingLimit: Mm;
  readonly finish: Micrometre | undefined;
  readonly speeds: { readonly low: MetrePerMinute; readonly high: MetrePerMinute };
  readonly cutData: CutData;
  readonly where: 'outside' | 'bore';
}

export type Limit = 'bending' | 'power' | 'cutter' | 'chip' | 'finish';

/** What stops the cut from being quicker in one of its three numbers. */
export interface Binding {
  readonly raise: 'depth' | 'feed' | 'speed';
  /** The next larger value that was not taken; undefined when there is none. */
  readonly next: number | undefined;
  /** What it would break, with the value it would have and the limit; undefined when there is no next. */
  readonly breaks: Measure | undefined;
}

export interface ChosenCut {
  readonly numbers: CutNumbers;
  /** The forces and the chip of the chosen cut. */
  readonly force: TurningForce;
  readonly time: Second;
  /** Limits that even the best cut breaks; empty when it goes. */
  readonly broken: readonly Limit[];
  readonly tooFast: boolean;
  readonly binding: readonly Binding[];
  /** Limits that it breaks, with value and limit, in the order of `broken`. */
  readonly passed: readonly Measure[];
}

/** A value held against its limit: above it the limit is broken, for the chip below it. */
export interface Measure {
  readonly limit: Limit;
  readonly value: number;
  readonly most: number;
}

/** Feeds a hand keeps up on a lathe without power feed; `common practice`. */
export const handFeeds: readonly MmPerRev[] = [0.05, 0.08, 0.12];

/** What is given up first when no cut keeps all limits: a rough surface can be papered, a stalled motor cuts nothing. */
const weights: Record<Limit, number> = { finish: 1, bending: 2, chip: 2, cutter: 4, power: 4 };

/** Roughness Ra to be sure of at a feed: the careful end of what the chapter on finish expects. */
function roughness(feed: MmPerRev, noseRadius: Mm): Micrometre {
  return noseRadius > 0 && feed <= noseRadius ? expectedRa(feed, noseRadius).high : Number.POSITIVE_INFINITY;
}

/** The best cut, with the limits it breaks if there is none that keeps them all. */
export function chooseCut(wanted: CutWanted, cutter: Cutter, lathe: Lathe): ChosenCut {
  const { rpm, slower, tooFast } = allowedSpeeds(lathe, wanted);
  const best = bestOf(wanted, cutter, lathe, rpm);
  const weak = best.broken.includes('power') && slower.length > 0;
  const chosen = weak ? pick(best, bestOf(wanted, cutter, lathe, slower)) : best;
  return {
    ...finished(chosen, wanted, lathe),
    tooFast,
    binding: chosen.broken.length > 0 ? [] : bindingOf(chosen, wanted, cutter, lathe, [...slower, ...rpm]),
    passed: chosen.over,
  };
}

/** The three ways to be quicker, each with what it would break: by that the chosen cut is the quickest. */
function bindingOf(
  chosen: Candidate,
  wanted: CutWanted,
  cutter: Cutter,
  lathe: Lathe,
  speeds: readonly Rpm[],
): Binding[] {
  const { passes, feed, rpm, depth, force } = chosen;
  const counts = passCounts(wanted, cutter);
  const deeper = counts[counts.findIndex((c) => c.passes === passes) - 1] ?? onePassFewer(wanted, passes);
  const coarser = feedsOf(lathe)
    .toSorted((a, b) => a - b)
    .find((f) => f > feed);
  const faster = speeds.find((s) => s > rpm);
  const judged = (cut: Pick<Candidate, 'depth' | 'feed' | 'rpm' | 'passes'>, same?: TurningForce) => {
    const rough = wanted.finish === undefined ? 0 : roughness(cut.feed, cutter.noseRadius);
    const found = judge(
      wanted,
      cutter,
      { ...cut, force: same ?? forceOf(wanted, cutter, cut.depth, cut.feed) },
      drivePower(lathe, cut.rpm),
      rough,
      lathe,
    );
    return found.over.toSorted((a, b) => excess(b) - excess(a))[0];
  };
  return [
    { raise: 'depth', next: deeper?.depth, breaks: deeper && judged({ ...deeper, feed, rpm }) },
    {
      raise: 'feed',
      next: coarser,
      breaks: coarser === undefined ? undefined : judged({ passes, depth, feed: coarser, rpm }),
    },
    {
      raise: 'speed',
      next: faster,
      breaks: faster === undefined ? undefined : judged({ passes, depth, feed, rpm: faster }, force),
    },
  ];
}

/** What a pass fewer would have to take, where it was not even considered. */
function onePassFewer(
  { total, division, fewestPasses }: CutWanted,
  passes: number,
): { passes: number; depth: Mm } | undefined {
  if (passes <= Math.max(1, fewestPasses)) return undefined;
  return { passes: passes - 1, depth: Math.ceil(Math.floor(total / division + 1e-6) / (passes - 1)) * division };
}

/** How far a limit is passed: above 1 it is broken. */
function excess({ limit, value, most }: Measure): number {
  return limit === 'chip' ? most / value : value / most;
}

interface Candidate {
  readonly depth: Mm;
  readonly feed: MmPerRev;
  readonly rpm: Rpm;
  readonly passes: number;
  readonly force: TurningForce;
  readonly power: number;
  readonly powerShare: number;
  readonly bending: Mm;
  readonly over: readonly Measure[];
  readonly broken: readonly Limit[];
  readonly weight: number;
  /** How far the broken limits are passed, as a sum of ratios. */
  readonly excess: number;
  readonly time: Second;
}

function pick(a: Candidate, b: Candidate): Candidate {
  const order = b.weight - a.weight || (b.weight > 0 ? b.excess - a.excess : 0) || b.time - a.time;
  return order < 0 ? b : a;
}

/**
 * Goes through every feed and every depth that the dial can set. The force does not depend on the speed, so it is worked out once for
 * all speeds; and once a cut keeps every limit, more passes at the same feed can be left out as soon as they must take longer.
 */
function bestOf(wanted: CutWanted, cutter: Cutter, lathe: Lathe, speeds: readonly Rpm[]): Candidate {
  const counts = passCounts(wanted, cutter);
  const fastest = Math.max(...speeds);
  const drive = new Map(speeds.map((rpm) => [rpm, drivePower(lathe, rpm)]));
  let best: Candidate | undefined;
  for (const feed of feedsOf(lathe)) {
    const rough = wanted.finish === undefined ? 0 : roughness(feed, cutter.noseRadius);
    for (const { passes, depth } of counts) {
      if (best?.weight === 0 && passTime(wanted, feed, fastest) * passes >= best.time) break;
      const force = forceOf(wanted, cutter, depth, feed);
      for (const rpm of speeds) {
        const candidate = judge(wanted, cutter, { depth, feed, rpm, passes, force }, drive.get(rpm) ?? 0, rough, lathe);
        best = best ? pick(best, candidate) : candidate;
      }
    }
  }
  if (!best) throw new Error('no speed, feed or depth to choose from');
  return best;
}

function feedsOf(lathe: Lathe): readonly MmPerRev[] {
  return lathe.feeds.length === 0 ? handFeeds : lathe.feeds;
}

function passTime(wanted: CutWanted, feed: MmPerRev, rpm: Rpm): Second {
  return (60 * wanted.length) / (feed * rpm) + passHandling;
}

function forceOf(wanted: CutWanted, cutter: Cutter, depth: Mm, feed: MmPerRev): TurningForce {
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

function judge(
  wanted: CutWanted,
  cutter: Cutter,
  cut: Pick<Candidate, 'depth' | 'feed' | 'rpm' | 'passes' | 'force'>,
  available: number,
  rough: number,
  lathe: Lathe,
): Candidate {
  const { force, feed, rpm, passes, depth } = cut;
  const speed = cuttingSpeed(wanted.diameter, rpm);
  const power = motorPower(cuttingPower(force.cutting, speed), lathe.drive.efficiency ?? usualEfficiency);
  const powerShare = power / available;
  const bending = 2 * force.radial * wanted.yielding;
  const measures: readonly Measure[] = [
    { limit: 'bending', value: bending, most: wanted.bendingLimit },
    { limit: 'power', value: powerShare, most: usablePower },
    { limit: 'cutter', value: depth, most: cutter.maxDepth + 1e-9 },
    { limit: 'chip', value: force.chipThickness, most: minimumChip(cutter.edge).usual },
    { limit: 'finish', value: rough, most: wanted.finish ?? Number.POSITIVE_INFINITY },
  ];
  const over = measures.filter((m) => excess(m) > 1);
  return {
    ...cut,
    power,
    powerShare,
    bending,
    over,
    broken: over.map(({ limit }) => limit),
    weight: over.reduce((sum, { limit }) => sum + weights[limit], 0),
    excess: over.reduce((sum, m) => sum + Math.min(excess(m), 1e6), 0),
    time: passes * passTime(wanted, feed, rpm),
  };
}

/** The lathe's speeds inside the material's range; failing that the nearest slower, failing that the slowest. */
function allowedSpeeds(
  lathe: Lathe,
  wanted: CutWanted,
): { rpm: readonly Rpm[]; slower: readonly Rpm[]; tooFast: boolean } {
  const all = spindleSpeeds(lathe);
  const at = (rpm: Rpm) => cuttingSpeed(wanted.diameter, rpm);
  const inside = all.filter((rpm) => at(rpm) >= wanted.speeds.low && at(rpm) <= wanted.speeds.high);
  const slower = all.filter((rpm) => at(rpm) < wanted.speeds.low);
  if (inside.length > 0) return { rpm: inside, slower, tooFast: false };
  if (slower.length > 0) return { rpm: slower.slice(-1), slower: slower.slice(0, -1), tooFast: false };
  return { rpm: all.slice(0, 1), slower: [], tooFast: true };
}

/** Every number of passes that makes a difference, fewest first, with the depth of the deepest of them in whole divisions. */
function passCounts(wanted: CutWanted, cutter: Cutter): { passes: number; depth: Mm }[] {
  const divisions = Math.floor(wanted.total / wanted.division + 1e-6);
  if (divisions < 1) return [{ passes: 1, depth: wanted.total }];
  // In whole divisions throughout: a hair over the cutter's depth must not cost a pass that the dial does not make.
  const most = Math.max(1, Math.floor(cutter.maxDepth / wanted.division + 1e-6));
  const fewest = Math.max(wanted.fewestPasses, Math.ceil(divisions / most), 1);
  const counts: { passes: number; depth: Mm }[] = [];
  for (let passes = Math.min(fewest, divisions); ; ) {
    const each = Math.ceil(divisions / passes);
    counts.push({ passes, depth: each * wanted.division });
    if (each === 1) return counts;
    passes = Math.ceil(divisions / (each - 1));
  }
}

function finished(
  chosen: Candidate,
  wanted: CutWanted,
  lathe: Lathe,
): Omit<ChosenCut, 'tooFast' | 'binding' | 'passed'> {
  const { depth, feed, rpm, passes, force, power, powerShare, bending, broken, time } = chosen;
  return {
    numbers: {
      depth,
      feed,
      byHand: lathe.feeds.length === 0,
      speed: rpm,
      cuttingSpeed: cuttingSpeed(wanted.diameter, rpm),
      passes,
      cuttingForce: force.cutting,
      radialForce: force.radial,
      power,
      powerShare,
      bending,
      specificForce: wanted.cutData.specificForce,
    },
    force,
    time,
    broken,
  };
}
