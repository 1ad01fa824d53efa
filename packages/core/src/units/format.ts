/**
 * Lengths as they are written for people. The other half of {@link readLength}: what is written here is read there.
 */
import type { LengthUnit } from './length.ts';
import { type Mm, mmPerInch } from './quantities.ts';

export interface LengthStyle {
  /** Exactly this many decimals, none trimmed; left out, three for millimetres and four for inches, trailing noughts trimmed. */
  readonly decimals?: number | undefined;
  /** What stands between the whole and the rest. */
  readonly decimalSign?: '.' | ',' | undefined;
}

/** The typographic minus, as wide as a plus. */
const minus = '−';

/** Decimals that show a micrometre or a tenth of a thou. */
const usualDecimals: Readonly<Record<LengthUnit, number>> = { mm: 3, in: 4 };

/** A length as a plain number in a unit: `12.5`, `−0,025`, `0.3125`. The unit itself is written by the caller, who knows the place. */
export function formatLength(mm: Mm, unit: LengthUnit, style: LengthStyle = {}): string {
  const digits = unsigned(mm, unit, style);
  return mm < 0 && !isNought(digits) ? minus + digits : digits;
}

/** A deviation, always with its sign: `+0.021`, `−0.013`; nought has none. */
export function formatSigned(mm: Mm, unit: LengthUnit, style: LengthStyle = {}): string {
  const digits = unsigned(mm, unit, style);
  if (isNought(digits)) return digits;
  return (mm < 0 ? minus : '+') + digits;
}

function unsigned(mm: Mm, unit: LengthUnit, { decimals, decimalSign = '.' }: LengthStyle): string {
  const value = Math.abs(unit === 'in' ? mm / mmPerInch : mm);
  const fixed = roundHalfUp(value, decimals ?? usualDecimals[unit]);
  const trimmed = decimals === undefined && fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  return trimmed.replace('.', decimalSign);
}

/** Rounds the decimal number a person sees: 1.0005 becomes 1.001 although its nearest binary number lies below. */
function roundHalfUp(value: number, decimals: number): string {
  return (value + value * 2 ** -50).toFixed(decimals);
}

const isNought = (digits: string): boolean => !/[1-9]/.test(digits);
