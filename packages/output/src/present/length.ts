/** Lengths in the job's unit. */
import { formatLength, formatSigned } from '@sparewright/core/units/format';
import type { LengthUnit } from '@sparewright/core/units/length';
import { type Mm, mmPerInch } from '@sparewright/core/units/quantities';
import { type DecimalSign, type PresentSettings, signOf } from './settings.ts';

/** A length as a bare number in the unit; `decimals` fixes their count, otherwise trailing noughts are trimmed. */
export function presentLength(mm: Mm, unit: LengthUnit, decimalSign: DecimalSign, decimals?: number): string {
  return formatLength(mm, unit, { decimals, decimalSign: signOf(decimalSign) });
}

/** A deviation, always with its sign. */
export function presentDeviation(mm: Mm, { units, decimalSign }: PresentSettings, decimals?: number): string {
  return formatSigned(mm, units, { decimals, decimalSign: signOf(decimalSign) });
}

/** With its unit: `12.5 mm`, `0.4921 in`. */
export function presentSize(mm: Mm, { units, decimalSign }: PresentSettings, decimals?: number): string {
  return `${presentLength(mm, units, decimalSign, decimals)} ${units}`;
}

/** An uncertainty, two figures of it that count, never finer than a tenth of a micrometre. */
export function presentUncertainty(mm: Mm, { units, decimalSign }: PresentSettings): string {
  const value = units === 'in' ? mm / mmPerInch : mm;
  const finest = units === 'in' ? 5 : 4;
  const decimals = value > 0 ? Math.min(finest, Math.max(1, 1 - Math.floor(Math.log10(value)))) : finest;
  return presentLength(mm, units, decimalSign, decimals);
}

/** `11.984 to 11.966`, larger first as a drawing writes limits. */
export function presentLimits(limits: { readonly max: Mm; readonly min: Mm }, settings: PresentSettings): string {
  const decimals = settings.units === 'in' ? 4 : 3;
  const write = (mm: Mm) => presentLength(mm, settings.units, settings.decimalSign, decimals);
  return `${write(limits.max)} to ${write(limits.min)}`;
}
