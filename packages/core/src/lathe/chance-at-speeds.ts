/**
 * The chance that a cut sings at each speed of the lathe, its depth and feed left as they are.
 */
import { cuttingSpeed } from '../cutting/speed.ts';
import type { Rpm } from '../units/quantities.ts';
import { chatterProbability } from './chatter.ts';
import { cutForces } from './cut-forces.ts';
import { speedsBetween, spindleSpeeds } from './drive.ts';
import type { JobCut } from './job-remedies.ts';
import { prepareSetup } from './prepare-setup.ts';
import { chanceDraws } from './sampling.ts';
import type { Lathe } from './schema.ts';

export interface ChanceAtSpeed {
  readonly speed: Rpm;
  readonly chance: number;
}

export interface CutChances {
  readonly id: string;
  /** At the speed the cut is taken at. */
  readonly own: ChanceAtSpeed;
  /** At the lathe's own speeds, slowest first. */
  readonly speeds: readonly ChanceAtSpeed[];
  /** At these and between them, close enough for a curve. */
  readonly course: readonly ChanceAtSpeed[];
}

/**
 * The chances of one cut.
 *
 * @throws DomainError when the cut or the setup cannot be
 */
export function chancesAtSpeeds(cut: JobCut, lathe: Pick<Lathe, 'speeds'>): CutChances {
  const { id, setup, material, joint, asked } = cut;
  const prepared = prepareSetup(joint, setup, material, chanceDraws);
  const forces = cutForces(setup, material, asked.depth, asked.feed);
  const at = (speed: Rpm): ChanceAtSpeed => ({
    speed,
    chance: chatterProbability(prepared, forces, cuttingSpeed(setup.diameter, speed)),
  });
  const own = spindleSpeeds(lathe);
  const course = speedsBetween(own).map(at);
  return { id, own: at(asked.speed), speeds: course.filter((c) => own.includes(c.speed)), course };
}
