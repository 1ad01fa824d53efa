/**
 * How wide a gap a ring bridges under pressure without being pushed into it.
 *
 * Two published tables disagree: one gives the same gap to every ring, one gives smaller rings less. The smaller is taken.
 * A third figure met (0.13 mm at 7 MPa, 70 Shore A [gioang]) cites a standard that holds no gland table, and is not used.
 */
import { DomainError } from '../../errors.ts';
import type { Mm, MPa } from '../../units/quantities.ts';

/** A published largest gap. */
export interface GapLimit {
  /** Bore less piston, or housing less rod. */
  readonly diametral: Mm;
  /** Gap on one side. */
  readonly radial: Mm;
  readonly source: 'sealanddesign' | 'mem-trelleborg-gap';
}

export interface ExtrusionLimit {
  readonly diametral: Mm;
  readonly radial: Mm;
  /** Each table's own answer, the smaller first. */
  readonly tables: readonly GapLimit[];
  /** The hardness whose column was used [Shore A]. */
  readonly hardness: 70 | 90;
}

type Column = 70 | 90;

/** [pressure up to MPa, diametral gap mm] [sealanddesign], printed in psi and inch, for every ring. */
const anyRing: Record<Column, readonly (readonly [MPa, Mm])[]> = {
  70: [
    [3.45, 0.406],
    [6.89, 0.254],
    [10.34, 0.152],
    [13.79, 0.102],
    [20.68, 0.051],
  ],
  90: [
    [3.45, 0.711],
    [6.89, 0.61],
    [10.34, 0.508],
    [13.79, 0.406],
    [20.68, 0.254],
  ],
};

/** Upper end of each pressure band of the second table [MPa]. */
const pressureBands: readonly MPa[] = [3.5, 7, 10.5, 14, 17.5, 21, 35];

/** [cross-section up to mm, radial gap in each pressure band mm] [mem-trelleborg-gap]. */
const bySection: Record<Column, readonly (readonly [Mm, readonly Mm[]])[]> = {
  70: [
    [2, [0.08, 0.05, 0.03]],
    [3, [0.09, 0.07, 0.04]],
    [5, [0.1, 0.08, 0.05]],
    [7, [0.13, 0.09, 0.07]],
    [Number.POSITIVE_INFINITY, [0.15, 0.1, 0.08]],
  ],
  90: [
    [2, [0.13, 0.1, 0.07, 0.05, 0.04, 0.03, 0.02]],
    [3, [0.15, 0.13, 0.09, 0.07, 0.05, 0.04, 0.03]],
    [5, [0.2, 0.15, 0.1, 0.08, 0.07, 0.05, 0.03]],
    [7, [0.23, 0.18, 0.13, 0.09, 0.08, 0.07, 0.04]],
    [Number.POSITIVE_INFINITY, [0.25, 0.2, 0.15, 0.1, 0.09, 0.08, 0.04]],
  ],
};

/**
 * Largest gap a ring without back-up ring may be asked to bridge. Hardness between the columns takes the softer column.
 *
 *     the smaller of two tables; a silicone ring half of it
 *
 * @param hardness  hardness of the ring [Shore A]
 * @param pressure  pressure it holds [MPa]
 * @param section  cross-section of the ring [mm]
 * @param silicone  whether it is of silicone or fluorosilicone, which tears easily [-]
 * @returns the limit, diametral and radial [mm], with what each table says
 * @throws DomainError softer than 70 Shore A, and at pressures for which no table allows any gap: a back-up ring is wanted
 * @source sealanddesign
 * @source mem-trelleborg-gap
 * @valid 70 Shore A and harder; up to 20.68 MPa (70) or 35 MPa (90)
 * @example extrusionLimit(70, 7, 3.53).radial → 0.076
 */
export function extrusionLimit(hardness: number, pressure: MPa, section: Mm, silicone = false): ExtrusionLimit {
  if (!(hardness >= 70 && hardness <= 100))
    throw new DomainError('hardness', hardness, '70 to 100 Shore A: no gap is published for softer rings');
  if (!(pressure >= 0)) throw new DomainError('pressure', pressure, 'at least 0 MPa');
  if (!(section > 0)) throw new DomainError('section', section, 'more than 0 mm');
  const column: Column = hardness >= 90 ? 90 : 70;
  const share = silicone ? 0.5 : 1;
  const tables: GapLimit[] = [];
  const diametral = anyRing[column].find(([upTo]) => pressure <= upTo)?.[1];
  if (diametral !== undefined) {
    tables.push({ diametral: share * diametral, radial: (share * diametral) / 2, source: 'sealanddesign' });
  }
  const band = pressureBands.findIndex((upTo) => pressure <= upTo);
  const radial = bySection[column].find(([upTo]) => section <= upTo)?.[1][band];
  if (radial !== undefined)
    tables.push({ diametral: 2 * share * radial, radial: share * radial, source: 'mem-trelleborg-gap' });
  tables.sort((a, b) => a.radial - b.radial);
  const [least] = tables;
  if (!least) {
    const most = column === 90 ? 35 : 20.68;
    throw new DomainError('pressure', pressure, `at most ${most} MPa without a back-up ring at ${column} Shore A`);
  }
  return { diametral: least.diametral, radial: least.radial, tables, hardness: column };
}
