/**
 * Rounding noise of inch conversion and of adding deviations, taken off.
 */
import type { Mm } from '../../units/quantities.ts';

/** The length to a millionth of a micrometre, so that 12 + 0.1 is 12.1 and no minus zero is left. */
export function withoutNoise(mm: Mm): Mm {
  return Math.round(mm * 1e9) / 1e9 + 0;
}
