/**
 * A size with its tolerance as a drawing writes it: `40 f7`, `12 ±0.1`, `12 +0.02/-0.05`, `5/16 in h9`, `11.95..11.98`.
 */
import { DomainError, InputError } from '../../errors.ts';
import { type LengthUnit, readLength } from '../../units/length.ts';
import { type Mm, mmPerInch } from '../../units/quantities.ts';
import { type GeneralClass, generalDeviation } from './general-tolerances.ts';
import { type Deviations, limitDeviations } from './limit-deviations.ts';
import { withoutNoise } from './noise.ts';

export type Tolerance =
  | { readonly kind: 'class'; readonly toleranceClass: string }
  | { readonly kind: 'deviations'; readonly upper: Mm; readonly lower: Mm }
  | { readonly kind: 'none' };

export interface TolerancedSize {
  readonly nominal: Mm;
  readonly tolerance: Tolerance;
  /** The unit it was written in. */
  readonly unit: LengthUnit;
  /** As it was written. */
  readonly text: string;
}

export interface SizeLimits extends Deviations {
  readonly max: Mm;
  readonly min: Mm;
  /** Where the limits come from: `f7`, `stated`, `ISO 2768-m` or `no tolerance stated`. */
  readonly basis: string;
}

const example = '40 f7, 12 ±0.1, 12 +0.02/-0.05, 5/16 in h9 or 11.95..11.98';
const longestText = 60;
const number = String.raw`(?:\d+(?:[.,]\d+)?|[.,]\d+)`;
const unit = `(?:mm|cm|µm|um|inches|inch|in|"|″|thou|mil)`;
const amount = String.raw`(?:\d+/\d+|${number})\s*${unit}?`;
const signed = String.raw`[+-]\s*${amount}`;
const zero = String.raw`0+(?:[.,]0+)?\s*${unit}?`;
const forms = {
  pair: /^(.+?)\s*(?:\.\.\.?|…|\bto\b)\s*(.+)$/,
  slashPair: new RegExp(String.raw`^(${number}\s*${unit}?)\s*/\s*(${number}\s*${unit}?)$`, 'i'),
  plusMinus: new RegExp(String.raw`^(.+?)\s*\(?\s*±\s*(${amount})\s*\)?$`, 'i'),
  two: new RegExp(
    String.raw`^(.+?)(?:\s*\(\s*|\s+|(?=[+-]))(${signed}|${zero})\s*(?:[/;]|\s|(?=[+-]))\s*(${signed}|${zero})\s*\)?$`,
    'i',
  ),
  one: new RegExp(String.raw`^(.+?)(?:\s*\(\s*|\s+)(${signed})\s*\)?$`, 'i'),
  toleranceClass: /^(.*\S)\s*?(?<![A-Za-z])([A-Za-z]{1,3})\s?(\d{1,4})$/,
};

/**
 * Reads a size with its tolerance. A bare number is in `understood`; a unit written once holds for the whole, so in
 * `12 ±0.1 mm` both are millimetres, while `.312 ±2 thou` keeps its own. Two sizes (`11.95..11.98`) become their middle and half their
 * difference.
 *
 * @param text  what was written, or a bare number
 * @param understood  unit of a bare number
 * @param path  where it stands, for the message
 * @returns the size in millimetres
 * @throws InputError when it cannot be read, the size is not over 0, or the class does not exist at that size
 */
export function parseTolerancedSize(text: string | number, understood: LengthUnit, path = 'size'): TolerancedSize {
  const refuse = (expected: string, instead = example): never => {
    throw new InputError([{ path, value: text, expected, example: instead }]);
  };
  const written = String(text);
  const read = written.length > longestText ? undefined : readSize(plain(written), understood);
  if (!read) return refuse('a size, with or without a tolerance');
  if (!(read.nominal > 0)) return refuse('a size greater than 0');
  const { tolerance } = read;
  if (tolerance.kind === 'class') {
    try {
      limitDeviations(read.nominal, tolerance.toleranceClass);
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      return refuse(
        error.parameter === 'nominal' ? `${error.allowed} for a tolerance class` : error.allowed,
        'f7 for a shaft, H8 for a hole',
      );
    }
  }
  if (tolerance.kind === 'deviations' && !(read.nominal + tolerance.lower > 0)) {
    return refuse('deviations smaller than the size');
  }
  return { ...read, text: written.trim() };
}

type Read = Omit<TolerancedSize, 'text'>;

function readSize(text: string, understood: LengthUnit): Read | undefined {
  const bare = readLength(text, understood);
  if (bare) return { nominal: withoutNoise(bare.mm), tolerance: { kind: 'none' }, unit: bare.unit };
  const pair = forms.pair.exec(text) ?? (/[.,]/.test(text) ? forms.slashPair.exec(text) : null);
  if (pair) return readPair(pair[1] ?? '', pair[2] ?? '', understood);
  const plusMinus = forms.plusMinus.exec(text);
  if (plusMinus) return withDeviations(plusMinus[1], `+${plusMinus[2]}`, `-${plusMinus[2]}`, understood);
  const two = forms.two.exec(text);
  if (two) return withDeviations(two[1], two[2], two[3], understood);
  const one = forms.one.exec(text);
  if (one) return withDeviations(one[1], one[2], '0', understood);
  const named = forms.toleranceClass.exec(text);
  const size = named?.[1] === undefined ? undefined : readLength(named[1], understood);
  if (!named || !size) return undefined;
  return {
    nominal: withoutNoise(size.mm),
    tolerance: { kind: 'class', toleranceClass: `${named[2]}${named[3]}` },
    unit: size.unit,
  };
}

/** Two limits in either order; a unit written at one holds for both. */
function readPair(one: string, other: string, understood: LengthUnit): Read | undefined {
  const shared = unitOf(other) ?? unitOf(one);
  const a = readLength(withUnit(one, shared), understood);
  const b = readLength(withUnit(other, shared), understood);
  if (!a || !b || a.mm === b.mm || !(Math.min(a.mm, b.mm) > 0)) return undefined;
  const half = withoutNoise(Math.abs(a.mm - b.mm) / 2);
  return {
    nominal: withoutNoise((a.mm + b.mm) / 2),
    tolerance: { kind: 'deviations', upper: half, lower: -half },
    unit: a.unit,
  };
}

function withDeviations(
  nominal: string | undefined,
  first: string | undefined,
  second: string | undefined,
  understood: LengthUnit,
): Read | undefined {
  if (nominal === undefined || first === undefined || second === undefined) return undefined;
  const fromDeviations = unitOf(second) ?? unitOf(first);
  const isSmall = fromDeviations !== undefined && /^(µm|um|thou|mil)$/i.test(fromDeviations);
  const nominalUnit = unitOf(nominal) ?? (isSmall ? undefined : fromDeviations);
  const size = readLength(withUnit(nominal, nominalUnit), understood);
  if (!size) return undefined;
  const deviationUnit = fromDeviations ?? size.unit;
  const a = readLength(withUnit(first.replace(/\s/g, ''), deviationUnit), understood);
  const b = readLength(withUnit(second.replace(/\s/g, ''), deviationUnit), understood);
  if (!a || !b) return undefined;
  const [upper, lower] = a.mm >= b.mm ? [a.mm, b.mm] : [b.mm, a.mm];
  return {
    nominal: withoutNoise(size.mm),
    tolerance: { kind: 'deviations', upper: withoutNoise(upper), lower: withoutNoise(lower) },
    unit: size.unit,
  };
}

function unitOf(text: string): string | undefined {
  return new RegExp(`${unit}$`, 'i').exec(text.trim())?.[0];
}

function withUnit(text: string, added: string | undefined): string {
  return added === undefined || unitOf(text) !== undefined ? text : `${text} ${added}`;
}

/** One spelling of minus, plus-minus, micro and spaces. */
function plain(text: string): string {
  return text
    .trim()
    .replace(/[−–]/g, '-')
    .replace(/μ/g, 'µ')
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replace(/\+\s*\/?\s*-/g, '±')
    .replace(/^(?:dia\.?|diameter)\s*/i, '');
}

/**
 * Writes a size in one spelling that {@link parseTolerancedSize} reads back to the same size when given `size.unit`.
 *
 * @param size  the size
 * @returns `40 f7`, `12 ±0.1`, `12 +0.02/-0.05`, `0.3125 in ±0.001`
 */
export function printTolerancedSize(size: TolerancedSize): string {
  const write = (mm: Mm) => digits(mm, size.unit);
  const nominal = `${write(size.nominal)}${size.unit === 'in' ? ' in' : ''}`;
  const { tolerance } = size;
  if (tolerance.kind === 'none') return nominal;
  if (tolerance.kind === 'class') return `${nominal} ${tolerance.toleranceClass}`;
  const { upper, lower } = tolerance;
  if (upper > 0 && upper === -lower) return `${nominal} ±${write(upper)}`;
  const sign = (mm: Mm) => (mm > 0 ? `+${write(mm)}` : write(mm));
  return `${nominal} ${sign(upper)}/${sign(lower)}`;
}

/** As few decimals as give the length back. */
function digits(mm: Mm, lengthUnit: LengthUnit): string {
  const factor = lengthUnit === 'in' ? mmPerInch : 1;
  for (let decimals = 0; decimals < 12; decimals++) {
    const text = (mm / factor).toFixed(decimals);
    if (Math.abs(Number(text) * factor - mm) < 1e-10) return Number(text) === 0 ? '0' : text;
  }
  return (mm / factor).toFixed(12);
}

/**
 * Limits of a size: its class, its stated deviations, or the general tolerance of the drawing.
 *
 *     max = nominal + upper,  min = nominal + lower
 *
 * @param size  the size
 * @param general  class of ISO 2768-1 that holds where nothing is stated, if any
 * @returns deviations and limits [mm]; both deviations are 0 when no tolerance is known, and `basis` says so
 * @throws DomainError when the class does not exist at the size
 * @source ISO-286-1
 * @source ISO-2768-1
 * @valid classes over 0 to 500 mm; stated deviations at any size; general tolerances from 0.5 mm
 * @example sizeLimits({ nominal: 40, tolerance: { kind: 'class', toleranceClass: 'f7' }, unit: 'mm', text: '40 f7' }, undefined) → { upper: -0.025, lower: -0.05, max: 39.975, min: 39.95, basis: 'f7' }
 */
export function sizeLimits(size: TolerancedSize, general: GeneralClass | undefined): SizeLimits {
  const { upper, lower, basis } = deviations(size, general);
  return { upper, lower, max: withoutNoise(size.nominal + upper), min: withoutNoise(size.nominal + lower), basis };
}

function deviations(size: TolerancedSize, general: GeneralClass | undefined): Deviations & { basis: string } {
  const { tolerance } = size;
  switch (tolerance.kind) {
    case 'class':
      return { ...limitDeviations(size.nominal, tolerance.toleranceClass), basis: tolerance.toleranceClass };
    case 'deviations':
      return { upper: tolerance.upper, lower: tolerance.lower, basis: 'stated' };
    case 'none': {
      if (general === undefined) return { upper: 0, lower: 0, basis: 'no tolerance stated' };
      try {
        const either = generalDeviation(size.nominal, general);
        return { upper: either, lower: -either, basis: `ISO 2768-${general}` };
      } catch (error) {
        if (!(error instanceof DomainError)) throw error;
        return { upper: 0, lower: 0, basis: `no tolerance stated, and ISO 2768-${general} gives none at this size` };
      }
    }
  }
}
