/**
 * The chamfer a ring slides up when it is put in.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Degree, Mm } from '../../units/quantities.ts';
import type { Standing } from '../small-parts/standing.ts';

export interface LeadIn {
  /** Length along the axis, at least. */
  readonly length: Mm;
  /** Angle to the axis; absent where the source read does not show it. */
  readonly angle?: { readonly min: Degree; readonly max: Degree };
  readonly source: SourceKey;
  readonly standing: Standing;
}

/** [sections up to mm, length mm] [sealsupply]; the next printed section starts above. */
const sealsupply: readonly (readonly [Mm, Mm])[] = [
  [0.74, 1],
  [1.42, 1.2],
  [1.83, 1.5],
  [2.62, 2],
  [3.7, 2.5],
  [5.33, 3],
];

/** [section mm, length mm], 15 to 20 degrees [mem-gbt3452.3]. */
const gbt: readonly (readonly [Mm, Mm])[] = [
  [1.8, 1.1],
  [2.65, 1.5],
  [3.55, 1.8],
  [5.3, 2.7],
  [7, 3.6],
];

/** [sections up to mm, length at 15 degrees, at 20 degrees mm] [mem-trelleborg-leadin]. */
const trelleborg: readonly (readonly [Mm, Mm, Mm])[] = [
  [1.8, 2.5, 1.5],
  [2.65, 3, 2],
  [3.55, 3.5, 2.5],
  [5.33, 4.5, 3.5],
  [7, 5, 4],
];

/** Every published lead-in for a section; the longest is the safest. Sections between two printed ones take the larger. */
export function leadIns(section: Mm): LeadIn[] {
  if (!(section > 0 && section <= 7)) throw new DomainError('section', section, 'more than 0, at most 7 mm');
  const found: LeadIn[] = [];
  const read = sealsupply.find(([upTo]) => section <= upTo)?.[1];
  if (read !== undefined) found.push({ length: read, source: 'sealsupply', standing: 'read' });
  const standard = gbt.find(([size]) => section <= size + 0.05)?.[1];
  if (standard !== undefined) {
    found.push({ length: standard, angle: { min: 15, max: 20 }, source: 'mem-gbt3452.3', standing: 'from memory' });
  }
  const maker = trelleborg.find(([upTo]) => section <= upTo);
  if (maker) {
    found.push({
      length: maker[1],
      angle: { min: 15, max: 15 },
      source: 'mem-trelleborg-leadin',
      standing: 'doubtful',
    });
    found.push({
      length: maker[2],
      angle: { min: 20, max: 20 },
      source: 'mem-trelleborg-leadin',
      standing: 'doubtful',
    });
  }
  return found;
}

/**
 * Smallest diameter at the mouth of a bore chamfer that a fitted ring enters without being cut.
 *
 *     D ≥ G + 2 W
 *
 * @param grooveDiameter  bottom of the groove the ring sits in, G [mm]
 * @param section  free cross-section of the ring W [mm]
 * @returns diameter at the mouth [mm]
 * @throws DomainError when a measure is not above zero
 * @source common-practice
 * @valid a ring that sits on the groove bottom; the source adds that the inner corner is rounded and polished
 * @example mouthDiameter(33.8, 3.53) → 40.86
 */
export function mouthDiameter(grooveDiameter: Mm, section: Mm): Mm {
  if (!(grooveDiameter > 0)) throw new DomainError('grooveDiameter', grooveDiameter, 'more than 0 mm');
  if (!(section > 0)) throw new DomainError('section', section, 'more than 0 mm');
  return grooveDiameter + 2 * section;
}
