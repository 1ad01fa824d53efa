/**
 * Geometry of a round ring in a rectangular groove: squeeze, stretch, what stretch takes off the section, and fill.
 */
import { DomainError } from '../../errors.ts';
import type { Mm } from '../../units/quantities.ts';

/**
 * Squeeze of the section, as a share of it.
 *
 *     s = 100 (W − L) / W
 *
 * @param section  free cross-section W [mm]
 * @param depth  gland depth L, groove bottom to mating face, clearance included [mm]
 * @returns squeeze, negative when the ring does not touch [%]
 * @throws DomainError when section or depth is not above zero
 * @source seals-marco
 * @valid any depth above 0
 * @example squeeze(3, 2.3) → 23.33
 */
export function squeeze(section: Mm, depth: Mm): number {
  positive('section', section);
  positive('depth', depth);
  return (100 * (section - depth)) / section;
}

/**
 * Stretch of a ring on the diameter it sits on.
 *
 *     x = 100 (D − ID) / ID
 *
 * @param insideDiameter  free inside diameter ID [mm]
 * @param seat  diameter the ring sits on, D [mm]
 * @returns stretch, negative when the ring is loose [%]
 * @throws DomainError when a diameter is not above zero
 * @source parker-stretch
 * @valid any diameters above 0
 * @example stretch(32.92, 33.769) → 2.579
 */
export function stretch(insideDiameter: Mm, seat: Mm): number {
  positive('insideDiameter', insideDiameter);
  positive('seat', seat);
  return (100 * (seat - insideDiameter)) / insideDiameter;
}

/**
 * Cross-section of a ring after it is stretched over its seat: its volume stays and it stays round.
 *
 *     (ID + W) W² = (D + W₁) W₁²
 *
 * A ring that is loose on its seat keeps its section.
 *
 * @param insideDiameter  free inside diameter ID [mm]
 * @param section  free cross-section W [mm]
 * @param seat  diameter the ring sits on, D [mm]
 * @returns cross-section after stretch W₁ [mm]
 * @throws DomainError when a measure is not above zero
 * @source seals-physics
 * @valid rubber keeps its volume; the section stays round
 * @example sectionAfterStretch(32.92, 3.53, 33.769) → 3.4914
 */
export function sectionAfterStretch(insideDiameter: Mm, section: Mm, seat: Mm): Mm {
  positive('insideDiameter', insideDiameter);
  positive('section', section);
  positive('seat', seat);
  if (seat <= insideDiameter) return section;
  const volume = (insideDiameter + section) * section ** 2;
  let stretched = section;
  // Newton from above: the cubic is convex there, so each step falls towards the root and never past it.
  for (let i = 0; i < 50; i++) {
    const excess = (seat + stretched) * stretched ** 2 - volume;
    const step = excess / (2 * seat * stretched + 3 * stretched ** 2);
    stretched -= step;
    if (Math.abs(step) < 1e-14 * section) break;
  }
  return stretched;
}

/**
 * Loss of cross-section by stretch as a ring maker's polynomial has it: 1.5 to 2 times what constant volume gives up to 4 %.
 *
 *     R = −0.005 + 1.19 X − 0.19 X² − 0.001 X³ + 0.008 X⁴   (X up to 3 %)
 *     R = 0.56 + 0.59 X − 0.0046 X²                         (X over 3 %)
 *
 * @param stretchPercent  stretch X [%]
 * @returns loss of cross-section R, none when the ring is not stretched [%]
 * @throws DomainError above 25 % stretch
 * @source mem-parker-stretch
 * @valid 0 to 25 % stretch
 * @example makerSectionLoss(2.58) → 2.1378
 */
export function makerSectionLoss(stretchPercent: number): number {
  const x = stretchPercent;
  if (!(x <= 25)) throw new DomainError('stretchPercent', x, 'at most 25 %, where the maker stops');
  if (x <= 0) return 0;
  const loss =
    x <= 3 ? -0.005 + 1.19 * x - 0.19 * x ** 2 - 0.001 * x ** 3 + 0.008 * x ** 4 : 0.56 + 0.59 * x - 0.0046 * x ** 2;
  return Math.max(0, loss);
}

/**
 * Fill of the groove by area, the measure that the published limits use.
 *
 *     fill = 100 (π/4) W² / (B L)
 *
 * @param section  cross-section W [mm]
 * @param width  groove width B [mm]
 * @param depth  gland depth L [mm]
 * @returns fill [%]
 * @throws DomainError when a measure is not above zero
 * @source scribd-ring09
 * @valid rectangular groove, corners not rounded
 * @example fillByArea(3.53, 4.925, 3.12525) → 63.58
 */
export function fillByArea(section: Mm, width: Mm, depth: Mm): number {
  positive('section', section);
  positive('width', width);
  positive('depth', depth);
  return (100 * (Math.PI / 4) * section ** 2) / (width * depth);
}

/**
 * Fill of the groove by volume: a torus in a rectangular annulus.
 *
 *     fill = 100 (π²/4) W² (ID + W) / ((π/4) (D₂² − D₁²) B)
 *
 * @param insideDiameter  free inside diameter of the ring ID [mm]
 * @param section  free cross-section W [mm]
 * @param inner  inner diameter of the gland D₁: groove bottom of a piston, or the rod [mm]
 * @param outer  outer diameter of the gland D₂: the bore, or the groove bottom of a housing [mm]
 * @param width  groove width B [mm]
 * @returns fill [%]
 * @throws DomainError when the gland has no room or a measure is not above zero
 * @source seals-physics
 * @valid rectangular groove, corners not rounded
 * @example fillByVolume(32.92, 3.53, 33.769, 40.0195, 4.925) → 62.82
 */
export function fillByVolume(insideDiameter: Mm, section: Mm, inner: Mm, outer: Mm, width: Mm): number {
  positive('insideDiameter', insideDiameter);
  positive('section', section);
  positive('width', width);
  if (!(outer > inner)) throw new DomainError('outer', outer, `more than the inner diameter, ${inner} mm`);
  const ring = (Math.PI ** 2 / 4) * section ** 2 * (insideDiameter + section);
  return (100 * ring) / ((Math.PI / 4) * (outer ** 2 - inner ** 2) * width);
}

function positive(parameter: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) throw new DomainError(parameter, value, 'more than 0');
}
