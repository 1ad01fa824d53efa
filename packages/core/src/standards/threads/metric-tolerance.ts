/**
 * Tolerances and deviations of ISO 965-1.
 *
 * The table holds grade 6. The other grades lie a fixed number of steps away along the R40 series, four to a grade; the
 * nut's pitch diameter tolerance lies five steps above the bolt's. Found by comparing all printed grades, and it
 * reproduces every one of them, while multiplying each grade by its factor and rounding does not.
 */
import { DomainError } from '../../errors.ts';
import type { Mm } from '../../units/quantities.ts';
import { diameterRanges, pitchRows } from './tables/metric-tolerances.ts';

const r40 = [
  100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315, 335, 355,
  375, 400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950,
];
const stepsFrom6: Readonly<Record<number, number>> = { 3: -12, 4: -8, 5: -4, 6: 0, 7: 4, 8: 8, 9: 12 };

/** Which diameter a tolerance belongs to: bolt major, bolt pitch, nut pitch, nut minor. */
export type ToleranceOf = 'Td' | 'Td2' | 'TD2' | 'TD1';

/** The R40 number `steps` away from `value` [µm], rounded to a whole one as the table is. */
function alongR40(value: number, steps: number): number {
  let scale = 1;
  while (value / scale < 99.9) scale /= 10;
  while (value / scale >= 1000) scale *= 10;
  const near = r40.reduce(
    (best, x, i) => (Math.abs(x - value / scale) < Math.abs((r40[best] ?? 0) - value / scale) ? i : best),
    0,
  );
  const place = near + steps;
  const decade = Math.floor(place / 40);
  return halfToEven((r40[place - 40 * decade] ?? 0) * scale * 10 ** decade);
}

/** 26.5 becomes 26 and 33.5 becomes 34, as in the table. */
function halfToEven(value: number): number {
  const down = Math.floor(value + 1e-9);
  if (Math.abs(value - down - 0.5) > 1e-6) return Math.round(value);
  return down % 2 === 0 ? down : down + 1;
}

/** The grades that the table gives for a pitch. */
function gradesOf(of: ToleranceOf, pitch: Mm, diameter: Mm): readonly number[] {
  const upTo = (last: number, first: number) => Array.from({ length: last - first + 1 }, (_, i) => first + i);
  switch (of) {
    case 'Td':
      return pitch >= 0.8 ? [4, 6, 8] : [4, 6];
    case 'Td2':
      if (pitch >= 0.8) return upTo(9, 3);
      return upTo(pitch < 0.3 && diameter > 1.4 ? 6 : 7, 3);
    case 'TD2':
      return upTo(pitch >= 0.8 ? 8 : pitch >= 0.5 ? 7 : 6, 4);
    case 'TD1':
      return upTo(pitch >= 0.8 ? 8 : pitch >= 0.5 ? 7 : pitch >= 0.3 ? 6 : pitch >= 0.25 ? 5 : 4, 4);
  }
}

/**
 * Tolerance of a metric thread's diameter.
 *
 *     T(grade) = T(6) stepped along R40, four steps a grade; T_D2(6) is five steps above T_d2(6)
 *
 * @param of  which diameter: bolt major `Td`, bolt pitch `Td2`, nut pitch `TD2`, nut minor `TD1`
 * @param grade  tolerance grade, 3 to 9 [-]
 * @param diameter  nominal diameter [mm]
 * @param pitch  pitch [mm]
 * @returns the tolerance [mm]
 * @throws DomainError when the table has no such grade, pitch or range of diameters
 * @source ISO965-1-T1
 * @source MH31-p2025
 * @source MH27-p1794
 * @valid the pairs of pitch and diameter range that ISO 965-1 tabulates, 0.99 to 180 mm
 * @example metricTolerance('Td2', 6, 10, 1.5) → 0.132
 */
export function metricTolerance(of: ToleranceOf, grade: number, diameter: Mm, pitch: Mm): Mm {
  const row = pitchRows.find(([p]) => p === pitch);
  if (!row) throw new DomainError('pitch', pitch, `a pitch of ISO 965-1 (${pitchRows.map(([p]) => p).join(', ')} mm)`);
  const grades = gradesOf(of, pitch, diameter);
  if (!grades.includes(grade))
    throw new DomainError('grade', grade, `grade ${grades.join(', ')} for ${of} at pitch ${pitch} mm`);
  if (of === 'Td') return alongR40(row[4], steps(grade)) / 1000;
  if (of === 'TD1') return alongR40(row[5], steps(grade)) / 1000;
  return alongR40(pitchDiameterBase(diameter, pitch), steps(grade) + (of === 'TD2' ? 5 : 0)) / 1000;
}

function steps(grade: number): number {
  return stepsFrom6[grade] ?? 0;
}

function pitchDiameterBase(diameter: Mm, pitch: Mm): number {
  const range = diameterRanges.find(([over, upTo]) => diameter > over && diameter <= upTo);
  if (!range)
    throw new DomainError('diameter', diameter, 'over 0.99 and up to 180 mm, the ranges of ISO 965-1 held here');
  const cell = range[2].find(([p]) => p === pitch);
  if (cell) return cell[1];
  const pitches = range[2].map(([p]) => p).join(', ');
  throw new DomainError(
    'pitch',
    pitch,
    `one that ISO 965-1 tabulates over ${range[0]} to ${range[1]} mm: ${pitches} mm`,
  );
}

/**
 * Fundamental deviation of a metric thread: how far the tolerance zone starts from the basic profile.
 *
 * @param letter  `e`, `f`, `g`, `h` of bolts, `G`, `H` of nuts
 * @param pitch  pitch [mm]
 * @returns es (negative or zero) or EI (positive or zero) [mm]
 * @throws DomainError when the position is not defined at this pitch
 * @source ISO965-1-T1
 * @valid pitches 0.2 to 8 mm; e from 0.5 mm, f from 0.35 mm
 * @example metricDeviation('g', 1.5) → -0.032
 */
export function metricDeviation(letter: string, pitch: Mm): Mm {
  if (letter === 'h' || letter === 'H') return 0;
  const row = pitchRows.find(([p]) => p === pitch);
  if (!row) throw new DomainError('pitch', pitch, `a pitch of ISO 965-1 (${pitchRows.map(([p]) => p).join(', ')} mm)`);
  const column = { e: 1, f: 2, g: 3, G: 3 }[letter];
  const value = column === undefined ? 0 : (row[column] ?? 0);
  if (value === 0)
    throw new DomainError('position', letter, `e (from P 0.5), f (from P 0.35), g, h, G or H at pitch ${pitch} mm`);
  return (letter === 'G' ? value : -value) / 1000;
}
