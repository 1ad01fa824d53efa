/**
 * Limit deviations of a tolerance class such as f7 or H8 at a size, ISO 286-1, to 500 mm.
 *
 * Knowledge: fundamental deviation by letter and size, tolerance by grade and size. Holes mirror shafts; from K on, up to
 * IT8 for K, M, N and up to IT7 for P to ZC, the difference of two neighbouring grades (delta) is added, so that a hole
 * basis fit and the shaft basis fit of the next finer shaft have the same clearances.
 */
import { DomainError } from '../../errors.ts';
import type { Mm } from '../../units/quantities.ts';
import { fineRanges, jRows, shaftLetters, shaftRows, tableDeviation } from './fundamental-deviations.ts';
import { checkSize, gradeIndex, gradeRows, mainRanges, rangeIndex } from './tolerance-grades.ts';

export interface Deviations {
  readonly upper: Mm;
  readonly lower: Mm;
}

export interface ToleranceClass {
  /** Lower case for a shaft, capitals for a hole. */
  readonly letters: string;
  readonly grade: string;
  readonly feature: 'hole' | 'shaft';
}

const shaftLetterIndexes = new Map(shaftLetters.map((letters, i) => [letters, i]));
const letterOf = new Map<string, { readonly letters: string; readonly hole: boolean }>();
for (const letters of shaftLetters) {
  letterOf.set(letters, { letters, hole: false });
  letterOf.set(letters.toUpperCase(), { letters, hole: true });
}
const it = (grade: string) => gradeIndex(grade) ?? Number.NaN;
const [it3, it4, it6, it7, it8] = [it('3'), it('4'), it('6'), it('7'), it('8')];
const lastBelow = shaftLetters.indexOf('h');

/** Splits `f7` into letters and grade; undefined when either does not exist in the standard. */
export function readToleranceClass(text: string): ToleranceClass | undefined {
  const match = /^([A-Za-z]{1,2}) ?(\d{1,2})$/.exec(text);
  const [, letters = '', grade = ''] = match ?? [];
  const letter = letterOf.get(letters);
  if (!letter || gradeIndex(grade) === undefined) return undefined;
  return { letters, grade, feature: letter.hole ? 'hole' : 'shaft' };
}

/** Limit deviations in micrometres, undefined where the standard has no such class at this size. */
export function classMicrometres(nominal: Mm, letters: string, grade: number): readonly [number, number] | undefined {
  const letter = letterOf.get(letters);
  const width = gradeRows[grade]?.um[rangeIndex(nominal, mainRanges)];
  if (!letter || width === undefined) return undefined;
  if (letter.letters === 'js') return [width / 2, -width / 2];
  if (nominal <= 1 && (letter.letters === 'a' || letter.letters === 'b')) return undefined;
  const edge = letter.hole ? holeEdge(nominal, letter.letters, grade) : shaftEdge(nominal, letter.letters, grade);
  if (edge === undefined) return undefined;
  return isBelow(letter.letters) === letter.hole ? [edge + width, edge] : [edge, edge - width];
}

/** a to h lie below the nominal size as shafts and above it as holes. */
function isBelow(letters: string): boolean {
  return (shaftLetterIndexes.get(letters) ?? 0) <= lastBelow;
}

/** es up to h, ei from j on. */
function shaftEdge(nominal: Mm, letters: string, grade: number): number | undefined {
  const range = rangeIndex(nominal, fineRanges);
  const name = gradeRows[grade]?.grade;
  if (letters === 'j') return tableDeviation(jRows[`j${name}`], range);
  if (letters === 'k' && (grade < it4 || grade > it7)) return 0;
  return tableDeviation(shaftRows[letters], range);
}

/** EI up to H, ES from J on. */
function holeEdge(nominal: Mm, letters: string, grade: number): number | undefined {
  const range = rangeIndex(nominal, fineRanges);
  const mirrored = tableDeviation(shaftRows[letters], range);
  if (letters === 'j') return tableDeviation(jRows[`J${gradeRows[grade]?.grade}`], range);
  if (mirrored === undefined) return undefined;
  if (isBelow(letters)) return 0 - mirrored;
  if (letters === 'k' && grade > it8) return nominal > 3 ? undefined : 0;
  if (letters === 'n' && grade > it8) return nominal <= 1 ? undefined : nominal <= 3 ? -mirrored : 0;
  if (letters === 'm' && grade === it6 && nominal > 250 && nominal <= 315) return -9;
  const delta = deltaMicrometres(nominal, letters, grade);
  return delta === undefined ? undefined : delta - mirrored;
}

/**
 * The delta of the hole rule: tolerance less the next finer one. None is published finer than IT3, where the holes K to ZC
 * are therefore not given over 3 mm.
 */
function deltaMicrometres(nominal: Mm, letters: string, grade: number): number | undefined {
  const last = letters === 'k' || letters === 'm' || letters === 'n' ? it8 : it7;
  if (nominal <= 3 || grade > last) return 0;
  if (grade < it3) return undefined;
  const range = rangeIndex(nominal, mainRanges);
  return (gradeRows[grade]?.um[range] ?? Number.NaN) - (gradeRows[grade - 1]?.um[range] ?? Number.NaN);
}

/**
 * Upper and lower limit deviation of a tolerance class at a size.
 *
 *     a … h: upper = es, lower = es − IT;  j … zc: lower = ei, upper = ei + IT;  js: ± IT/2
 *     A … H: lower = EI, upper = EI + IT;  J … ZC: upper = ES, lower = ES − IT;  ES = −ei + Δ, Δ = ITn − ITn−1
 *
 * @param nominal  nominal size [mm]
 * @param toleranceClass  letter and grade, lower case for shafts: f7, H8, js6
 * @returns deviations from the nominal size [mm]
 * @throws DomainError when the size is not over 0 to 500 mm, or the standard has no such class there
 * @source ISO-286-1 as reprinted in ND-15.2a, ND-15.2b, ND-15.3a, ND-15.3b, CB-shaft, MH-6a and UF-holes
 * @valid over 0 to 500 mm; a, b, A, B and N above grade 8 not up to 1 mm; cd, ef, fg to 10 mm; t over 24, v over 14, y over 18 mm
 * @example limitDeviations(40, 'f7') → { upper: -0.025, lower: -0.05 }
 */
export function limitDeviations(nominal: Mm, toleranceClass: string): Deviations {
  checkSize(nominal);
  const read = readToleranceClass(toleranceClass);
  const um = read && classMicrometres(nominal, read.letters, gradeIndex(read.grade) ?? -1);
  if (!um) throw new DomainError('toleranceClass', toleranceClass, nearestClasses(nominal, toleranceClass));
  return { upper: um[0] / 1000, lower: um[1] / 1000 };
}

/** What would do instead of a class that does not exist at this size, in words. */
export function nearestClasses(nominal: Mm, toleranceClass: string): string {
  const match = /^([A-Za-z]{1,2}) ?(\d{1,4})$/.exec(toleranceClass.trim());
  if (!match) return 'a letter or two and a grade 01 to 18, such as f7 for a shaft or H8 for a hole';
  const [, letters = '', digits = ''] = match;
  const grade = [digits, String(Number(digits))].find((g) => gradeIndex(g) !== undefined) ?? '18';
  const wanted = letters.toLowerCase();
  const hole = letters.charAt(0) !== wanted.charAt(0);
  const offered = shaftLetters
    .map((l) => ({ l, name: `${hole ? l.toUpperCase() : l}${grade}` }))
    .filter(({ l }) => classMicrometres(nominal, hole ? l.toUpperCase() : l, gradeIndex(grade) ?? -1));
  const same = offered.find(({ l }) => l === wanted);
  const below = offered.findLast(({ l }) => l < wanted);
  const above = offered.find(({ l }) => l > wanted);
  const names = (same ? [same] : [below, above]).flatMap((o) => (o ? [o.name] : []));
  return `a class of ISO 286 at ${nominal} mm; nearest ${names.join(' or ')}`;
}
