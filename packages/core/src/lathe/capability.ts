/**
 * Everything one setup can do on this lathe: all its speeds, feeds and depths, each judged.
 */
import { cuttingPower, motorPower } from '../cutting/power.ts';
import { type Rubbing, rubbing } from '../cutting/rubbing.ts';
import { cuttingSpeed } from '../cutting/speed.ts';
import { DomainError } from '../errors.ts';
import type { Mm, MmPerRev, Newton, Rpm } from '../units/quantities.ts';
import { chatterProbability } from './chatter.ts';
import { type CutForces, cutForces } from './cut-forces.ts';
import { drivePower, spindleSpeeds } from './drive.ts';
import type { PreparedSetup } from './prepare-setup.ts';
import type { Lathe } from './schema.ts';
import { forceLadder, type SizeResult, sizeAfter } from './size-after.ts';

export interface CutGrid {
  readonly depths: readonly Mm[];
  readonly feeds: readonly MmPerRev[];
  readonly speeds: readonly Rpm[];
}

/** One cut of many, judged. */
export interface JudgedCut {
  readonly depth: Mm;
  readonly feed: MmPerRev;
  readonly speed: Rpm;
  readonly cutting: Newton;
  readonly square: Newton;
  /** Of the motor's power at this speed. */
  readonly powerShare: number;
  readonly size: SizeResult;
  readonly rubbing: Rubbing;
  readonly chatter: number;
}

/** Share of the motor's power that reaches the spindle when the workshop does not say; common practice. */
export const usualEfficiency = 0.75;

/** Depths the limits of a light lathe lie among, on the radius [mm]. */
export const depthLadder: readonly Mm[] = [0.02, 0.03, 0.05, 0.08, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.8, 1];

/** Feeds a hand keeps up on a lathe without power feed; common practice. */
const byHand: readonly MmPerRev[] = [0.05, 0.08, 0.12];

/** All that the lathe itself can be set to. */
export function ownGrid(lathe: Pick<Lathe, 'speeds' | 'feeds'>, deepest: Mm): CutGrid {
  return {
    depths: depthLadder.filter((d) => d <= deepest + 1e-9),
    feeds: lathe.feeds.length === 0 ? byHand : lathe.feeds,
    speeds: spindleSpeeds(lathe),
  };
}

/**
 * Judges every cut of a grid.
 *
 * @throws DomainError when there is no speed, feed or depth
 */
export function capability(
  prepared: PreparedSetup,
  lathe: Pick<Lathe, 'speeds' | 'drive'>,
  grid: CutGrid,
): JudgedCut[] {
  for (const [name, list] of Object.entries(grid)) {
    if (list.length === 0) throw new DomainError(name, 0, 'at least one');
  }
  const { setup, material } = prepared;
  const efficiency = lathe.drive.efficiency ?? usualEfficiency;
  const available = new Map(grid.speeds.map((n) => [n, drivePower(lathe, n)]));
  const found: JudgedCut[] = [];
  const deepest = Math.max(...grid.depths);
  for (const feed of grid.feeds) {
    const ladder = forceLadder(setup, material, feed, deepest);
    for (const depth of grid.depths) {
      const forces = cutForces(setup, material, depth, feed);
      const size = sizeAfter(prepared, ladder, depth);
      const rubs = rubbing(forces.chipThickness, setup.cutter.edge);
      for (const speed of grid.speeds) {
        const power = powerOf(forces, setup.diameter, speed, efficiency);
        found.push({
          depth,
          feed,
          speed,
          cutting: forces.cutting,
          square: forces.square,
          powerShare: power / (available.get(speed) ?? 1),
          size,
          rubbing: rubs,
          chatter: chatterProbability(prepared, forces, cuttingSpeed(setup.diameter, speed)),
        });
      }
    }
  }
  return found;
}

/** Power from the motor [W]. */
export function powerOf(forces: CutForces, diameter: Mm, speed: Rpm, efficiency: number): number {
  return motorPower(cuttingPower(forces.cutting, cuttingSpeed(diameter, speed)), efficiency);
}
