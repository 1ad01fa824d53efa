/**
 * How deep a cut may go at each speed of the lathe: until it sings, until the motor is at its end, until the chip is too thin.
 */
import { rubbing } from '../cutting/rubbing.ts';
import { cuttingSpeed } from '../cutting/speed.ts';
import type { Mm, MmPerRev, Rpm } from '../units/quantities.ts';
import { powerOf, usualEfficiency } from './capability.ts';
import { cutForces } from './cut-forces.ts';
import { chatterLimits } from './cut-verdict.ts';
import { drivePower, speedsBetween, spindleSpeeds } from './drive.ts';
import type { PreparedSetup } from './prepare-setup.ts';
import { chanceDraws } from './sampling.ts';
import type { Lathe } from './schema.ts';
import { chatterMargins } from './singing-limit.ts';
import { plunges } from './size-after.ts';

export interface DepthAtSpeed {
  readonly speed: Rpm;
  /** Depths at which the chance that it sings comes to what still goes, to a half, and to too much; the deepest looked at when it never does. */
  readonly sings: { readonly good: Mm; readonly even: Mm; readonly bad: Mm };
  /** Depth at which the motor gives all it has; the deepest looked at when that is enough. */
  readonly power: Mm;
}

export interface DepthsAtSpeeds {
  /** At the lathe's own speeds, slowest first. */
  readonly speeds: readonly DepthAtSpeed[];
  /** The same at its own speeds and between them, close enough for a curve. */
  readonly course: readonly DepthAtSpeed[];
  /** Greatest depth the cutter stands; the width of its edge when grooving or parting. */
  readonly stands: Mm;
  /** Least depth that cuts and does not rub at this feed; undefined when none looked at does. */
  readonly thinnest: Mm | undefined;
  readonly deepest: Mm;
}

const rungs = 48;
const shallowest: Mm = 0.01;

/** Depths from very light to a third more than the cutter stands, in even ratios. */
function ladder(most: Mm): Mm[] {
  const deepest = Math.max(1.33 * most, 4 * shallowest);
  return Array.from({ length: rungs }, (_, i) => shallowest * (deepest / shallowest) ** (i / (rungs - 1)));
}

/**
 * The depths at which one operation comes to its limits, at each of the lathe's own speeds.
 *
 * When grooving or parting, the depth is the width of the edge.
 *
 * @throws DomainError when the feed is not covered by the force model
 */
export function depthsAtSpeeds(
  prepared: PreparedSetup,
  lathe: Pick<Lathe, 'speeds' | 'drive'>,
  feed: MmPerRev,
): DepthsAtSpeeds {
  const { setup, material } = prepared;
  const drawn = prepared.drawn.slice(0, chanceDraws);
  const { edge, maxDepth, width } = setup.cutter;
  const most = plunges(setup) ? (width ?? maxDepth) : maxDepth;
  const depths = ladder(Math.max(maxDepth, width ?? 0));
  const deepest = depths.at(-1) ?? maxDepth;
  const forces = depths.map((depth) => cutForces(setup, material, depth, feed));
  const efficiency = lathe.drive.efficiency ?? usualEfficiency;
  const own = spindleSpeeds(lathe);
  const course = speedsBetween(own).map((speed): DepthAtSpeed => {
    const v = cuttingSpeed(setup.diameter, speed);
    const margins = forces.map((f) => chatterMargins(drawn, edge, f, v));
    const limits = drawn.map((_, d) => crossing(depths, (i) => margins[i]?.[d] ?? 0)).toSorted((a, b) => a - b);
    const at = (share: number) => limits[Math.min(limits.length - 1, Math.floor(share * limits.length))] ?? deepest;
    const available = drivePower(lathe, speed);
    return {
      speed,
      sings: { good: at(chatterLimits.good), even: at(0.5), bad: at(chatterLimits.bad) },
      power: crossing(depths, (i) => {
        const f = forces[i];
        return f ? available - powerOf(f, setup.diameter, speed, efficiency) : 0;
      }),
    };
  });
  const cuts = forces.findIndex((f) => rubbing(f.chipThickness, edge) === 'cuts');
  return {
    speeds: course.filter((s) => own.includes(s.speed)),
    course,
    stands: most,
    thinnest: cuts < 0 ? undefined : depths[cuts],
    deepest,
  };
}

/** First depth at which what is left of a limit is used up; straight between the rungs, the last rung when it never is. */
function crossing(depths: readonly Mm[], left: (rung: number) => number): Mm {
  for (let i = 0; i < depths.length; i++) {
    const here = left(i);
    if (here > 0) continue;
    const [depth, before] = [depths[i] ?? 0, depths[i - 1]];
    if (before === undefined) return depth;
    const room = left(i - 1);
    return before + ((depth - before) * room) / (room - here);
  }
  return depths.at(-1) ?? 0;
}
