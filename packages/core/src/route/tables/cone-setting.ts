/**
 * A cone turned with the top slide set over: the angle, the strokes, and the test over two diameters.
 */
import { DomainError } from '../../errors.ts';
import type { Mm, Radian } from '../../units/quantities.ts';

export interface Cone {
  readonly startDiameter: Mm;
  readonly endDiameter: Mm;
  /** Along the axis. */
  readonly length: Mm;
}

/**
 * Angle between the side of a cone and its axis: what the top slide is set to.
 *
 *     β = arctan((D − d) / 2l)
 *
 * @param cone  diameters at its ends and its length along the axis
 * @returns the angle, never negative [rad]
 * @throws DomainError when the length is not above zero
 * @source geometry
 * @valid l > 0
 * @example setOverAngle({ startDiameter: 20, endDiameter: 14, length: 18 }) → 0.16515
 */
export function setOverAngle(cone: Cone): Radian {
  if (!(cone.length > 0)) throw new DomainError('length', cone.length, 'above 0 mm');
  return Math.atan(Math.abs(cone.startDiameter - cone.endDiameter) / (2 * cone.length));
}

/**
 * Travel of the top slide along the side of a cone.
 *
 *     s = l / cos β
 *
 * @param cone  the cone
 * @returns travel [mm]
 * @source geometry
 * @valid l > 0
 * @example sideLength({ startDiameter: 20, endDiameter: 14, length: 18 }) → 18.248
 */
export function sideLength(cone: Cone): Mm {
  return cone.length / Math.cos(setOverAngle(cone));
}

/**
 * How far off the angle may be for a cone to stay within a diameter tolerance over its length.
 *
 *     Δβ ≈ t cos²β / 2l
 *
 * @param cone  the cone
 * @param tolerance  on the difference of its end diameters [mm]
 * @returns allowed error of the angle, plus or minus [rad]
 * @source geometry derivative of the set-over angle
 * @valid small tolerances
 * @example angleTolerance({ startDiameter: 20, endDiameter: 14, length: 18 }, 0.05) → 0.00135
 */
export function angleTolerance(cone: Cone, tolerance: Mm): Radian {
  return (tolerance * Math.cos(setOverAngle(cone)) ** 2) / (2 * cone.length);
}

/** Degrees and minutes, to the nearest minute. */
export function degreesMinutes(angle: Radian): string {
  const minutes = Math.round((angle * 180 * 60) / Math.PI);
  return `${Math.floor(minutes / 60)}° ${String(minutes % 60).padStart(2, '0')}′`;
}
