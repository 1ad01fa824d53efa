/**
 * Lengths as people write them. Parsed once, at the edge; inside there are only millimetres.
 */
import { InputError, type InputIssue } from '../errors.ts';
import { type Mm, mmPerInch } from './quantities.ts';

/** The unit a bare number is in. */
export type LengthUnit = 'mm' | 'in';

export interface ParsedLength {
  readonly mm: Mm;
  /** The unit that was written or taken as understood. */
  readonly unit: LengthUnit;
}

const unitFactor: Record<string, { factor: number; unit: LengthUnit }> = {
  mm: { factor: 1, unit: 'mm' },
  cm: { factor: 10, unit: 'mm' },
  m: { factor: 1000, unit: 'mm' },
  µm: { factor: 0.001, unit: 'mm' },
  um: { factor: 0.001, unit: 'mm' },
  in: { factor: mmPerInch, unit: 'in' },
  inch: { factor: mmPerInch, unit: 'in' },
  inches: { factor: mmPerInch, unit: 'in' },
  '"': { factor: mmPerInch, unit: 'in' },
  '″': { factor: mmPerInch, unit: 'in' },
  thou: { factor: mmPerInch / 1000, unit: 'in' },
  mil: { factor: mmPerInch / 1000, unit: 'in' },
};

const vulgar: Record<string, string> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const number = String.raw`(?:\d+(?:[.,]\d+)?|[.,]\d+)`;
const pattern = new RegExp(
  String.raw`^([+-])?\s*(?:[⌀Øø]\s*)?(?:(\d+)(?:\s+|-)(\d+)\/(\d+)|(\d+)\/(\d+)|(${number}))\s*([a-zµ"″]*)$`,
);

/**
 * A length as typed: `12,5`, `.5"`, `5/16 in`, `1 1/2"`, `25 µm`, `3 thou`, `⌀12`. A number with both a point and a comma,
 * or a comma that could be a thousands mark (`1,250 `is read as 1.25; `1,250.5` is refused), is not guessed at.
 *
 * @param text  what was typed
 * @param understood  unit of a bare number
 * @returns the length in millimetres and the unit it was written in, or undefined when it is not a length
 */
export function readLength(text: string, understood: LengthUnit): ParsedLength | undefined {
  let plain = text.trim().replace(/μ/g, 'µ').replace(/−/g, '-');
  for (const [sign, fraction] of Object.entries(vulgar)) plain = plain.replace(sign, ` ${fraction}`).trim();
  const match = pattern.exec(plain.toLowerCase());
  if (!match) return undefined;
  const [, sign, whole, mixedOver, mixedUnder, over, under, decimal, unitText] = match;
  const value =
    decimal !== undefined
      ? Number(decimal.replace(',', '.'))
      : whole !== undefined
        ? Number(whole) + Number(mixedOver) / Number(mixedUnder)
        : Number(over) / Number(under);
  const unit = unitFactor[unitText === undefined || unitText === '' ? understood : unitText];
  if (!unit || !Number.isFinite(value)) return undefined;
  return { mm: (sign === '-' ? -1 : 1) * value * unit.factor, unit: unit.unit };
}

/** Like {@link readLength}, but refuses with an InputError naming `path`. */
export function parseLength(text: string, understood: LengthUnit, path = 'length'): ParsedLength {
  const length = readLength(text, understood);
  if (length) return length;
  throw new InputError([lengthIssue(path, text)]);
}

/** How an unreadable length is reported. */
export function lengthIssue(path: string, value: unknown): InputIssue {
  return { path, value, expected: 'a length', example: '12.5, 12,5 mm, 5/16 in or .5"' };
}
