/** The chamfers at the ends of a thread, which are cut before it. */
import { DomainError } from '../../errors.ts';
import type { Mm, Radian } from '../../units/quantities.ts';

export interface ThreadChamfer {
  /** Where the chamfer ends at the face: just clear of the root. */
  readonly diameter: Mm;
  /** Along the axis. */
  readonly length: Mm;
}

/** How far the chamfer goes past the root, on the diameter, before it is rounded to a tenth; `common practice`. */
const past: Mm = 0.1;

/** Angle between chamfer and axis; `common practice`: 45°, or 30° to the face. */
export const chamferAngle: Radian = Math.PI / 4;

/**
 * Chamfer at the end of a thread, to just past its root, so that the first turn has no thin edge and the mate starts easily.
 *
 *     outside d_c = root − 0.1, inside d_c = root + 0.1, to the next tenth past it;  l = |crest − d_c| / (2 tan β)
 *
 * @param crestDiameter  crest that was turned or bored [mm]
 * @param rootDiameter  at the bottom of the groove, smaller than the crest outside, larger inside [mm]
 * @param angle  between chamfer and axis β [rad]
 * @returns diameter at the face and length along the axis [mm]
 * @throws DomainError when crest and root are one, or the angle is not between 0 and π/2
 * @source FLIPHTML-242
 * @source common-practice
 * @valid parallel threads
 * @example threadChamfer(9.85, 8.16).diameter → 8
 */
export function threadChamfer(crestDiameter: Mm, rootDiameter: Mm, angle: Radian = chamferAngle): ThreadChamfer {
  if (crestDiameter === rootDiameter) throw new DomainError('rootDiameter', rootDiameter, 'another than the crest');
  if (!(angle > 0 && angle < Math.PI / 2)) throw new DomainError('angle', angle, 'over 0 to under π/2');
  const outside = crestDiameter > rootDiameter;
  const tenths = outside ? Math.floor(10 * (rootDiameter - past)) : Math.ceil(10 * (rootDiameter + past));
  const diameter = tenths / 10;
  return { diameter, length: Math.abs(crestDiameter - diameter) / (2 * Math.tan(angle)) };
}
