/**
 * Where the limits of a tolerance class come from, and how firmly each value stands: the standard itself was not at hand,
 * so every value rests on a reprint, on a mirrored or settled cell, or on memory.
 */
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import { fineRanges, jRows, shaftRows } from './fundamental-deviations.ts';
import { readToleranceClass } from './limit-deviations.ts';
import { gradeIndex, gradeRows, mainRanges, rangeIndex } from './tolerance-grades.ts';

/** `read`: printed tables agree. `settled`: mirrored, computed from read values, or decided between two sources. */
export type Standing = 'read' | 'settled' | 'from memory';

export interface Provenance {
  readonly standing: Standing;
  readonly sources: readonly SourceKey[];
  /** What to know about the values used; empty when they were simply read. */
  readonly remarks: readonly string[];
}

interface Remark {
  readonly standing: Standing;
  readonly says: string;
}

/** Sources and standing of the limits of a class at a size; the class must exist there. */
export function classProvenance(nominal: Mm, toleranceClass: string): Provenance {
  const read = readToleranceClass(toleranceClass);
  if (!read) return { standing: 'read', sources: [], remarks: [] };
  const letter = read.letters.toLowerCase();
  const hole = read.feature === 'hole';
  const grade = gradeIndex(read.grade) ?? 0;
  const row = gradeRows[grade];
  const sources = [...(row?.sources ?? []), ...(hole ? holeSources : shaftSources)(nominal, letter, read.grade)];
  const remarks = [
    ...gradeRemarks(nominal, letter, read.grade, row?.um[rangeIndex(nominal, mainRanges)] ?? 0),
    ...(hole ? holeRemarks(nominal, letter, grade) : shaftRemarks(nominal, letter, read.grade)),
    ...settledCells(nominal, letter),
  ];
  return { standing: weakest(remarks), sources: [...new Set(sources)], remarks: remarks.map((r) => r.says) };
}

function weakest(remarks: readonly Remark[]): Standing {
  for (const standing of ['from memory', 'settled'] as const) {
    if (remarks.some((r) => r.standing === standing)) return standing;
  }
  return 'read';
}

function gradeRemarks(nominal: Mm, letter: string, grade: string, um: number): Remark[] {
  const remarks: Remark[] = [];
  if (grade === '18') remarks.push({ standing: 'from memory', says: 'the width of IT18 is from memory' });
  if (nominal <= 1 && Number(grade) >= 14 && grade !== '01') {
    remarks.push({ standing: 'from memory', says: 'the standard does not use IT14 to IT18 up to 1 mm (from memory)' });
  }
  if (letter === 'js' && Number(grade) >= 7 && Number(grade) <= 11 && um % 2 === 1) {
    const rounded = (um - 1) / 2;
    remarks.push({
      standing: 'read',
      says: `some tables round to ±${rounded} µm; here it is exactly half, ±${um / 2}`,
    });
  }
  return remarks;
}

function shaftSources(nominal: Mm, letter: string, grade: string): SourceKey[] {
  if (letter === 'js') return ['ND-15.2a'];
  const row = letter === 'j' ? jRows[`j${grade}`] : shaftRows[letter];
  const source = row?.sources[nominal <= 180 ? 0 : 1];
  return source ? [isIn(nominal, 200, 225) && letter === 'u' ? 'UF-holes' : source] : [];
}

function shaftRemarks(nominal: Mm, letter: string, grade: string): Remark[] {
  if (letter === 'j' && grade === '8') return [{ standing: 'from memory', says: 'j8 is from memory' }];
  if (letter === 'j' && Number(grade) < 7 && isIn(nominal, 18, 65)) {
    return [{ standing: 'settled', says: 'one table prints 1 to 2 µm otherwise; settled by a bearing maker’s table' }];
  }
  if (nominal > 180 && letter >= 'm') {
    return [{ standing: 'settled', says: 'over 180 mm read as the hole value with the sign changed' }];
  }
  return [];
}

function holeSources(nominal: Mm, letter: string, grade: string): SourceKey[] {
  if (letter === 'js') return ['MH-6a', 'ND-15.3a'];
  if (letter === 'j') return [...(jRows[`J${grade}`]?.sources ?? [])];
  if (letter === 'm') return isIn(nominal, 40, 120) ? ['ND-15.2b'] : ['MH-6a', 'ND-15.3a'];
  if (letter < 'l') return nominal <= 180 ? ['MH-6a'] : nominal <= 200 ? ['MH-6a', 'ND-15.3a'] : ['ND-15.3a'];
  if (letter === 'n') return [nominal <= 200 ? 'UF-holes' : 'ND-15.3a'];
  return [nominal <= 225 ? 'UF-holes' : 'ND-15.3b'];
}

function holeRemarks(nominal: Mm, letter: string, grade: number): Remark[] {
  const remarks: Remark[] = [];
  if (letter === 'm' && isIn(nominal, 40, 120)) {
    remarks.push({ standing: 'settled', says: 'read as the shaft value with the sign changed' });
  }
  const lastWithDelta = gradeIndex(['k', 'm', 'n'].includes(letter) ? '8' : '7') ?? 0;
  if (letter >= 'k' && nominal > 3 && nominal <= 180 && grade <= lastWithDelta) {
    remarks.push({ standing: 'settled', says: 'the delta is computed from two read tolerances' });
  }
  return remarks;
}

/** Two cells in which the printed tables contradict each other or the formula. */
function settledCells(nominal: Mm, letter: string): Remark[] {
  if (letter === 'u' && isIn(nominal, 200, 225)) {
    return [{ standing: 'settled', says: 'printed 256 in one table and 258 in another; the formula gives 258, taken' }];
  }
  if (letter === 'x' && isIn(nominal, 355, 400)) {
    return [{ standing: 'settled', says: 'printed 650; the formula and the neighbours call for 660, taken' }];
  }
  return [];
}

/** Whether a size lies in the ranges over `from` up to and including `to`. */
function isIn(nominal: Mm, from: Mm, to: Mm): boolean {
  const range = rangeIndex(nominal, fineRanges);
  return range > rangeIndex(from, fineRanges) && range <= rangeIndex(to, fineRanges);
}
