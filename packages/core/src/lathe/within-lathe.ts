/**
 * Whether a cut that is asked about can be set on the lathe at all: a speed within its own, a depth the work has.
 */
import { InputError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import type { Rpm } from '../units/quantities.ts';
import type { Setup } from './chain.ts';
import type { AskedCut } from './cut-verdict.ts';
import { spindleSpeeds } from './drive.ts';
import type { Lathe } from './schema.ts';

/**
 * Refuses a speed beyond those of the spindle, and a turning cut that would leave nothing.
 *
 * @throws InputError naming the limit
 */
export function checkWithinLathe(
  lathe: Pick<Lathe, 'speeds'>,
  { operation, diameter }: Pick<Setup, 'operation' | 'diameter'>,
  { speed, depth }: Pick<AskedCut, 'speed' | 'depth'>,
): void {
  const refuse = (path: string, value: string, expected: string): never => {
    throw new InputError([{ path, value, expected }]);
  };
  const all = spindleSpeeds(lathe);
  const ends = lathe.speeds.kind === 'range' ? [...all, lathe.speeds.from, lathe.speeds.to] : all;
  const [slowest, fastest] = [Math.min(...ends), Math.max(...ends)];
  const told = `${speed} rpm`;
  if (speed > fastest) refuse('speed', told, `at most ${fastest} rpm, the fastest of the lathe`);
  if (speed < slowest) refuse('speed', told, `at least ${slowest} rpm, the slowest of the lathe`);
  // Facing cuts along the work, a plunge tells the width of its edge, boring cuts outwards.
  if (operation === 'turning' && !(depth < diameter / 2))
    refuse('depth', `${depth} mm`, `less than ${Number((diameter / 2).toFixed(3))} mm, the radius of the work`);
}

/** Says that a speed lies between two steps of the spindle, where it can be judged but not set. */
export function betweenSteps(lathe: Pick<Lathe, 'speeds'>, speed: Rpm): Finding[] {
  const steps = spindleSpeeds(lathe);
  if (lathe.speeds.kind !== 'steps' || steps.includes(speed)) return [];
  const around = [steps.findLast((s) => s < speed), steps.find((s) => s > speed)];
  return [
    {
      id: 'lathe.between-steps',
      level: 'note',
      stage: 'route',
      at: 'cut',
      says: `The lathe has no step of ${speed} rpm; the nearest are ${around.filter((s) => s !== undefined).join(' and ')}.`,
      because: [],
      remedies: ['Ask again with one of them'],
    },
  ];
}
