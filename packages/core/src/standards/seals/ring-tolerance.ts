/**
 * Tolerances of metric O-rings that no size table lists: ISO 3601-1 class B.
 */
import { DomainError } from '../../errors.ts';
import type { Mm } from '../../units/quantities.ts';

/**
 * Tolerance of the inside diameter of a metric O-ring, class B.
 *
 *     t = 0.009 d^0.95 + 0.11
 *
 * The page read prints the exponent as 0.93, yet its own eight figures only follow from 0.95.
 *
 * @param insideDiameter  inside diameter of the ring [mm]
 * @returns tolerance, to either side [mm]
 * @throws DomainError when the diameter is not above zero
 * @source rtdygert
 * @valid the source gives no range; its figures run from 5 to 640 mm
 * @example classBInsideTolerance(20) → 0.265
 */
export function classBInsideTolerance(insideDiameter: Mm): Mm {
  if (!(insideDiameter > 0)) throw new DomainError('insideDiameter', insideDiameter, 'more than 0 mm');
  return 0.009 * insideDiameter ** 0.95 + 0.11;
}

/** Upper end of each band of cross-section and the tolerance in it [mm]; the last is from memory of DIN 3771. */
const sectionBands: readonly (readonly [upTo: Mm, tolerance: Mm])[] = [
  [2.25, 0.08],
  [3.15, 0.09],
  [4.5, 0.1],
  [6.3, 0.13],
  [8.4, 0.15],
  [10, 0.21],
];

/**
 * Tolerance of the cross-section of a metric O-ring, class B; above 8.4 mm from memory of DIN 3771.
 *
 *     0.08 up to 2.25, 0.09 up to 3.15, 0.10 up to 4.5, 0.13 up to 6.3, 0.15 up to 8.4, 0.21 up to 10
 *
 * @param section  cross-section of the ring [mm]
 * @returns tolerance, to either side [mm]
 * @throws DomainError above 10 mm, or when the section is not above zero
 * @source rtdygert
 * @source mem-din3771
 * @valid 0 to 10 mm
 * @example classBSectionTolerance(2.65) → 0.09
 */
export function classBSectionTolerance(section: Mm): Mm {
  const band = section > 0 ? sectionBands.find(([upTo]) => section <= upTo) : undefined;
  if (!band) throw new DomainError('section', section, 'more than 0, at most 10 mm');
  return band[1];
}
