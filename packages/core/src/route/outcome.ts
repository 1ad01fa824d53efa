/** What an operation comes to once its cutter, cut and table are found; shared by those who find them. */
import type { Cutter } from '../cutting/cutter.ts';
import { cuttingPower, motorPower } from '../cutting/power.ts';
import { cuttingSpeed, spindleSpeed } from '../cutting/speed.ts';
import type { Finding } from '../finding.ts';
import { drivePower, spindleSpeeds } from '../lathe/drive.ts';
import type { Workshop } from '../lathe/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import type { MetrePerMinute, Mm, MmPerRev, Newton, Rpm, Second } from '../units/quantities.ts';
import type { DialTable } from './dial-table.ts';
import type { Draft } from './draft.ts';
import type { paceFrom } from './learned-times.ts';
import type { Machining } from './machining.ts';
import { usualEfficiency } from './practice.ts';
import type { CutNumbers } from './route-result.ts';

/** What every operation is planned against. */
export interface Scene {
  readonly part: PartResult;
  readonly workshop: Workshop;
  readonly machining: Machining | undefined;
  /** How long operations of a kind take this person, against the plan. */
  readonly pace: ReturnType<typeof paceFrom>;
}

/** What a task adds to its plain operation. */
export interface Outcome {
  readonly cutter?: Cutter | undefined;
  readonly cut?: CutNumbers | undefined;
  readonly cutting: Second;
  readonly tables: readonly DialTable[];
  /** Diameter at which the dial really ends the passes, where another operation takes up from it. */
  readonly endsAt?: Mm | undefined;
  readonly findings: readonly Finding[];
  readonly why?: readonly string[];
  readonly needs?: readonly string[];
}

export function nothing(): Outcome {
  return { cutting: 0, tables: [], findings: [] };
}

/** The lathe's fastest speed that does not exceed a cutting speed; its slowest when all do. */
export function speedBelow(lathe: Workshop['lathe'], cutting: MetrePerMinute, diameter: Mm): Rpm {
  const all = spindleSpeeds(lathe);
  const most = spindleSpeed(cutting, diameter);
  return all.findLast((rpm) => rpm <= most) ?? all[0] ?? most;
}

/** A cut fed by hand, with its force and the power it takes. */
export interface HandCut {
  readonly depth: Mm;
  readonly feed: MmPerRev;
  readonly speed: Rpm;
  readonly passes: number;
  /** Diameter where the cut is fastest. */
  readonly diameter: Mm;
  readonly force: { readonly cutting: Newton; readonly radial: Newton };
  readonly yielding: number;
  readonly specificForce: number;
}

export function handCut(scene: Scene, cut: HandCut): CutNumbers {
  const { lathe } = scene.workshop;
  const surface = cuttingSpeed(cut.diameter, cut.speed);
  const power = motorPower(cuttingPower(cut.force.cutting, surface), lathe.drive.efficiency ?? usualEfficiency);
  return {
    depth: cut.depth,
    feed: cut.feed,
    byHand: true,
    speed: cut.speed,
    cuttingSpeed: surface,
    passes: cut.passes,
    cuttingForce: cut.force.cutting,
    radialForce: cut.force.radial,
    power,
    powerShare: power / drivePower(lathe, cut.speed),
    bending: 2 * cut.force.radial * cut.yielding,
    specificForce: cut.specificForce,
  };
}

export function noCuttingData(draft: Draft): Finding {
  return {
    id: 'route.no-cutting-data',
    level: 'note',
    stage: 'route',
    at: draft.id,
    says: 'No published cutting force or speed for this material and cutter: depth, feed and speed are left to you.',
    because: [],
    remedies: ['Choose a material by a name that the tables hold', 'Start with light cuts and log what goes well'],
  };
}
