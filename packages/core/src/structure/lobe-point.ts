/**
 * Where a frequency of chatter lies on the lobes, in breadth of chip and spindle speed.
 */
import type { Hertz, MPa, Rpm } from '../units/quantities.ts';
import { checkModes, type OrientedMode, receptanceAt } from './receptance.ts';
import type { StabilityLimit } from './regeneration.ts';

/** A point of one branch of the lobes. */
export interface LobePoint extends StabilityLimit {
  /** Part of a wave by which a turn ends later than a whole number of waves [rad]. */
  readonly shift: number;
  /** Spindle speeds at which the point lies, for 0, 1, 2 … whole waves in a turn. */
  readonly speeds: readonly Rpm[];
}

/**
 * The point of every lobe that belongs to a chatter frequency.
 *
 *     ε = 3π + 2 atan2(Im G, Re G),   n = 60 f / (j + ε/2π)
 *
 * @param modes  of edge and work together, oriented to this cut
 * @param chipStiffness  Kf [MPa]
 * @param frequency  of chatter [Hz]
 * @param lobes  how many [-]
 * @returns limit of breadth, phase shift and speeds; undefined where nothing sings at that frequency
 * @throws DomainError when a mode or the frequency is out of range
 * @source TURNMD; methods-dynamics §2
 * @valid without rubbing
 * @example lobePoint([{ frequency: 150, stiffness: 5000, damping: 0.05, direction: 1 }], 2000, 157.5, 1).speeds[0] → 12535.9
 */
export function lobePoint(
  modes: readonly OrientedMode[],
  chipStiffness: MPa,
  frequency: Hertz,
  lobes: number,
): LobePoint | undefined {
  checkModes(modes);
  const { re, im } = receptanceAt(modes, frequency);
  if (!(re < 0)) return undefined;
  const whole = 2 * Math.PI;
  const shift = (((3 * Math.PI + 2 * Math.atan2(im, re)) % whole) + whole) % whole;
  return {
    width: -1 / (2 * chipStiffness * re),
    frequency,
    shift,
    speeds: Array.from({ length: lobes }, (_, j) => (60 * frequency) / (j + shift / whole)),
  };
}
