/**
 * Preferred numbers: the Renard series and their rounded forms, and the preferred sizes of ANSI B4.2. A size that comes out
 * near one of them was probably meant to be it, and tools and stock exist for it.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';

/** One decade, 1 to under 10. */
const r40 = [
  1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3, 3.15, 3.35,
  3.55, 3.75, 4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5,
];
const rounded40 = [
  1, 1.05, 1.1, 1.2, 1.25, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.1, 2.2, 2.4, 2.5, 2.6, 2.8, 3, 3.2, 3.4, 3.6, 3.8, 4,
  4.2, 4.5, 4.8, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5,
];
const every = (values: readonly number[], step: number) => values.filter((_, i) => i % step === 0);

interface Series {
  /** Whether the values repeat in every power of ten, or stand as listed [mm]. */
  readonly repeats: boolean;
  readonly values: readonly number[];
  readonly sources: readonly SourceKey[];
}

const read: readonly SourceKey[] = ['RN-code', 'RN-wiki'];

export const series = {
  R5: { repeats: true, values: every(r40, 8), sources: read },
  R10: { repeats: true, values: every(r40, 4), sources: read },
  R20: { repeats: true, values: every(r40, 2), sources: read },
  R40: { repeats: true, values: r40, sources: read },
  "R'10": { repeats: true, values: every(rounded40, 4), sources: ['ISO-3'] },
  "R'20": { repeats: true, values: every(rounded40, 2), sources: ['ISO-3'] },
  "R'40": { repeats: true, values: rounded40, sources: ['ISO-3'] },
  'R"5': { repeats: true, values: [1, 1.5, 2.5, 4, 6], sources: ['ISO-3'] },
  'R"10': { repeats: true, values: [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8], sources: ['ISO-3'] },
  'R"20': {
    repeats: true,
    values: [1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 9],
    sources: ['ISO-3'],
  },
  'ANSI first': {
    repeats: false,
    values: [
      1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30, 40, 50, 60, 80, 100, 120, 160, 200, 250, 300, 400,
      500,
    ],
    sources: ['MH-12', 'ANSI-B4.2'],
  },
  'ANSI second': {
    repeats: false,
    values: [
      1.1, 1.4, 1.8, 2.2, 2.8, 3.5, 4.5, 5.5, 7, 9, 11, 14, 18, 22, 28, 35, 45, 55, 70, 90, 110, 140, 180, 220, 280,
      350, 450,
    ],
    sources: ['ANSI-B4.2'],
  },
} as const satisfies Record<string, Series>;

export type SeriesName = keyof typeof series;

export interface Preferred {
  readonly nearest: number;
  /** The value of the series at or below, undefined when the list begins above. */
  readonly below: number | undefined;
  /** The value of the series at or above, undefined when the list ends below. */
  readonly above: number | undefined;
  /** How far the given value is from the nearest, as a part of it. */
  readonly off: number;
}

/**
 * The value of a series nearest to a size, and its neighbours.
 *
 *     nearest = the value v of the series with the least |x − v|;  off = x / v − 1
 *
 * @param value  the size or number [-]
 * @param name  which series
 * @returns nearest value and neighbours, in the unit of `value` [-]
 * @throws DomainError when the value is not over 0 and below 10⁹
 * @source RN-code
 * @source ISO-3
 * @source ANSI-B4.2
 * @valid the Renard series repeat in every power of ten; the ANSI sizes run from 1 to 500 mm
 * @example nearestPreferred(31.8, 'R10').nearest → 31.5
 */
export function nearestPreferred(value: number, name: SeriesName): Preferred {
  if (!(value > 1e-9 && value < 1e9)) throw new DomainError('value', value, 'a number over 0 and below 10⁹');
  const values = candidates(value, series[name]);
  const isSame = (v: number) => Math.abs(v - value) <= 1e-9 * value;
  const below = values.findLast((v) => v <= value || isSame(v));
  const above = values.find((v) => v >= value || isSame(v));
  const nearest =
    above === undefined || (below !== undefined && value - below <= above - value) ? (below ?? value) : above;
  return { nearest, below, above, off: value / nearest - 1 };
}

/** The decade of the value with the first of the next. */
function candidates(value: number, { repeats, values }: Series): readonly number[] {
  if (!repeats) return values;
  const decade = Math.floor(Math.log10(value * (1 + 1e-12)));
  const scale = (v: number, power: number) => Number(`${v}e${power}`);
  return [...values.map((v) => scale(v, decade)), scale(values[0] ?? 1, decade + 1)];
}
