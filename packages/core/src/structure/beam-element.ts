/**
 * A stretch of round work as a Timoshenko beam element: exact for forces and moments at its ends.
 */
import type { Mm, MPa } from '../units/quantities.ts';

/** A stretch of round work, bored or solid. */
export interface BeamSection {
  /** Distances from the jaw faces. */
  readonly from: Mm;
  readonly to: Mm;
  readonly outerDiameter: Mm;
  /** 0 or left out for solid work. */
  readonly innerDiameter?: Mm | undefined;
}

/** The four numbers of an element's stiffness matrix; rotations in radians. */
export interface ElementStiffness {
  /** Force at an end for a deflection there, ±; N/mm. */
  readonly deflect: number;
  /** Moment at either end for a deflection, ±; N. */
  readonly couple: number;
  /** Moment at an end for a rotation of that end; N·mm. */
  readonly near: number;
  /** Moment at an end for a rotation of the other; N·mm. */
  readonly far: number;
}

/**
 * Second moment of area of a round section.
 *
 *     I = π (D⁴ − d⁴) / 64
 *
 * @param outer  outside diameter D [mm]
 * @param inner  bore d, 0 when solid [mm]
 * @returns second moment of area [mm⁴]
 * @source roark-8.1 appendix A
 * @valid 0 ≤ d < D
 * @example secondMoment(10, 0) → 490.874
 */
export function secondMoment(outer: Mm, inner: Mm): number {
  return (Math.PI * (outer ** 4 - inner ** 4)) / 64;
}

/**
 * Shear coefficient of a round section: the share of the area that carries shear evenly.
 *
 *     κ = 6 (1 + ν)(1 + m²)² / ((7 + 6ν)(1 + m²)² + (20 + 12ν) m²),  m = d / D
 *
 * @param boreRatio  m, bore over outside diameter [-]
 * @param poissonRatio  ν [-]
 * @returns κ [-]
 * @source cowper-1966 table 1, hollow circle
 * @valid 0 ≤ m < 1
 * @example shearCoefficient(0, 0.3) → 0.8864
 */
export function shearCoefficient(boreRatio: number, poissonRatio: number): number {
  const m2 = boreRatio ** 2;
  const both = (1 + m2) ** 2;
  return (6 * (1 + poissonRatio) * both) / ((7 + 6 * poissonRatio) * both + (20 + 12 * poissonRatio) * m2);
}

/**
 * Stiffness of an element.
 *
 *     Φ = 12 E I / (κ G A L²),   k = E I / ((1 + Φ) L³)
 *     K = k · [12, 6L, −12, 6L;  6L, (4+Φ)L², −6L, (2−Φ)L²;  −12, −6L, 12, −6L;  6L, (2−Φ)L², −6L, (4+Φ)L²]
 *
 * @param section  the section the element lies in
 * @param length  of the element L [mm]
 * @param youngsModulus  E [MPa]
 * @param poissonRatio  ν [-]
 * @returns the four different numbers of the matrix, deflections in mm and rotations in radians
 * @source przemieniecki-ch5
 * @valid a section constant over the element
 * @example elementStiffness({ from: 0, to: 100, outerDiameter: 1 }, 100, 200000, 0).near → 392.65
 */
export function elementStiffness(
  section: BeamSection,
  length: Mm,
  youngsModulus: MPa,
  poissonRatio: number,
): ElementStiffness {
  const bore = section.innerDiameter ?? 0;
  const bending = youngsModulus * secondMoment(section.outerDiameter, bore);
  const shearModulus = youngsModulus / (2 * (1 + poissonRatio));
  const area = (Math.PI * (section.outerDiameter ** 2 - bore ** 2)) / 4;
  const shear = shearCoefficient(bore / section.outerDiameter, poissonRatio) * shearModulus * area;
  const phi = (12 * bending) / (shear * length ** 2);
  const k = bending / ((1 + phi) * length ** 3);
  return {
    deflect: 12 * k,
    couple: 6 * length * k,
    near: (4 + phi) * length ** 2 * k,
    far: (2 - phi) * length ** 2 * k,
  };
}
