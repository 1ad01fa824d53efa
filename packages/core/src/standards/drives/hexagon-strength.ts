/**
 * What a hexagon key, socket or other hand drive carries.
 */
import { DomainError } from '../../errors.ts';
import type { Mm, MPa, NewtonMetre } from '../../units/quantities.ts';

/**
 * Greatest torsion stress in a hexagonal bar.
 *
 *     τ = T / (0.1877 s³)
 *
 * @param torque  torque T [N·m]
 * @param acrossFlats  width across flats s [mm]
 * @returns greatest shear stress, at the middle of the flats [MPa]
 * @throws DomainError when the width is not above zero
 * @source hex-CALC
 * @source DUBBEL
 * @valid elastic; bar of even section
 * @example hexagonTorsionStress(30, 4.95) → 1317.8
 */
export function hexagonTorsionStress(torque: NewtonMetre, acrossFlats: Mm): MPa {
  positive('acrossFlats', acrossFlats);
  return (1000 * torque) / (0.1877 * acrossFlats ** 3);
}

/**
 * Torque at which a hexagon key lets go, by a key maker's rule.
 *
 *     T = 0.2 Rm s³
 *
 * @param tensileStrength  tensile strength of the key Rm [MPa]
 * @param acrossFlats  width across flats s [mm]
 * @returns torque [N·m]
 * @throws DomainError when a value is not above zero
 * @source BONDHUS
 * @valid hardened keys; the maker's table runs from 37 to 61 HRC and 2 to 8 mm
 * @example hexagonKeyTorque(1800, 5) → 45
 */
export function hexagonKeyTorque(tensileStrength: MPa, acrossFlats: Mm): NewtonMetre {
  positive('tensileStrength', tensileStrength);
  positive('acrossFlats', acrossFlats);
  return (0.2 * tensileStrength * acrossFlats ** 3) / 1000;
}

/**
 * Torque that the flanks of a hexagon socket or insert carry: pressure rises in a triangle over half of each flank.
 *
 *     T = p t s² / 6
 *
 * @param acrossFlats  width across flats s [mm]
 * @param depth  engaged depth t [mm]
 * @param pressure  peak pressure on the flanks p; at most 1 to 1.5 × the proof stress of the softer part for one proof, half of it in use (common practice) [MPa]
 * @returns torque [N·m]
 * @throws DomainError when a value is not above zero
 * @source hex-CALC
 * @source common-practice
 * @valid key fills the socket; no clearance
 * @example socketTorqueByFlanks(6, 6, 600) → 21.6
 */
export function socketTorqueByFlanks(acrossFlats: Mm, depth: Mm, pressure: MPa): NewtonMetre {
  positive('acrossFlats', acrossFlats);
  positive('depth', depth);
  positive('pressure', pressure);
  return (pressure * depth * acrossFlats ** 2) / 6 / 1000;
}

/**
 * Torque of a blade in a slot, or of a two-flat key: pressure rises in a triangle over half the length on each side.
 *
 *     T = p t L² / 6
 *
 * @param length  length of blade or flat L [mm]
 * @param depth  engaged depth or thickness t [mm]
 * @param pressure  peak pressure p [MPa]
 * @returns torque [N·m]
 * @throws DomainError when a value is not above zero
 * @source hex-CALC
 * @valid blade fills the slot
 * @example bladeTorque(8, 1.6, 300) → 5.12
 */
export function bladeTorque(length: Mm, depth: Mm, pressure: MPa): NewtonMetre {
  positive('length', length);
  positive('depth', depth);
  positive('pressure', pressure);
  return (pressure * depth * length ** 2) / 6 / 1000;
}

/**
 * Torque that two pins of a pin spanner carry, by bearing in their holes or by shear, whichever is less.
 *
 *     T = D d t p;  T = D τ π d² / 4
 *
 * @param circle  circle the pins stand on D [mm]
 * @param pin  pin diameter d [mm]
 * @param depth  engaged depth t [mm]
 * @param pressure  bearing pressure allowed p [MPa]
 * @param shear  shear stress allowed in the pins τ [MPa]
 * @returns torque [N·m]
 * @throws DomainError when a value is not above zero
 * @source hex-CALC
 * @valid two pins sharing evenly, no bending of the pins
 * @example pinSpannerTorque(20, 3, 4, 300, 200) → 28.27
 */
export function pinSpannerTorque(circle: Mm, pin: Mm, depth: Mm, pressure: MPa, shear: MPa): NewtonMetre {
  for (const [name, value] of Object.entries({ circle, pin, depth, pressure, shear })) positive(name, value);
  const bearing = circle * pin * depth * pressure;
  const shearing = circle * shear * (Math.PI / 4) * pin ** 2;
  return Math.min(bearing, shearing) / 1000;
}

function positive(parameter: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) throw new DomainError(parameter, value, 'more than 0');
}
