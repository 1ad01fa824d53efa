/**
 * Where the last cut of a size is aimed, and how widely it lands.
 *
 * Knowledge: the last cut lands around its aim with the spread of dial, hand and gauge together; abrasive paper takes off what is left,
 * reading by reading. The aim balances both limits, and never lies so low that the paper has nothing to do.
 */
import { permissibleError } from '../evidence/gauge-error.ts';
import { rectangular, resolutionUncertainty } from '../evidence/uncertainty.ts';
import type { Workshop } from '../lathe/schema.ts';
import { paperAllowance } from '../standards/finish/polish-allowance.ts';
import type { Mm } from '../units/quantities.ts';
import { closeBand, cutRepeatability, lastCutRoughness } from './practice.ts';
import { slidePerDivision } from './tables/dial.ts';

/** What paper must take off the diameter to clear the marks of a careful last cut. */
export const paperWork: Mm = paperAllowance(lastCutRoughness).least;

/**
 * The diameter to aim the last cut at. Without paper to follow the middle of the limits. With paper as high as it takes for two standard
 * deviations of the last cut to leave the paper its work above the lower limit, and never under the upper limit; limits so wide that
 * the cutter keeps them by itself only get the paper's work on top of their middle.
 */
export function lastCutAim(limits: { readonly max: Mm; readonly min: Mm }, paper: boolean, spread: Mm): Mm {
  const middle = (limits.max + limits.min) / 2;
  if (!paper) return middle;
  if (limits.max - limits.min > closeBand) return middle + paperWork;
  return Math.max(limits.max + paperWork / 2, limits.min + paperWork + 2 * spread);
}

/** Standard deviation of where a last cut ends, on the diameter: repeatability of the cut, a dial division, the gauge. */
export function lastCutSpread(workshop: Workshop, size: Mm, outside: boolean): Mm {
  const touch = outside ? 'outside' : 'inside';
  const errors = workshop.gauges.map((g) => permissibleError(g, size, touch));
  const gauge = rectangular(errors.length > 0 ? Math.min(...errors) : 0.02);
  const dial = 2 * resolutionUncertainty(slidePerDivision(workshop.lathe.dials.crossSlide));
  return Math.hypot(cutRepeatability, dial, gauge);
}
