/**
 * What jaws do to thin work: they squeeze a ring into as many lobes as there are jaws. Turned or bored round in that state it springs
 * back out of round when it is let go.
 */
import { DomainError } from '../errors.ts';
import type { Mm, MPa, Newton } from '../units/quantities.ts';

/**
 * How far a ring is squeezed out of round by equal pushes spread evenly round it: inward at the jaws and outward between them, together.
 *
 *     θ = π/n;  I = b t³/12
 *     at the jaws  (W R³ / 4EI) ((θ + sin θ cos θ)/sin²θ − 2/θ);  between them  (W R³ / 4EI) (2/θ − 1/sin θ − θ cos θ/sin²θ)
 *
 * @param force  push W of one jaw [N]
 * @param radius  of the middle of the wall R [mm]
 * @param wall  thickness t [mm]
 * @param length  of the ring that carries the jaws b [mm]
 * @param youngsModulus  of the material E [MPa]
 * @param jaws  number of jaws n [-]
 * @returns difference of the radius between the place at a jaw and the place between two [mm]
 * @throws DomainError when a size is not above zero
 * @source roark-9.2
 * @valid thin rings, wall up to about a fifth of the radius; a thicker wall gives less; fewer than two jaws make no sense
 * @example squeezedOutOfRound(100, 10, 1, 12, 200000, 2) → 0.07135
 */
export function squeezedOutOfRound(
  force: Newton,
  radius: Mm,
  wall: Mm,
  length: Mm,
  youngsModulus: MPa,
  jaws: number,
): Mm {
  for (const [name, value] of Object.entries({ radius, wall, length, youngsModulus }))
    if (!(value > 0)) throw new DomainError(name, value, 'above 0');
  if (!(jaws >= 2)) throw new DomainError('jaws', jaws, 'two or more');
  const half = Math.PI / jaws;
  const [s, c] = [Math.sin(half), Math.cos(half)];
  const atJaw = (half + s * c) / s ** 2 - 2 / half;
  const between = 2 / half - 1 / s - (half * c) / s ** 2;
  const inertia = (length * wall ** 3) / 12;
  return ((force * radius ** 3) / (4 * youngsModulus * inertia)) * (atJaw + between);
}

/** Friction of smooth jaws on machined work, and with sheet between, as printed for smooth jaws on ground to machined steel. */
export const friction = 0.1;
/** Safety against slipping printed for an older chuck. */
export const safety = 2.4;

/**
 * Grip that all jaws together need so that the work does not turn in them.
 *
 *     F = F_c S/μ · d_cut/d_grip
 *
 * @param cutting  cutting force F_c [N]
 * @param cutDiameter  where it acts d_cut [mm]
 * @param gripDiameter  of the work in the jaws d_grip [mm]
 * @returns sum of the pushes of all jaws [N]
 * @throws DomainError when the work has no thickness
 * @source ROH safety S 2.4, friction μ 0.1 of smooth jaws on machined work
 * @valid at rest and at the speeds of a light lathe, at which the jaws lose little
 * @example gripNeeded(150, 30, 20) → 5400
 */
export function gripNeeded(cutting: Newton, cutDiameter: Mm, gripDiameter: Mm): Newton {
  if (!(gripDiameter > 0)) throw new DomainError('gripDiameter', gripDiameter, 'above 0 mm');
  return ((cutting * safety) / friction) * (cutDiameter / gripDiameter);
}
