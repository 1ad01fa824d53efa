/**
 * Rounding noise of inch conversion and of adding deviations, taken off.
 */
import type { Mm } from '../../units/quantities.ts';

/**
 * The length without the last binary digits, so that 5/16 in is 7.9375 and no minus zero is left.
 *
 *     to the nearest 10⁻⁹ mm
 *
 * @param mm  a length [mm]
 * @returns the length to a millionth of a micrometre [mm]
 * @source inch-1959
 * @valid lengths below 10⁶ mm
 * @example withoutNoise(0.1 + 0.2) → 0.3
 */
export function withoutNoise(mm: Mm): Mm {
  return Math.round(mm * 1e9) / 1e9 + 0;
}
