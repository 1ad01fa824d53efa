/**
 * Chooses depth, feed and speed for an operation: the quickest of all the lathe's own speeds and feeds, and of all depths its dial
 * can set, that stays within power, size, singing, cutter and chip limits. When none does, says which limits stand in the way and
 * takes the cut that breaks the least by the least.
 */
import type { Cutter } from '../cutting/cutter.ts';
import { cuttingSpeed } from '../cutting/speed.ts';
import type { TurningForce } from '../cutting/turning-force.ts';
import { spindleSpeeds } from '../lathe/drive.ts';
import type { Lathe } from '../lathe/schema.ts';
import type { Mm, MmPerRev, Rpm, Second } from '../units/quantities.ts';
import {
  type Candidate,
  type CutWanted,
  excess,
  feedsOf,
  forceOf,
  judge,
  type Limit,
  type Measure,
  passTime,
  pick,
} from './cut-candidate.ts';
import type { CutNumbers } from './route-result.ts';

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

/** The best cut, with the limits it breaks if there is none that keeps them all. */
export function chooseCut(wanted: CutWanted, cutter: Cutter, lathe: Lathe): ChosenCut {
  const { rpm, slower, tooFast } = allowedSpeeds(lathe, wanted);
  const best = bestOf(wanted, cutter, lathe, rpm);
  // A slower speed asks less power, and the flank rubbing at it damps: few deep passes at it may be quicker than many light ones.
  const mayHelp = wanted.fares !== undefined || best.broken.includes('power') || best.broken.includes('sings');
  const chosen = mayHelp && slower.length > 0 ? pick(best, bestOf(wanted, cutter, lathe, slower)) : best;
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
    const found = judge(wanted, cutter, lathe, {
      ...cut,
      force: same ?? forceOf(wanted, cutter, cut.depth, cut.feed),
    });
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

/**
 * Goes through every feed and speed, the quickest first. What grows with the depth (force, power, error of size, singing) is judged
 * only where it can still make the best quicker, and the deepest cut that keeps those limits is sought by halving.
 */
function bestOf(wanted: CutWanted, cutter: Cutter, lathe: Lathe, speeds: readonly Rpm[]): Candidate {
  const counts = passCounts(wanted, cutter);
  const feeds = feedsOf(lathe);
  // The force does not depend on the speed; it is worked out once, for the depths that are looked at.
  const forces = new Map(feeds.map((feed) => [feed, [] as TurningForce[]]));
  const pairs = feeds
    .flatMap((feed) => speeds.map((rpm) => ({ feed, rpm, time: passTime(wanted, feed, rpm) })))
    .toSorted((a, b) => a.time - b.time);
  const at = (feed: MmPerRev, rpm: Rpm, i: number): Candidate | undefined => {
    const [count, known] = [counts[i], forces.get(feed)];
    if (!count || !known) return undefined;
    const force = known[i] ?? forceOf(wanted, cutter, count.depth, feed);
    known[i] = force;
    return judge(wanted, cutter, lathe, { ...count, feed, rpm, force });
  };
  let best: Candidate | undefined;
  for (const { feed, rpm, time } of pairs) {
    const found = deepestKept(
      counts,
      (i) => at(feed, rpm, i),
      (passes) => (best?.weight === 0 ? passes * time < best.time - 1e-9 : true),
    );
    if (found) best = best ? pick(best, found) : found;
  }
  if (best?.weight === 0) return best;
  // None keeps every limit: look at all of them, for the one that breaks the least; where each is judged on the lathe, at a few depths.
  const looked = wanted.fares ? spread(counts.length, depthsLooked) : [...counts.keys()];
  for (const { feed, rpm } of pairs)
    for (const i of looked) {
      const found = at(feed, rpm, i);
      if (found) best = best ? pick(best, found) : found;
    }
  if (!best) throw new Error('no speed, feed or depth to choose from');
  return best;
}

const depthsLooked = 4;

/** So many places from the first to the last, evenly apart. */
function spread(of: number, many: number): number[] {
  const places = Array.from({ length: many }, (_, i) => Math.round((i * (of - 1)) / (many - 1)));
  return [...new Set(places)];
}

/** What shallower cuts make worse, not better: the chip gets thinner. */
const shallowBreaks = (c: Candidate) => c.broken.includes('chip');
const deepBreaks = (c: Candidate) =>
  c.broken.some((limit) => limit !== 'chip' && limit !== 'finish' && limit !== 'feed');

/** The deepest cut, of those in few enough passes, that keeps every limit; undefined when none does. */
function deepestKept(
  counts: readonly { readonly passes: number }[],
  at: (i: number) => Candidate | undefined,
  quickEnough: (passes: number) => boolean,
): Candidate | undefined {
  let low = 0;
  let high = counts.findLastIndex((c) => quickEnough(c.passes));
  let kept: Candidate | undefined;
  while (low <= high) {
    // The deepest first: light cuts keep every limit at once, and on a stiff lathe most do.
    const middle = kept || low > 0 ? Math.floor((low + high) / 2) : low;
    const candidate = at(middle);
    if (!candidate) return kept;
    if (candidate.broken.includes('finish') || candidate.broken.includes('feed')) return kept;
    if (candidate.weight === 0) {
      kept = candidate;
      high = middle - 1;
    } else if (shallowBreaks(candidate) && deepBreaks(candidate)) return kept;
    else if (shallowBreaks(candidate)) high = middle - 1;
    else low = middle + 1;
  }
  return kept;
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
  const { depth, feed, rpm, passes, force, power, powerShare, bending, onLathe, broken, time } = chosen;
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
      bending: onLathe?.most ?? bending,
      taper: onLathe?.taper,
      sings: onLathe?.sings,
      specificForce: wanted.cutData.specificForce,
    },
    force,
    time,
    broken,
  };
}
