/**
 * What a pressed fit does: the pressure between a plug and the ring round it, the moment it holds, and how far the ring grows.
 */
import { DomainError } from '../errors.ts';
import type { Mm, MPa } from '../units/quantities.ts';

/** A ring on a solid plug of another material. */
export interface PressedRing {
  /** Of the joint d. */
  readonly bore: Mm;
  /** Outside of the ring D. */
  readonly outer: Mm;
  /** By how much the plug is thicker than the bore, on the diameter, δ. */
  readonly interference: Mm;
  readonly ring: { readonly youngsModulus: MPa; readonly poisson: number };
  readonly plug: { readonly youngsModulus: MPa; readonly poisson: number };
}

/**
 * Pressure between a ring and the solid plug pressed into it.
 *
 *     p = (δ/d) / (C_r/E_r + C_p/E_p);  C_r = (D² + d²)/(D² − d²) + ν_r;  C_p = 1 − ν_p
 *
 * @param fit  the ring and its plug; sizes [mm], moduli [MPa]
 * @returns pressure over the joint [MPa]
 * @throws DomainError when the ring has no wall
 * @source NORTON-10-5
 * @valid elastic, ring and plug equally long
 * @example pressedPressure({ bore: 19.8374, outer: 76.2, interference: 0.0381, ring: { youngsModulus: 96527, poisson: 0.28 }, plug: { youngsModulus: 206843, poisson: 0.28 } }) → 105.25
 */
export function pressedPressure({ bore, outer, interference, ring, plug }: PressedRing): MPa {
  if (!(bore > 0 && outer > bore)) throw new DomainError('outer', outer, `more than the bore, ${bore} mm`);
  const ringGives = ((outer ** 2 + bore ** 2) / (outer ** 2 - bore ** 2) + ring.poisson) / ring.youngsModulus;
  const plugGives = (1 - plug.poisson) / plug.youngsModulus;
  return interference / bore / (ringGives + plugGives);
}

/**
 * Moment at which a pressed fit slips.
 *
 *     T = π d² L p μ / 2
 *
 * @param pressure  over the joint p [MPa]
 * @param bore  diameter of the joint d [mm]
 * @param length  of the joint L [mm]
 * @param friction  μ [-]
 * @returns moment T [N·mm]
 * @source roymech-cylinders
 * @valid even pressure all along
 * @example slipMoment(97.65, 8, 15, 0.12) → 17670
 */
export function slipMoment(pressure: MPa, bore: Mm, length: Mm, friction: number): number {
  return (Math.PI * bore ** 2 * length * pressure * friction) / 2;
}

/**
 * How much thicker a ring is outside while it sits on its plug.
 *
 *     ΔD = 2 p d² D / (E (D² − d²))
 *
 * @param pressure  in the bore p [MPa]
 * @param bore  d [mm]
 * @param outer  diameter outside D [mm]
 * @param youngsModulus  of the ring E [MPa]
 * @returns growth of the outer diameter [mm]
 * @throws DomainError when the ring has no wall
 * @source roymech-cylinders
 * @valid elastic, open ends
 * @example outsideGrowth(10, 20, 30, 200000) → 0.0024
 */
export function outsideGrowth(pressure: MPa, bore: Mm, outer: Mm, youngsModulus: MPa): Mm {
  if (!(bore > 0 && outer > bore)) throw new DomainError('outer', outer, `more than the bore, ${bore} mm`);
  return (2 * pressure * bore ** 2 * outer) / (youngsModulus * (outer ** 2 - bore ** 2));
}
