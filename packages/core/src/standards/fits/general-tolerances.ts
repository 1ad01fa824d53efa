/**
 * General tolerances of ISO 2768-1: what holds for a dimension that states no tolerance of its own.
 */
import { DomainError } from '../../errors.ts';
import type { Degree, Mm, Radian } from '../../units/quantities.ts';
import { radians } from '../../units/quantities.ts';
import { rangeIndex } from './tolerance-grades.ts';

/** Fine, medium, coarse, very coarse. */
export type GeneralClass = 'f' | 'm' | 'c' | 'v';

export const generalClassNames: Readonly<Record<GeneralClass, string>> = {
  f: 'fine',
  m: 'medium',
  c: 'coarse',
  v: 'very coarse',
};

/** Plus and minus values by size range; undefined where the class has none. */
interface GeneralTable {
  /** The first range begins at this size, itself included. */
  readonly least: number;
  readonly upperEnds: readonly Mm[];
  readonly values: Readonly<Record<GeneralClass, readonly (number | undefined)[]>>;
}

/** Table 1, lengths and diameters [mm]. */
const linear: GeneralTable = {
  least: 0.5,
  upperEnds: [3, 6, 30, 120, 400, 1000, 2000, 4000],
  values: {
    f: [0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5],
    m: [0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2],
    c: [0.2, 0.3, 0.5, 0.8, 1.2, 2, 3, 4],
    v: [undefined, 0.5, 1, 1.5, 2.5, 4, 6, 8],
  },
};

/** Table 2, external radii and chamfer heights [mm]. */
const edges: GeneralTable = {
  least: 0.5,
  upperEnds: [3, 6, Number.POSITIVE_INFINITY],
  values: { f: [0.2, 0.5, 1], m: [0.2, 0.5, 1], c: [0.4, 1, 2], v: [0.4, 1, 2] },
};

/** Table 3, angles by the length of the shorter side [degrees]. */
const angles: GeneralTable = {
  least: 0,
  upperEnds: [10, 50, 120, 400, Number.POSITIVE_INFINITY],
  values: {
    f: [1, 1 / 2, 1 / 3, 1 / 6, 1 / 12],
    m: [1, 1 / 2, 1 / 3, 1 / 6, 1 / 12],
    c: [1.5, 1, 1 / 2, 1 / 4, 1 / 6],
    v: [3, 2, 1, 1 / 2, 1 / 3],
  },
};

/**
 * General tolerance of a length or diameter, plus and minus this.
 *
 *     ± t from table 1 of ISO 2768-1
 *
 * @param nominal  nominal size [mm]
 * @param generalClass  f, m, c or v
 * @returns the permitted deviation either way [mm]
 * @throws DomainError below 0.5 mm, where the tolerance is to be stated, and where the class has no value
 * @source HE-2768 table 1
 * @valid 0.5 to 4000 mm; f to 2000 mm; v over 3 mm
 * @example generalDeviation(40, 'm') → 0.3
 */
export function generalDeviation(nominal: Mm, generalClass: GeneralClass): Mm {
  return lookUp(linear, nominal, generalClass, linearRange[generalClass]);
}

/**
 * General tolerance of an external radius or a chamfer height, plus and minus this.
 *
 *     ± t from table 2 of ISO 2768-1
 *
 * @param nominal  radius or chamfer height [mm]
 * @param generalClass  f, m, c or v
 * @returns the permitted deviation either way [mm]
 * @throws DomainError below 0.5 mm
 * @source HE-2768 table 2
 * @source CC-2768
 * @valid from 0.5 mm
 * @example generalEdgeDeviation(1, 'm') → 0.2
 */
export function generalEdgeDeviation(nominal: Mm, generalClass: GeneralClass): Mm {
  return lookUp(edges, nominal, generalClass, 'a radius or chamfer of at least 0.5 mm; state the tolerance below that');
}

/**
 * General tolerance of an angle, plus and minus this.
 *
 *     ± t from table 3 of ISO 2768-1, by the shorter side
 *
 * @param shorterSide  length of the shorter side of the angle [mm]
 * @param generalClass  f, m, c or v
 * @returns the permitted deviation either way [rad]
 * @throws DomainError when the side is not over 0
 * @source HE-2768 table 3
 * @valid sides over 0 mm
 * @example generalAngleDeviation(30, 'm') → 0.008727
 */
export function generalAngleDeviation(shorterSide: Mm, generalClass: GeneralClass): Radian {
  const degrees: Degree = lookUp(angles, shorterSide, generalClass, 'a side longer than 0 mm');
  return radians(degrees);
}

/** What to know about a linear value: in two of the coarse cells the printed sheets contradict each other. */
export function generalRemarks(nominal: Mm, generalClass: GeneralClass): string[] {
  if (generalClass !== 'c' || nominal > 6) return [];
  return [
    'two of three sheets print 0.15 up to 3 mm and 0.2 up to 6 mm, which look like an older coarse class; 0.2 and 0.3 taken',
  ];
}

const linearRange: Readonly<Record<GeneralClass, string>> = {
  f: 'a size of 0.5 to 2000 mm for class f; state the tolerance outside that',
  m: 'a size of 0.5 to 4000 mm for class m; state the tolerance outside that',
  c: 'a size of 0.5 to 4000 mm for class c; state the tolerance outside that',
  v: 'a size over 3 to 4000 mm for class v; state the tolerance outside that',
};

function lookUp(table: GeneralTable, size: number, generalClass: GeneralClass, allowed: string): number {
  const reached = size > 0 && size >= table.least && Number.isFinite(size);
  const value = reached ? table.values[generalClass][rangeIndex(size, table.upperEnds)] : undefined;
  if (value === undefined) throw new DomainError('nominal', size, allowed);
  return value;
}
