/**
 * Lengths as people write them. Parsed once, at the edge; inside there are only millimetres.
 */
import { InputError, type InputIssue } from '../errors.ts';
import type { Mm } from './quantities.ts';

/** The unit a bare number is in. */
export type LengthUnit = 'mm' | 'in';

export interface ParsedLength {
  readonly mm: Mm;
  /** The unit that was written or taken as understood. */
  readonly unit: LengthUnit;
}

/** What a unit is worth as `times / per` millimetres; in whole numbers, so that 1 1/2 in is 38.1 mm and not a bit beside it. An inch is 127/5 mm. */
const units = new Map<string, { times: number; per: number; unit: LengthUnit }>([
  ['mm', { times: 1, per: 1, unit: 'mm' }],
  ['cm', { times: 10, per: 1, unit: 'mm' }],
  ['m', { times: 1000, per: 1, unit: 'mm' }],
  ...['µm', 'um'].map((name) => [name, { times: 1, per: 1000, unit: 'mm' }] as const),
  ...['in', 'inch', 'inches', '"'].map((name) => [name, { times: 127, per: 5, unit: 'in' }] as const),
  ...['thou', 'mil'].map((name) => [name, { times: 127, per: 5000, unit: 'in' }] as const),
]);

const vulgar: Readonly<Record<string, readonly [number, number]>> = {
  '½': [1, 2],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};

const pattern = new RegExp(
  [
    String.raw`^(?<sign>[+-])?\s*(?:[⌀∅Øø]\s*)?`,
    '(?:',
    [
      String.raw`(?:(?<whole>\d+)(?:\s+|\s*-\s*))?(?<over>\d+)\/(?<under>\d+)`,
      String.raw`(?<before>\d+)?\s*(?<fraction>[${Object.keys(vulgar).join('')}])`,
      String.raw`(?<decimal>\d+(?:[.,]\d+)?|[.,]\d+)`,
    ].join('|'),
    String.raw`)\s*(?<unit>[a-zµ"]*)$`,
  ].join(''),
);

/**
 * A length as typed: `12,5`, `.5"`, `5/16 in`, `1 1/2"`, `1½ in`, `25 µm`, `3 thou`, `⌀12`. Point and comma both mark the
 * decimals (`1,250` is 1.25); what has both, as in `1,250.5`, is not guessed at, nor is a fraction over nought.
 *
 * @param text  what was typed
 * @param understood  unit of a bare number
 * @returns the length in millimetres and the unit it was written in, or undefined when it is not a length
 */
export function readLength(text: string, understood: LengthUnit): ParsedLength | undefined {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/μ/g, 'µ')
    .replace(/−/g, '-')
    .replace(/''|[″”]/g, '"');
  const found = pattern.exec(plain)?.groups;
  const unit = units.get(found?.unit || understood);
  if (!found || !unit) return undefined;
  const [over, under] = ratio(found);
  const mm = (over * unit.times) / (under * unit.per);
  // A figure too long for a number, above or below the line, is not taken for the largest or for nought.
  if (under === 0 || !Number.isFinite(under) || !Number.isFinite(mm)) return undefined;
  return { mm: found.sign === '-' && mm !== 0 ? -mm : mm, unit: unit.unit };
}

/** The number that was written, as a fraction. */
function ratio({ whole, over, under, before, fraction, decimal }: Partial<Record<string, string>>): [number, number] {
  if (decimal !== undefined) return [Number(decimal.replace(',', '.')), 1];
  const [top, bottom] = (fraction && vulgar[fraction]) || [Number(over), Number(under)];
  return [Number(whole ?? before ?? 0) * bottom + top, bottom];
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
