/**
 * Choosing tolerance classes: by what the joint has to do, by the clearance wanted, or backwards from measured limits.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import { classFit, type Fit, type Limits } from './fit.ts';
import { shaftLetters } from './fundamental-deviations.ts';
import { classMicrometres } from './limit-deviations.ts';
import { type PreferredFit, preferredFit, preferredFits } from './preferred-fits.ts';
import { checkSize, gradeIndex, gradeRows } from './tolerance-grades.ts';

/** Which part is made to the plain class: H holes, or h shafts. */
export type Basis = 'hole' | 'shaft';

export const roles = {
  loose: {
    fits: ['H11/c11', 'H9/d9'],
    why: 'goes together always, in dirt, heat or under paint; play is seen and felt',
  },
  'free running': { fits: ['H9/d9', 'H9/e9', 'H8/e8'], why: 'turns easily where it need not be held closely' },
  running: { fits: ['H8/f7', 'H7/f7', 'H8/e8'], why: 'room for an oil film without the shaft wandering' },
  sliding: { fits: ['H7/g6', 'H8/f7'], why: 'moves along or turns slowly, guided with hardly any shake' },
  'sliding seal': {
    fits: ['H8/f7', 'H7/g6', 'H8/e8'],
    why: 'moves freely, yet leaves too small a gap for a seal ring to be pressed into; finer for higher pressure, wider for heat or grit',
  },
  location: {
    fits: ['H7/h6', 'H8/h7', 'H9/h9', 'H11/h11'],
    why: 'stands still, is put together and taken apart by hand',
  },
  'location without play': {
    fits: ['H7/js6', 'H7/k6', 'H7/m6', 'H7/n6'],
    why: 'placed exactly; may come out a shade loose or a shade tight',
  },
  'light press': { fits: ['H7/p6', 'H7/n6'], why: 'located and held, without much pressure on the bore' },
  press: {
    fits: ['H7/r6', 'H7/p6', 'H7/s6'],
    why: 'holds by interference; thin walls and cast iron want the lighter ones',
  },
  shrink: { fits: ['H7/s6', 'H7/u6'], why: 'holds a load by interference alone; assemble hot or cold' },
} as const satisfies Record<string, { fits: readonly string[]; why: string }>;

export type Role = keyof typeof roles;

export interface SuggestedFit extends Fit {
  readonly hole: string;
  readonly shaft: string;
  readonly holeLimits: Limits;
  readonly shaftLimits: Limits;
  /** Its name in the list of preferred fits, empty when it is not one. */
  readonly name: string;
  readonly why: string;
  readonly sources: readonly SourceKey[];
}

/** Fits that suit a role at a size, the usual one first. */
export function suggestFits(role: Role, nominal: Mm, basis: Basis): SuggestedFit[] {
  const { fits, why } = roles[role];
  return fits.flatMap((name, i) => {
    const listed = preferredFit(name);
    if (!listed) return [];
    const { hole, shaft } = basis === 'hole' ? listed : listed.shaftBasis;
    return [suggested(nominal, hole, shaft, i === 0 ? `${why}; ${listed.use}` : listed.use, listed)];
  });
}

function suggested(nominal: Mm, hole: string, shaft: string, why: string, listed?: PreferredFit): SuggestedFit {
  const { hole: holeLimits, shaft: shaftLimits, ...result } = classFit(nominal, hole, shaft);
  const sources = listed?.sources ?? (['ISO-286-1'] as const);
  return { ...result, hole, shaft, holeLimits, shaftLimits, name: listed?.name ?? '', why, sources };
}

/** Workshop grades between which a fit is looked for: a hole of the same grade as its shaft, up to two coarser, or one finer. */
const fitGrades = { from: '5', to: '11', holeFiner: 1, holeCoarser: 2 } as const;

/**
 * Fits whose clearance stays inside a wanted range, preferred fits first, then those that leave hole and shaft the widest
 * tolerances, for they are the easiest to make.
 *
 *     wanted min ≤ hole min − shaft max,  hole max − shaft min ≤ wanted max
 *
 * @param nominal  nominal size [mm]
 * @param wanted  smallest and largest clearance, negative for interference [mm]
 * @param basis  hole: an H hole, shaft: an h shaft
 * @returns the fits, best first; empty when the range is narrower than any pair of grades 5 to 11
 * @throws DomainError when the size is not over 0 to 500 mm or the range is reversed
 * @source ISO-286-1
 * @valid over 0 to 500 mm
 * @example fitsForClearance(50, { min: 0.025, max: 0.075 }, 'hole')[0]?.shaft → 'f7'
 */
export function fitsForClearance(nominal: Mm, wanted: Limits, basis: Basis): SuggestedFit[] {
  checkSize(nominal);
  if (!(wanted.max > wanted.min)) throw new DomainError('wanted', wanted, 'a largest clearance above the smallest');
  const [wantedMin, wantedMax] = [wanted.min * 1000 - 1e-6, wanted.max * 1000 + 1e-6];
  const found = pairs(nominal, basis).filter((p) => p.min >= wantedMin && p.max <= wantedMax);
  return found
    .map((p) => ({ ...p, listed: listedFit(p.hole, p.shaft, basis) }))
    .toSorted(
      (a, b) => Number(b.listed !== undefined) - Number(a.listed !== undefined) || b.max - b.min - (a.max - a.min),
    )
    .slice(0, 12)
    .map((p) => suggested(nominal, p.hole, p.shaft, p.listed?.use ?? 'stays inside the wanted range', p.listed));
}

function listedFit(hole: string, shaft: string, basis: Basis): PreferredFit | undefined {
  return preferredFits.find((f) => {
    const pair = basis === 'hole' ? f : f.shaftBasis;
    return pair.hole === hole && pair.shaft === shaft;
  });
}

interface Pair {
  readonly hole: string;
  readonly shaft: string;
  /** Clearances in micrometres. */
  readonly min: number;
  readonly max: number;
}

function pairs(nominal: Mm, basis: Basis): Pair[] {
  const [from, to] = [gradeIndex(fitGrades.from) ?? 0, gradeIndex(fitGrades.to) ?? 0];
  const found: Pair[] = [];
  for (let h = from; h <= to; h++) {
    for (let s = Math.max(from, h - fitGrades.holeCoarser); s <= Math.min(to, h + fitGrades.holeFiner); s++) {
      const plain = basis === 'hole' ? classMicrometres(nominal, 'H', h) : classMicrometres(nominal, 'h', s);
      for (const letters of shaftLetters) {
        const holeLetters = basis === 'hole' ? 'H' : letters.toUpperCase();
        const shaftOwn = basis === 'hole' ? letters : 'h';
        const hole = basis === 'hole' ? plain : classMicrometres(nominal, holeLetters, h);
        const shaft = basis === 'hole' ? classMicrometres(nominal, shaftOwn, s) : plain;
        if (!hole || !shaft) continue;
        const names = { hole: `${holeLetters}${gradeRows[h]?.grade}`, shaft: `${shaftOwn}${gradeRows[s]?.grade}` };
        found.push({ ...names, min: hole[1] - shaft[0], max: hole[0] - shaft[1] });
      }
    }
  }
  return found;
}

export interface HoldingClass {
  readonly toleranceClass: string;
  readonly upper: Mm;
  readonly lower: Mm;
  /** Room left between the measured limits and those of the class, above and below together. */
  readonly slack: Mm;
  /** Whether the class stands in the list of preferred fits. */
  readonly preferred: boolean;
}

const preferredClasses = new Set(
  preferredFits.flatMap((f) => [f.hole, f.shaft, f.shaftBasis.hole, f.shaftBasis.shaft]),
);

/**
 * Which classes hold measured limits, the snuggest first. A guess at what the maker meant: wear moves a shaft down and a
 * bore up, so readings should come from unworn places.
 *
 *     lower ≤ measured min − nominal,  measured max − nominal ≤ upper;  slack = (upper − lower) − (max − min)
 *
 * @param nominal  nominal size the maker is thought to have started from [mm]
 * @param measured  largest and smallest measured diameter [mm]
 * @param feature  hole or shaft
 * @param finestGrade  no class finer than this is offered; 5 is about the finest of ordinary work
 * @returns the classes, snuggest first, preferred ones before others of the same slack [mm]
 * @throws DomainError when the size is not over 0 to 500 mm, the limits are reversed or the grade is unknown
 * @source ISO-286-1
 * @valid over 0 to 500 mm
 * @example classesForLimits(50, { max: 49.975, min: 49.95 }, 'shaft')[0]?.toleranceClass → 'f7'
 */
export function classesForLimits(
  nominal: Mm,
  measured: Limits,
  feature: 'hole' | 'shaft',
  finestGrade = '5',
): HoldingClass[] {
  checkSize(nominal);
  if (!(measured.max >= measured.min)) {
    throw new DomainError('measured', measured, 'a largest size not below the smallest');
  }
  const finest = gradeIndex(finestGrade);
  if (finest === undefined) throw new DomainError('finestGrade', finestGrade, 'a grade 01, 0, 1 … 18');
  const [top, bottom] = [(measured.max - nominal) * 1000, (measured.min - nominal) * 1000];
  const found: HoldingClass[] = [];
  for (const shaftName of shaftLetters) {
    const letters = feature === 'hole' ? shaftName.toUpperCase() : shaftName;
    for (let grade = finest; grade < gradeRows.length; grade++) {
      const um = classMicrometres(nominal, letters, grade);
      if (!um || um[0] < top - 1e-6 || um[1] > bottom + 1e-6) continue;
      const toleranceClass = `${letters}${gradeRows[grade]?.grade}`;
      const slack = Math.max(0, Math.round((um[0] - um[1] - (top - bottom)) * 1e6) / 1e9);
      const preferred = preferredClasses.has(toleranceClass);
      found.push({ toleranceClass, upper: um[0] / 1000, lower: um[1] / 1000, slack, preferred });
    }
  }
  return found.toSorted((a, b) => a.slack - b.slack || Number(b.preferred) - Number(a.preferred));
}
