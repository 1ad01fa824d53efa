/** Sizes and their limits as a drawing writes them. */
import type { LengthUnit } from '../units/length.ts';
import { type Mm, mmPerInch } from '../units/quantities.ts';
import type { DrawingSettings } from './settings.ts';

export type NumberStyle = Pick<DrawingSettings, 'units' | 'decimalSign'>;

/** Decimals beyond which a size on a sheet is noise: a tenth of a micrometre, ten millionths of an inch. */
const decimals: Readonly<Record<LengthUnit, number>> = { mm: 4, in: 5 };

/** `12.5`, `12,5`, or in inches `.492`. */
export function sizeText(value: Mm, style: NumberStyle): string {
  const inUnit = style.units === 'in' ? value / mmPerInch : value;
  const plain = trimmed(Math.abs(inUnit), decimals[style.units]);
  const led = style.units === 'in' ? plain.replace(/^0\./, '.') : plain;
  return signed(inUnit < 0 && Number(plain) !== 0 ? '−' : '', led, style);
}

/** `5/8`, `1 3/4`, `.2165`: in inches an exact 64th, or a coarser part, as a fraction; anything else in decimals. */
export function fractionText(value: Mm, style: NumberStyle): string {
  const parts = (64 * value) / mmPerInch;
  const whole = Math.round(parts);
  if (style.units !== 'in' || whole <= 0 || whole % 64 === 0 || Math.abs(parts - whole) > 1e-9)
    return sizeText(value, style);
  const over = whole % 64;
  // The largest power of two that divides both.
  const common = over & -over;
  const inches = Math.floor(whole / 64);
  return `${inches === 0 ? '' : `${inches} `}${over / common}/${64 / common}`;
}

/** A deviation with its sign: `+0.018`, `0`, `−0.034`. */
export function deviationText(value: Mm, style: NumberStyle): string {
  const text = sizeText(value, style);
  return text.startsWith('−') || text === '0' ? text : `+${text}`;
}

/** A plain number to so many decimals at most. */
export function numberText(value: number, places: number, style: NumberStyle): string {
  return signed(value < 0 ? '−' : '', trimmed(Math.abs(value), places), style);
}

interface Limited {
  readonly nominal: Mm;
  readonly upper: Mm;
  readonly lower: Mm;
  readonly basis: string;
  /** As it was typed. */
  readonly text?: string;
}

/** A size with its class and deviations: `12 f7 (−0.016/−0.034)`, `12 ±0.1`, `12 +0.1/0`, or bare under the general tolerance, there as the fraction it was typed as. */
export function limitedText(size: Limited, style: NumberStyle, sign = ''): string {
  const limits = limitsText(size, style);
  if (limits !== '') return `${sign}${sizeText(size.nominal, style)} ${limits}`;
  return sign + (/[/½¼¾⅛⅜⅝⅞]/.test(size.text ?? '') ? fractionText : sizeText)(size.nominal, style);
}

/** What stands after the nominal size; nothing under the general tolerance. */
export function limitsText(size: Limited, style: NumberStyle): string {
  const even = Math.abs(size.upper + size.lower) < 1e-9;
  const deviations = even
    ? `±${sizeText(size.upper, style)}`
    : `${deviationText(size.upper, style)}/${deviationText(size.lower, style)}`;
  if (isToleranceClass(size.basis)) return `${size.basis} (${deviations})`;
  return size.basis === 'stated' ? deviations : '';
}

/** `f7`, `H8`, `js6`: the letter and grade of ISO 286. */
export function isToleranceClass(basis: string): boolean {
  return /^[A-Za-z]{1,2}\d{1,2}$/.test(basis);
}

function trimmed(value: number, places: number): string {
  const fixed = value.toFixed(places);
  return fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
}

function signed(sign: string, digits: string, style: Pick<NumberStyle, 'decimalSign'>): string {
  return `${sign}${style.decimalSign === 'comma' ? digits.replace('.', ',') : digits}`;
}
