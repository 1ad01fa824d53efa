/** Cones: from two diameters and the distance between them to the angle and to a standard taper. */
import { DomainError } from '../errors.ts';
import type { Mm, Radian } from '../units/quantities.ts';
import type { TaperMatch } from './recover-result.ts';

/** Standard tapers: diameter taken off per millimetre of length. Morse 3 was read; the rest is from memory. [ISO296] [mem-tapers] [GROFF] */
export const standardTapers: readonly { readonly name: string; readonly ratio: number; readonly weight: number }[] = [
  { name: 'Morse 0', ratio: 0.6246 / 12, weight: 1 },
  { name: 'Morse 1', ratio: 0.59858 / 12, weight: 1 },
  { name: 'Morse 2', ratio: 0.59941 / 12, weight: 1.5 },
  { name: 'Morse 3', ratio: 0.60235 / 12, weight: 1.5 },
  { name: 'Morse 4', ratio: 0.62326 / 12, weight: 1 },
  { name: 'Morse 5', ratio: 0.63151 / 12, weight: 0.7 },
  { name: 'Morse 6', ratio: 0.62565 / 12, weight: 0.4 },
  { name: 'metric 1:20', ratio: 1 / 20, weight: 1 },
  { name: 'Jarno', ratio: 0.6 / 12, weight: 0.5 },
  { name: 'Brown & Sharpe, 1/2 in a foot', ratio: 0.5 / 12, weight: 0.8 },
  { name: 'taper pin 1:50', ratio: 1 / 50, weight: 2 },
  { name: 'taper pin 1/4 in a foot (1:48)', ratio: 1 / 48, weight: 1.5 },
  { name: 'taper key 1:100', ratio: 1 / 100, weight: 1 },
  { name: '1:10', ratio: 1 / 10, weight: 1.5 },
  { name: '1:5', ratio: 1 / 5, weight: 1 },
  { name: '1:8', ratio: 1 / 8, weight: 1 },
  { name: '1:12', ratio: 1 / 12, weight: 0.8 },
  { name: '1:16, taper pipe thread and cock', ratio: 1 / 16, weight: 1 },
  { name: '1:6, plug cock', ratio: 1 / 6, weight: 0.8 },
  { name: '7/24, steep spindle taper', ratio: 7 / 24, weight: 0.5 },
  { name: '30° included', ratio: 2 * Math.tan(Math.PI / 12), weight: 1 },
  { name: '45° included', ratio: 2 * Math.tan(Math.PI / 8), weight: 0.8 },
  { name: '60° included', ratio: 2 * Math.tan(Math.PI / 6), weight: 2 },
  { name: '90° included', ratio: 2, weight: 2 },
  { name: '120° included', ratio: 2 * Math.tan(Math.PI / 3), weight: 0.6 },
];

/** The one taper whose figure was read in print. */
const readInPrint = new Set(['Morse 3']);
/** A taper of its own: this density over the logarithm of the ratio stands against the list. `common practice` */
const ownDensity = 0.3;

/**
 * Half the angle of a cone between two diameters.
 *
 *     tan φ = |D2 − D1| / (2 Δz)
 *
 * @param first  diameter at one end [mm]
 * @param second  diameter at the other [mm]
 * @param distance  distance between the two along the axis [mm]
 * @returns half angle [rad]
 * @throws DomainError when the distance is not above 0
 * @source metrology-methods §7
 * @valid a right circular cone
 * @example taperHalfAngle(30, 40, 28.3564) → 0.17453
 */
export function taperHalfAngle(first: Mm, second: Mm, distance: Mm): Radian {
  if (!(distance > 0)) throw new DomainError('distance', distance, 'above 0 mm');
  return Math.atan(Math.abs(second - first) / (2 * distance));
}

/**
 * Standard uncertainty of that half angle.
 *
 *     u(φ) = cos² φ · √(u²(D1) + u²(D2) + (2 tan φ · u(Δz))²) / (2 Δz)
 *
 * @param halfAngle  half angle [rad]
 * @param distance  distance between the two diameters [mm]
 * @param ofDiameters  combined standard uncertainty of the two diameters [mm]
 * @param ofDistance  standard uncertainty of the distance [mm]
 * @returns standard uncertainty [rad]
 * @source GUM clause 5.1.2
 * @valid small uncertainties beside the distance
 * @example taperUncertainty(0.05, 20, 0.01, 0.02) → 0.000254
 */
export function taperUncertainty(halfAngle: Radian, distance: Mm, ofDiameters: Mm, ofDistance: Mm): Radian {
  return (Math.cos(halfAngle) ** 2 * Math.hypot(ofDiameters, 2 * Math.tan(halfAngle) * ofDistance)) / (2 * distance);
}

/**
 * Half angle of an external cone, and its diameter on the plate it stands on, from readings over two equal rollers, on the plate and on slips.
 *
 *     tan φ = (M2 − M1)/(2H);  D = M1 − 2r (1 + 1/cos φ + tan φ)
 *
 * @param onPlate  reading over the rollers on the plate [mm]
 * @param onSlips  reading over the rollers on slips [mm]
 * @param height  height of the slips [mm]
 * @param roller  diameter of the rollers [mm]
 * @returns half angle and diameter at the plate [rad, mm]
 * @throws DomainError when height or roller are not above 0
 * @source metrology-methods §7
 * @valid the cone grows away from the plate; for one that narrows the tangent is negative and the formula still holds
 * @example taperOverRollers(56.30104, 65.11739, 25, 12) → { halfAngle: 0.1745329, diameter: 30 }
 */
export function taperOverRollers(
  onPlate: Mm,
  onSlips: Mm,
  height: Mm,
  roller: Mm,
): { halfAngle: Radian; diameter: Mm } {
  if (!(height > 0)) throw new DomainError('height', height, 'above 0 mm');
  if (!(roller > 0)) throw new DomainError('roller', roller, 'above 0 mm');
  const halfAngle = Math.atan((onSlips - onPlate) / (2 * height));
  return { halfAngle, diameter: onPlate - roller * (1 + 1 / Math.cos(halfAngle) + Math.tan(halfAngle)) };
}

/**
 * Half angle and mouth of an internal cone from the depths of two balls.
 *
 *     sin φ = (R2 − R1)/((h1 + R1) − (h2 + R2));  D = 2 (h2 + R2) tan φ + 2 R2 / cos φ
 *
 * @param small  radius of the small ball [mm]
 * @param smallDepth  from the face down to its top [mm]
 * @param large  radius of the large ball [mm]
 * @param largeDepth  from the face down to its top, negative when it stands proud [mm]
 * @returns half angle and diameter at the face [rad, mm]
 * @throws DomainError when the balls cannot lie so
 * @source metrology-methods §7
 * @valid both balls touch the cone all round
 * @example taperByBalls(5, 95.68148, 10, 71.36297) → { halfAngle: 0.261799, diameter: 64.308 }
 */
export function taperByBalls(
  small: Mm,
  smallDepth: Mm,
  large: Mm,
  largeDepth: Mm,
): { halfAngle: Radian; diameter: Mm } {
  const centres = smallDepth + small - (largeDepth + large);
  const sine = (large - small) / centres;
  if (!(large > small && sine > 0 && sine < 1))
    throw new DomainError(
      'balls',
      centres,
      `the small ball more than ${(large - small).toFixed(3)} mm below the large one`,
    );
  const halfAngle = Math.asin(sine);
  return { halfAngle, diameter: 2 * (largeDepth + large) * Math.tan(halfAngle) + (2 * large) / Math.cos(halfAngle) };
}

/** Standard tapers that a measured half angle may be, the likeliest first; what is left of the probability is a taper of its own. */
export function matchTapers(halfAngle: Radian, uncertainty: Radian): TaperMatch[] {
  const u = Math.max(uncertainty, 1e-7);
  const weighed = standardTapers.map((t) => {
    const expected = Math.atan(t.ratio / 2);
    const z = (halfAngle - expected) / u;
    return { t, expected, w: (t.weight / 25) * (Math.exp(-(z * z) / 2) / u) };
  });
  const own = ownDensity / Math.max(Math.tan(halfAngle), 1e-4);
  const total = weighed.reduce((sum, { w }) => sum + w, own * Math.sqrt(2 * Math.PI));
  return weighed
    .map(({ t, expected, w }) => ({
      name: t.name,
      ratio: t.ratio,
      halfAngle: expected,
      probability: w / total,
      standing: readInPrint.has(t.name) ? ('read' as const) : ('from memory' as const),
    }))
    .filter((m) => m.probability > 0.005)
    .toSorted((a, b) => b.probability - a.probability)
    .slice(0, 6);
}
