/**
 * Mass of a stretch of round work as a Timoshenko beam element, with its turning inertia.
 */
import type { Mm, MPa } from '../units/quantities.ts';
import { type BeamSection, secondMoment, shearCoefficient } from './beam-element.ts';

/** The ten different numbers of an element's mass matrix, in tonnes, so that N/mm over tonne is 1/s². */
export interface ElementMass {
  /** Deflection with itself, and with that of the other end; t. */
  readonly near: number;
  readonly far: number;
  /** Deflection with the rotation of the same end, and of the other; t·mm. */
  readonly nearTurn: number;
  readonly farTurn: number;
  /** Rotation with itself, and with that of the other end; t·mm². */
  readonly turn: number;
  readonly otherTurn: number;
}

/**
 * Consistent mass of an element.
 *
 *     M = ρ A L/(1+Φ)² · [translation] + ρ I/(L (1+Φ)²) · [rotation],  Φ = 12 E I/(κ G A L²)
 *
 * @param section  the section the element lies in
 * @param length  of the element L [mm]
 * @param material  modulus E [MPa], Poisson's ratio ν and density ρ [kg/mm³]
 * @returns the different numbers of the matrix
 * @source przemieniecki-ch11
 * @valid a section constant over the element
 * @example elementMass({ from: 0, to: 100, outerDiameter: 10 }, 100, { youngsModulus: 200000, poissonRatio: 0.3, density: 7.85e-6 }).near → 2.29e-5
 */
export function elementMass(
  section: BeamSection,
  length: Mm,
  material: { readonly youngsModulus: MPa; readonly poissonRatio: number; readonly density: number },
): ElementMass {
  const { youngsModulus, poissonRatio, density } = material;
  const bore = section.innerDiameter ?? 0;
  const inertia = secondMoment(section.outerDiameter, bore);
  const area = (Math.PI * (section.outerDiameter ** 2 - bore ** 2)) / 4;
  const shear =
    (shearCoefficient(bore / section.outerDiameter, poissonRatio) * youngsModulus * area) / (2 * (1 + poissonRatio));
  const p = (12 * youngsModulus * inertia) / (shear * length ** 2);
  const tonnes = density / 1000;
  const m = (tonnes * area * length) / (1 + p) ** 2;
  const j = (tonnes * inertia) / (length * (1 + p) ** 2);
  const l = length;
  return {
    near: m * (13 / 35 + 0.7 * p + p ** 2 / 3) + 1.2 * j,
    far: m * (9 / 70 + 0.3 * p + p ** 2 / 6) - 1.2 * j,
    nearTurn: m * l * (11 / 210 + (11 * p) / 120 + p ** 2 / 24) + j * l * (0.1 - p / 2),
    farTurn: -m * l * (13 / 420 + (3 * p) / 40 + p ** 2 / 24) + j * l * (0.1 - p / 2),
    turn: m * l ** 2 * (1 / 105 + p / 60 + p ** 2 / 120) + j * l ** 2 * (2 / 15 + p / 6 + p ** 2 / 3),
    otherTurn: -m * l ** 2 * (1 / 140 + p / 60 + p ** 2 / 120) + j * l ** 2 * (-1 / 30 - p / 6 + p ** 2 / 6),
  };
}
