/** Sizes that no gauge touches directly: what a reading over balls, rollers or feet means. */
import { DomainError } from '../errors.ts';
import type { Mm, Radian } from '../units/quantities.ts';

function above(name: string, value: number): void {
  if (!(value > 0)) throw new DomainError(name, value, 'above 0 mm');
}

/**
 * Radius of a dome or hollow from the height of a cap and the radius of its foot.
 *
 *     R = a²/(2h) + h/2;  with feet that end in balls of radius b: R − b for a dome, R + b for a hollow
 *
 * @param foot  radius of the circle on which the cap, or the gauge, stands [mm]
 * @param height  height of the cap above it [mm]
 * @param ballFoot  radius of ball feet: above 0 on a dome, below 0 in a hollow, 0 for a sharp edge [mm]
 * @returns radius of the sphere [mm]
 * @throws DomainError when foot or height is not above 0
 * @source metrology-methods §7
 * @valid any cap of a sphere up to the half
 * @example capRadius(20, 4.174243) → 50
 */
export function capRadius(foot: Mm, height: Mm, ballFoot: Mm = 0): Mm {
  above('foot', foot);
  above('height', height);
  return (foot * foot) / (2 * height) + height / 2 - ballFoot;
}

/**
 * Standard uncertainty of that radius.
 *
 *     u²(R) = ((a/h) u(a))² + ((½ − a²/(2h²)) u(h))²
 *
 * @param foot  radius of the foot [mm]
 * @param height  height of the cap [mm]
 * @param ofFoot  standard uncertainty of the foot [mm]
 * @param ofHeight  standard uncertainty of the height [mm]
 * @returns standard uncertainty of the radius [mm]
 * @throws DomainError when foot or height is not above 0
 * @source GUM clause 5.1.2
 * @valid small uncertainties beside the height
 * @example capRadiusUncertainty(20, 4.174243, 0.01, 0.01) → 0.11978
 */
export function capRadiusUncertainty(foot: Mm, height: Mm, ofFoot: Mm, ofHeight: Mm): Mm {
  above('foot', foot);
  above('height', height);
  return Math.hypot((foot / height) * ofFoot, (0.5 - foot ** 2 / (2 * height ** 2)) * ofHeight);
}

/**
 * Radius of the circle through three feet that stand equally far from each other.
 *
 *     a = L / √3
 *
 * @param apart  distance between two feet [mm]
 * @returns radius of their circle [mm]
 * @throws DomainError when the distance is not above 0
 * @source geometry
 * @valid three feet in an equilateral triangle
 * @example footCircle(50) → 28.8675
 */
export function footCircle(apart: Mm): Mm {
  above('apart', apart);
  return apart / Math.sqrt(3);
}

/**
 * Radius of an arc that stands on a plate between two equal rollers.
 *
 *     R = (W − d)² / (8 d)
 *
 * @param overRollers  over the two rollers, outside to outside [mm]
 * @param roller  diameter of a roller [mm]
 * @returns radius [mm]
 * @throws DomainError when the rollers would touch or are not above 0
 * @source metrology-methods §7
 * @valid part and rollers rest on one plate and touch
 * @example radiusBetweenRollers(77.72671, 12) → 45
 */
export function radiusBetweenRollers(overRollers: Mm, roller: Mm): Mm {
  above('roller', roller);
  if (!(overRollers > 2 * roller))
    throw new DomainError('overRollers', overRollers, `more than two rollers, ${2 * roller} mm`);
  return (overRollers - roller) ** 2 / (8 * roller);
}

/**
 * Bore from the height of two equal balls that lie in it, one on the other.
 *
 *     D = 2r + √((2r)² − (H − 2r)²)
 *
 * @param ball  diameter of a ball [mm]
 * @param height  from the bottom to the top of the upper ball [mm]
 * @returns bore [mm]
 * @throws DomainError when the height is not between one ball and two
 * @source metrology-methods §7
 * @valid a flat bottom; balls smaller than the bore and larger than half of it
 * @example boreByTwoBalls(24, 41.88854) → 40
 */
export function boreByTwoBalls(ball: Mm, height: Mm): Mm {
  above('ball', ball);
  if (!(height > ball && height < 2 * ball))
    throw new DomainError('height', height, `more than ${ball} and less than ${2 * ball} mm`);
  return ball + Math.sqrt(ball ** 2 - (height - ball) ** 2);
}

/**
 * Bore from what a calliper's inside jaws show: their flats stand on chords and read small.
 *
 *     D = √(reading² + w²)
 *
 * @param reading  what the calliper shows [mm]
 * @param flats  width of both jaws' flats together [mm]
 * @returns bore [mm]
 * @throws DomainError when the reading is not above 0 or the width is below 0
 * @source metrology-methods §4
 * @valid parallel flats of equal width
 * @example boreByJaws(5.8787754, 1.2) → 6.000000
 */
export function boreByJaws(reading: Mm, flats: Mm): Mm {
  above('reading', reading);
  if (!(flats >= 0)) throw new DomainError('flats', flats, '0 mm or more');
  return Math.hypot(reading, flats);
}

/**
 * Width of a vee groove at its face, from how far a roller stands proud.
 *
 *     w = 2 tan(α/2) (d/2 · (1 + 1/sin(α/2)) − p)
 *
 * @param angle  angle between the flanks [rad]
 * @param roller  diameter of the roller [mm]
 * @param proud  top of the roller above the face [mm]
 * @returns width at the face [mm]
 * @throws DomainError when the roller is not above 0
 * @source metrology-methods §7
 * @valid the roller touches both flanks
 * @example veeWidth(1.5707963, 6, 2.24264) → 10
 */
export function veeWidth(angle: Radian, roller: Mm, proud: Mm): Mm {
  above('roller', roller);
  return 2 * Math.tan(angle / 2) * ((roller / 2) * (1 + 1 / Math.sin(angle / 2)) - proud);
}

/**
 * What a bore gauge held askew reads too much.
 *
 *     error = D (1/cos t − 1)
 *
 * @param bore  true bore [mm]
 * @param tilt  angle it is held off square, along the bore [rad]
 * @returns error [mm]
 * @source metrology-methods §7
 * @valid tilt below a right angle
 * @example tiltError(60, 0.00872665) → 0.0022847
 */
export function tiltError(bore: Mm, tilt: Radian): Mm {
  return bore * (1 / Math.cos(tilt) - 1);
}

/**
 * True movement behind a lever indicator whose stylus stands at an angle to the surface.
 *
 *     true = shown · cos a
 *
 * @param shown  what the dial shows [mm]
 * @param angle  between the stylus and the surface [rad]
 * @returns true movement [mm]
 * @source metrology-methods §4
 * @valid a stylus with a ball end
 * @example leverTrue(0.1, 0.523599) → 0.0866025
 */
export function leverTrue(shown: Mm, angle: Radian): Mm {
  return shown * Math.cos(angle);
}
