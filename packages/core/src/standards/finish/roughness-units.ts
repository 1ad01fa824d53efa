/** One roughness told in another measure: Ra, Rz, Rt, N grade, microinch. */
import { DomainError } from '../../errors.ts';
import type { Micrometre } from '../../units/quantities.ts';

/** A range of roughness. */
export interface RoughnessRange {
  readonly low: Micrometre;
  readonly high: Micrometre;
}

/** Ra of the grades N1 to N12 of older drawings [iso1302]. */
export const nGrades: readonly (readonly [grade: string, ra: Micrometre])[] = [
  ['N1', 0.025],
  ['N2', 0.05],
  ['N3', 0.1],
  ['N4', 0.2],
  ['N5', 0.4],
  ['N6', 0.8],
  ['N7', 1.6],
  ['N8', 3.2],
  ['N9', 6.3],
  ['N10', 12.5],
  ['N11', 25],
  ['N12', 50],
];

/**
 * Ra that an N grade stands for.
 *
 * @param grade  N1 to N12, as text
 * @returns Ra [µm]
 * @throws DomainError for a grade that does not exist
 * @source iso1302
 * @valid N1 to N12
 * @example raOfGrade('N7') → 1.6
 */
export function raOfGrade(grade: string): Micrometre {
  const found = nGrades.find(([name]) => name === grade.trim().toUpperCase().replace(/\s/g, ''));
  if (!found) throw new DomainError('grade', grade, 'N1 to N12');
  return found[1];
}

/**
 * Coarsest N grade that still keeps within a wanted Ra.
 *
 * @param ra  wanted upper limit of Ra [µm]
 * @returns N grade, as text [-]
 * @throws DomainError below N1, 0.025 µm
 * @source iso1302
 * @valid Ra from 0.025 µm
 * @example gradeWithin(1) → 'N6'
 */
export function gradeWithin(ra: Micrometre): string {
  const found = nGrades.findLast(([, limit]) => limit <= ra);
  if (!found) throw new DomainError('ra', ra, 'at least 0.025 µm, the finest grade (N1)');
  return found[0];
}

/**
 * Rt to be expected with an Ra, with the scatter that the seal maker states.
 *
 *     Rt = (7 Ra + 0.2) ± 35 %
 *
 * @param ra  Ra [µm]
 * @returns low and high Rt [µm]
 * @throws DomainError below the 0.1 µm the source holds for
 * @source epm
 * @valid Ra over 0.1 µm
 * @example rtFromRa(0.4).high → 4.05
 */
export function rtFromRa(ra: Micrometre): RoughnessRange {
  if (!(ra >= 0.1 && Number.isFinite(ra))) throw new DomainError('ra', ra, 'at least 0.1 µm');
  const middle = 7 * ra + 0.2;
  return { low: 0.65 * middle, high: 1.35 * middle };
}

/**
 * Rz to be expected with an Ra: about four times it when turned, six to seven when ground.
 *
 *     Rz = 4 … 7 · Ra
 *
 * @param ra  Ra [µm]
 * @returns low and high Rz [µm]
 * @throws DomainError when Ra is not positive
 * @source mem-din4768
 * @valid rule of thumb
 * @example rzFromRa(0.4).high → 2.8
 */
export function rzFromRa(ra: Micrometre): RoughnessRange {
  if (!(ra > 0 && Number.isFinite(ra))) throw new DomainError('ra', ra, 'more than 0 µm');
  return { low: 4 * ra, high: 7 * ra };
}

/**
 * Microinches in micrometres.
 *
 *     1 µin = 0.0254 µm
 *
 * @param microinch  roughness [µin]
 * @returns roughness [µm]
 * @source inch-1959
 * @valid any
 * @example fromMicroinch(32) → 0.813
 */
export function fromMicroinch(microinch: number): Micrometre {
  return microinch * 0.0254;
}

/**
 * Ra behind a roughness given as root mean square, for the usual finishes.
 *
 *     Ra ≈ 0.9 rms
 *
 * @param rms  root mean square roughness [µm]
 * @returns Ra [µm]
 * @source physics
 * @valid sine and turned profiles; differs by some per cent for others
 * @example raFromRms(0.41) → 0.369
 */
export function raFromRms(rms: Micrometre): Micrometre {
  return 0.9 * rms;
}
