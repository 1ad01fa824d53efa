/**
 * Standard tolerances IT01 to IT18 of ISO 286-1, to 500 mm, as published: the grades below IT5 and fourteen cells above
 * are smoothed in the standard, so they are never computed from the tolerance unit.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';

/** Published values, one a size range, in micrometres. */
export interface GradeRow {
  /** As written after IT or after the letter of a class. */
  readonly grade: string;
  readonly um: readonly number[];
  readonly sources: readonly SourceKey[];
}

/** Upper ends of the size ranges: over the one before, up to and including this one [mm]. */
export const mainRanges: readonly Mm[] = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500];

/** The largest size the tables cover [mm]. */
export const largestSize: Mm = 500;

/** Finest first. */
export const gradeRows: readonly GradeRow[] = [
  { grade: '01', um: [0.3, 0.4, 0.4, 0.5, 0.6, 0.6, 0.8, 1, 1.2, 2, 2.5, 3, 4], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '0', um: [0.5, 0.6, 0.6, 0.8, 1, 1, 1.2, 1.5, 2, 3, 4, 5, 6], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '1', um: [0.8, 1, 1, 1.2, 1.5, 1.5, 2, 2.5, 3.5, 4.5, 6, 7, 8], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '2', um: [1.2, 1.5, 1.5, 2, 2.5, 2.5, 3, 4, 5, 7, 8, 9, 10], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '3', um: [2, 2.5, 2.5, 3, 4, 4, 5, 6, 8, 10, 12, 13, 15], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '4', um: [3, 4, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '5', um: [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '6', um: [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '7', um: [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '8', um: [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '9', um: [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '10', um: [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '11', um: [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '12', um: [100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520, 570, 630], sources: ['ND-15.1', 'AZ-IT'] },
  { grade: '13', um: [140, 180, 220, 270, 330, 390, 460, 540, 630, 720, 810, 890, 970], sources: ['ND-15.1', 'AZ-IT'] },
  {
    grade: '14',
    um: [250, 300, 360, 430, 520, 620, 740, 870, 1000, 1150, 1300, 1400, 1550],
    sources: ['ND-15.1', 'AZ-IT'],
  },
  {
    grade: '15',
    um: [400, 480, 580, 700, 840, 1000, 1200, 1400, 1600, 1850, 2100, 2300, 2500],
    sources: ['ND-15.1', 'AZ-IT'],
  },
  {
    grade: '16',
    um: [600, 750, 900, 1100, 1300, 1600, 1900, 2200, 2500, 2900, 3200, 3600, 4000],
    sources: ['ND-15.1', 'AZ-IT'],
  },
  {
    grade: '17',
    um: [1000, 1200, 1500, 1800, 2100, 2500, 3000, 3500, 4000, 4600, 5200, 5700, 6300],
    sources: ['SF-js17'],
  },
  {
    grade: '18',
    um: [1400, 1800, 2200, 2700, 3300, 3900, 4600, 5400, 6300, 7200, 8100, 8900, 9700],
    sources: ['ISO-286-1'],
  },
];

const gradeIndexes = new Map(gradeRows.map((row, i) => [row.grade, i]));

/**
 * Place of a grade in {@link gradeRows}.
 *
 *     01, 0, 1 … 18 → 0 … 19
 *
 * @param grade  as written after IT or after the letters of a class
 * @returns its place, undefined when there is no such grade [-]
 * @source ISO-286-1
 * @valid grades 01 to 18
 * @example gradeIndex('7') → 8
 */
export function gradeIndex(grade: string): number | undefined {
  return gradeIndexes.get(grade);
}

/**
 * Which size range a size falls in; a size a hair over an end through rounding stays below it.
 *
 *     the first i with size ≤ upperEnds[i]
 *
 * @param size  nominal size [mm]
 * @param upperEnds  upper ends of the ranges, smallest first [mm]
 * @returns place of the range, -1 beyond the last [-]
 * @source ISO-286-1 ranges are over the lower end, up to and including the upper
 * @valid any size
 * @example rangeIndex(30, [3, 6, 10, 18, 30, 50]) → 4
 */
export function rangeIndex(size: Mm, upperEnds: readonly Mm[]): number {
  return upperEnds.findIndex((end) => size <= end + 1e-9);
}

/** Refuses a size the tables do not cover. */
export function checkSize(nominal: Mm): void {
  if (!(nominal > 0 && nominal <= largestSize)) {
    throw new DomainError('nominal', nominal, `a size over 0 up to ${largestSize} mm`);
  }
}

/**
 * Width of a standard tolerance grade at a size.
 *
 *     T = IT[grade, size range]; the published table, not the formula
 *
 * @param nominal  nominal size [mm]
 * @param grade  01, 0, 1 … 18, with or without IT before it
 * @returns the tolerance [mm]
 * @throws DomainError when the size or the grade is not in the table
 * @source ND-15.1 table 15.1, IT01 to IT16
 * @source SF-js17 for grade 17
 * @source ISO-286-1 for grade 18, from memory
 * @valid over 0 to 500 mm
 * @example toleranceGrade(40, 'IT7') → 0.025
 */
export function toleranceGrade(nominal: Mm, grade: string | number): Mm {
  checkSize(nominal);
  const index = gradeIndex(String(grade).trim().replace(/^IT/i, ''));
  const um = index === undefined ? undefined : gradeRows[index]?.um[rangeIndex(nominal, mainRanges)];
  if (um === undefined) throw new DomainError('grade', grade, 'a grade IT01, IT0, IT1 … IT18');
  return um / 1000;
}
