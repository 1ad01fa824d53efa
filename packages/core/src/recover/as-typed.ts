/** Limits to make a part to, in the words in which a person would type them into it. */
import { InputError } from '../errors.ts';
import { parseTolerancedSize, sizeLimits } from '../standards/fits/toleranced-size.ts';
import type { LengthUnit } from '../units/length.ts';
import { type Mm, mmPerInch } from '../units/quantities.ts';
import type { NewLimits } from './recover-result.ts';

/** Limits typed anew may differ from those meant by so much: a tenth of a thou, halved. */
const near: Mm = 0.0013;

/**
 * Limits as text that is read back to them.
 *
 * @param limits  the limits with their words
 * @param units  unit in which a bare number of the job is understood
 * @param general  class of ISO 2768-1 that the part states for sizes without limits, if any
 * @returns `12 f7`, `3/8 in −.0005/−.0015`, `12` where the general tolerance says the rest, else both limits
 */
export function asTyped(
  limits: Pick<NewLimits, 'min' | 'max' | 'written'>,
  units: LengthUnit,
  general: string | undefined,
): string {
  const [, size = '', ofGeneral] = /^(.*) ISO 2768-([fmc])$/.exec(limits.written) ?? [];
  const isGeneral = ofGeneral !== undefined && ofGeneral === general;
  const candidates = [
    ...(isGeneral ? [size, `${size} mm`] : []),
    limits.written,
    limits.written.replace(/ (?=[A-Za-z]{1,3}\d{1,2}$)/, ' mm '),
  ];
  return candidates.find((text) => meansTheSame(text, limits, units, isGeneral)) ?? both(limits, units);
}

/** Whether a text is read back to the limits, or to a bare size in their middle where the general tolerance holds. */
function meansTheSame(
  text: string,
  { min, max }: { readonly min: Mm; readonly max: Mm },
  units: LengthUnit,
  isGeneral: boolean,
): boolean {
  try {
    const size = parseTolerancedSize(text, units);
    if (size.tolerance.kind === 'none') return isGeneral && Math.abs(size.nominal - (min + max) / 2) < near;
    const read = sizeLimits(size, undefined);
    return Math.abs(read.min - min) < near && Math.abs(read.max - max) < near;
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}

/** `11.952 to 11.984`, in the unit of the job. */
function both({ min, max }: { readonly min: Mm; readonly max: Mm }, units: LengthUnit): string {
  const write = (mm: Mm) => (units === 'in' ? (mm / mmPerInch).toFixed(4) : mm.toFixed(3));
  return `${write(min)} to ${write(max)}`;
}
