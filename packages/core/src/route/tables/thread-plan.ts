/** The passes of a thread: infeeds of equal chip section in whole divisions of the dial that puts the depth on. */
import { DomainError } from '../../errors.ts';
import type { PlacedThread } from '../../part/part-result.ts';
import { depthAlongSlide, infeedSteps } from '../../standards/threads/cutting-geometry.ts';
import { firstInfeedLimit, usualPasses } from '../../standards/threads/passes.ts';
import type { Mm } from '../../units/quantities.ts';
import { type Dial, type DialSetting, dialSetting } from './dial.ts';
import { type InfeedWay, infeedWay } from './infeed-way.ts';
import { type CutTo, cutTo } from './thread-aim.ts';

/** Passes on a light lathe over the most that makers of threading tools advise; `common practice`. */
const lightLathe = 1.75;
/** First depth of cut on a light lathe where no pass count is published, on the radius; `common practice`. */
const firstInfeed: Mm = 0.2;
/** Greatest infeed of any pass, on the radius [SUMI-p404]. */
const deepest: Mm = 0.5;
/** Passes at full depth to clear what gave way; `common practice`. */
const springPasses = 2;
/** The least infeed of a carbide edge, which rubs and hardens the work below it, and takes no pass without infeed [TUNGALOY-p1636]. */
export const leastCarbideInfeed: Mm = 0.05;

export interface ThreadInput {
  readonly placed: Pick<PlacedThread, 'thread' | 'side'>;
  readonly crossSlide: Dial;
  readonly topSlide?: Dial | undefined;
  /** What the person wants, where that is not left to the pitch. */
  readonly infeed?: InfeedWay['way'] | undefined;
  readonly cutter?: { readonly material: 'high-speed steel' | 'carbide'; readonly noseRadius: Mm } | undefined;
  /** Where the cutter stops, the change gears and the half nuts. */
  readonly more?: readonly string[] | undefined;
}

/** A pass as it is set. */
export interface ThreadPass {
  readonly name: string;
  readonly setting: DialSetting;
  /** Radial depth that this makes. */
  readonly depth: Mm;
}

export interface ThreadPlan {
  readonly way: InfeedWay;
  readonly full: CutTo;
  /** The dial by which the depth is put on. */
  readonly dial: Dial;
  /** In order; the spring passes last. */
  readonly passes: readonly ThreadPass[];
  readonly springs: number;
}

/** The passes of a thread on this lathe, none of them deeper than the thread. */
export function planThread(input: ThreadInput): ThreadPlan {
  const { thread, side } = input.placed;
  const way = infeedWay(thread, input.topSlide !== undefined, input.infeed);
  const dial = way.way === 'straight' ? input.crossSlide : (input.topSlide ?? input.crossSlide);
  const full = cutTo(thread, side, input.cutter?.noseRadius);
  const carbide = input.cutter?.material === 'carbide';
  const at = (depth: Mm): Omit<ThreadPass, 'name'> => {
    const setting = dialSetting(depthAlongSlide(depth, way.angle), dial);
    return { setting, depth: setting.travel * Math.cos(way.angle) };
  };
  const steps = infeedSteps(full.depth, passCount(thread.pitch, full.depth)).map((p) => p.cumulative);
  const settings = (carbide ? noThinner(steps, leastCarbideInfeed) : steps).map(at);
  const cut = settings
    // A pass that the dial cannot tell from the one before would only rub.
    .filter(({ setting }, i) => setting.travel > (settings[i - 1]?.setting.travel ?? 0))
    .map((pass, i) => ({ name: String(i + 1), ...pass }));
  const springs = carbide ? 0 : springPasses;
  const spring = Array.from({ length: springs }, (_, i) => ({ name: `spring ${i + 1}`, ...at(full.depth) }));
  return { way, full, dial, passes: [...cut, ...spring], springs };
}

/** Depths that grow by no less than a least infeed; the last is the full depth. */
function noThinner(depths: readonly Mm[], least: Mm): Mm[] {
  const full = depths.at(-1) ?? 0;
  const kept: Mm[] = [];
  let reached = 0;
  for (const depth of depths) {
    while (depth > reached + 1e-9) {
      // What would be left thinner than that for the last pass is taken with this one.
      const next = Math.max(depth, reached + least);
      reached = next > full - least ? full : next;
      kept.push(reached);
    }
  }
  return kept;
}

/** Passes of equal chip section, so many that the first goes no deeper than printed. With steps t√(i/n) the first is t/√n. */
function passCount(pitch: Mm, depth: Mm): number {
  const asPrinted = published(() => Math.ceil(lightLathe * usualPasses(pitch).most));
  const first = published(() => firstInfeedLimit(pitch, 'stainless steel')) ?? (asPrinted ? deepest : firstInfeed);
  return Math.min(60, Math.max(4, asPrinted ?? 0, Math.ceil((depth / first) ** 2)));
}

/** What is printed, where anything is. */
function published(value: () => number): number | undefined {
  try {
    return value();
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return undefined;
  }
}
