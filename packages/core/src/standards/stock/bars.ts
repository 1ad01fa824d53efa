/**
 * Round bar as it is sold: listed diameters, the tolerance it comes with, and what it weighs.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { LengthUnit } from '../../units/length.ts';
import { type Kilogram, type Mm, mmPerInch } from '../../units/quantities.ts';
import { barTolerance, type Supply } from './bar-tolerances.ts';

export interface BarSize {
  readonly diameter: Mm;
  /** As it is asked for over the counter: `12 mm`, `5/16 in`. */
  readonly label: string;
  readonly unit: LengthUnit;
  readonly sources: readonly SourceKey[];
}

/** Diameters in millimetres; the first list is what stockholders commonly offer, the second was read in one catalogue of stainless bar. */
const commonMetric = [
  2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 22, 24, 25, 26, 28, 30,
  32, 35, 36, 38, 40, 42, 45, 48, 50,
];
const readMetric = [6, 8, 10, 12, 16, 20, 25, 32, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 90, 100, 110, 125, 150, 200];

/** Diameters in sixteenths or thirty-seconds of an inch, whole inches apart. */
const commonInch = [
  ...[
    '1/16',
    '3/32',
    '1/8',
    '5/32',
    '3/16',
    '7/32',
    '1/4',
    '9/32',
    '5/16',
    '3/8',
    '7/16',
    '1/2',
    '9/16',
    '5/8',
    '11/16',
  ],
  ...[
    '3/4',
    '13/16',
    '7/8',
    '15/16',
    '1',
    '1-1/16',
    '1-1/8',
    '1-1/4',
    '1-3/8',
    '1-1/2',
    '1-5/8',
    '1-3/4',
    '2',
    '2-1/4',
  ],
  ...['2-1/2', '3'],
];

export const metricBars: readonly BarSize[] = [...new Set([...commonMetric, ...readMetric])]
  .toSorted((a, b) => a - b)
  .map((diameter) => ({
    diameter,
    label: `${diameter} mm`,
    unit: 'mm',
    sources: readMetric.includes(diameter) ? ['SJ-bar'] : ['bar-lists'],
  }));

export const inchBars: readonly BarSize[] = commonInch.map((text) => ({
  diameter: inches(text) * mmPerInch,
  label: `${text} in`,
  unit: 'in',
  sources: ['bar-lists'],
}));

function inches(text: string): number {
  return text
    .split('-')
    .map((piece) => piece.split('/').map(Number))
    .reduce((sum, [over = 0, under = 1]) => sum + over / under, 0);
}

export interface OfferedBar extends BarSize {
  /** Smallest diameter it may come with [mm]. */
  readonly least: Mm;
  /** What is to be turned off its smallest diameter, on the diameter [mm]. */
  readonly spare: Mm;
  readonly massPerMetre: Kilogram;
}

/** Steel, for the mass when nothing better is known. */
export const steelDensity = 7850;

/**
 * Mass of a metre of round bar.
 *
 *     m = ρ π d² / 4 · 1 m
 *
 * @param diameter  diameter [mm]
 * @param density  density [kg/m³]
 * @returns mass of one metre [kg]
 * @throws DomainError when either is not over 0
 * @source geometry
 * @valid any size
 * @example massPerMetre(50, 7950) → 15.61
 */
export function massPerMetre(diameter: Mm, density: number): Kilogram {
  if (!(diameter > 0 && Number.isFinite(diameter))) throw new DomainError('diameter', diameter, 'a diameter over 0');
  if (!(density > 0 && Number.isFinite(density))) throw new DomainError('density', density, 'a density over 0 kg/m³');
  return (density * Math.PI * diameter ** 2) / 4e6;
}

/**
 * The smallest listed bar from which a diameter can be made, and the sizes after it.
 *
 *     bar diameter + lower deviation of the supply ≥ diameter wanted
 *
 * @param diameter  smallest diameter the bar must have, machining allowance included [mm]
 * @param unit  metric list, inch list, or both
 * @param supply  how the bar is made, which sets its tolerance
 * @param density  density of the material [kg/m³]
 * @returns up to three bars, the smallest first; empty when the lists have none so large
 * @throws DomainError when the diameter is not over 0
 * @source SJ-bar
 * @source bar-lists
 * @valid to 200 mm, to 3 in
 * @example nextBars(11.99, 'mm', 'drawn', 7850)[0]?.label → '13 mm'
 */
export function nextBars(
  diameter: Mm,
  unit: LengthUnit | 'either',
  supply: Supply,
  density: number = steelDensity,
): OfferedBar[] {
  if (!(diameter > 0 && Number.isFinite(diameter))) throw new DomainError('diameter', diameter, 'a diameter over 0 mm');
  const listed = unit === 'mm' ? metricBars : unit === 'in' ? inchBars : [...metricBars, ...inchBars];
  return listed
    .toSorted((a, b) => a.diameter - b.diameter)
    .filter((bar) => bar.diameter >= diameter)
    .flatMap((bar) => {
      const tolerance = barTolerance(bar.diameter, supply);
      if (!tolerance) return [];
      const least = bar.diameter + tolerance.lower;
      const spare = Math.round((least - diameter) * 1e9) / 1e9;
      return spare < 0 ? [] : [{ ...bar, least, spare, massPerMetre: massPerMetre(bar.diameter, density) }];
    })
    .slice(0, 3);
}

/**
 * The smallest listed bar from which a diameter can be made, as bright drawn metric bar unless told otherwise.
 *
 *     as for {@link nextBars}
 *
 * @param diameter  smallest diameter the bar must have, machining allowance included [mm]
 * @param unit  metric list, inch list, or both
 * @param supply  how the bar is made
 * @returns the bar
 * @throws DomainError when the diameter is not over 0, or larger than any listed bar can be relied on for
 * @source SJ-bar
 * @source bar-lists
 * @valid to just below 200 mm, inch sizes to just below 3 in
 * @example nextBar(11.9).label → '12 mm'
 */
export function nextBar(diameter: Mm, unit: LengthUnit | 'either' = 'mm', supply: Supply = 'drawn'): OfferedBar {
  const [first] = nextBars(diameter, unit, supply);
  if (!first)
    throw new DomainError('diameter', diameter, 'a diameter that the largest listed bar can be relied on for');
  return first;
}
