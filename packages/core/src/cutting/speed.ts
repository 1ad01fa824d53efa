/**
 * Cutting speed and spindle speed.
 */
import { DomainError } from '../errors.ts';
import type { MetrePerMinute, Mm, Rpm } from '../units/quantities.ts';

/**
 * Cutting speed at a diameter.
 *
 *     v = π d n / 1000
 *
 * @param diameter  where the edge cuts d [mm]
 * @param speed  spindle speed n [rpm]
 * @returns cutting speed [m/min]
 * @throws DomainError when the diameter or speed is negative
 * @source geometry
 * @valid any size
 * @example cuttingSpeed(12, 1350) → 50.9
 */
export function cuttingSpeed(diameter: Mm, speed: Rpm): MetrePerMinute {
  if (!(diameter >= 0)) throw new DomainError('diameter', diameter, '0 mm or more');
  if (!(speed >= 0)) throw new DomainError('speed', speed, '0 rpm or more');
  return (Math.PI * diameter * speed) / 1000;
}

/**
 * Spindle speed for a cutting speed at a diameter.
 *
 *     n = 1000 v / (π d)
 *
 * @param speed  cutting speed wanted v [m/min]
 * @param diameter  where the edge cuts d [mm]
 * @returns spindle speed [rpm]
 * @throws DomainError when the diameter is not above 0: at the centre no speed is enough
 * @source geometry
 * @valid d > 0
 * @example spindleSpeed(20, 12) → 530.5
 */
export function spindleSpeed(speed: MetrePerMinute, diameter: Mm): Rpm {
  if (!(diameter > 0)) throw new DomainError('diameter', diameter, 'more than 0 mm');
  if (!(speed >= 0)) throw new DomainError('speed', speed, '0 m/min or more');
  return (1000 * speed) / (Math.PI * diameter);
}
