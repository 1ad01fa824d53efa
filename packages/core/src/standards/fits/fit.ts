/**
 * What hole and shaft do to each other: how much play or interference is possible, and which kind of fit that is.
 */
import { DomainError, InputError } from '../../errors.ts';
import { type LengthUnit, readLength } from '../../units/length.ts';
import type { Mm } from '../../units/quantities.ts';
import { limitDeviations, nearestClasses, readToleranceClass } from './limit-deviations.ts';
import { withoutNoise } from './noise.ts';
import { largestSize } from './tolerance-grades.ts';

/** Largest and smallest permitted diameter. */
export interface Limits {
  readonly max: Mm;
  readonly min: Mm;
}

export type FitKind = 'clearance' | 'transition' | 'interference';

export interface Fit {
  readonly kind: FitKind;
  /** Largest hole on the smallest shaft; negative is interference. */
  readonly maxClearance: Mm;
  /** Smallest hole on the largest shaft; negative is interference. */
  readonly minClearance: Mm;
}

/** A fit as written on a drawing, `40 H8/f7`. */
export interface WrittenFit {
  readonly nominal: Mm;
  readonly unit: LengthUnit;
  readonly hole: string;
  readonly shaft: string;
  readonly text: string;
}

/**
 * Clearance of a shaft in a hole at their limits.
 *
 *     most = hole max − shaft min,  least = hole min − shaft max
 *     least ≥ 0: clearance fit;  most ≤ 0: interference fit;  otherwise transition fit
 *
 * @param hole  limits of the hole [mm]
 * @param shaft  limits of the shaft [mm]
 * @returns kind of fit and clearances, negative for interference [mm]
 * @throws DomainError when a largest size is below its smallest
 * @source ISO-286-1 definitions of the three kinds of fit
 * @valid any limits in the same unit
 * @example fit({ max: 50.025, min: 50 }, { max: 49.975, min: 49.95 }) → { kind: 'clearance', maxClearance: 0.075, minClearance: 0.025 }
 */
export function fit(hole: Limits, shaft: Limits): Fit {
  for (const [name, limits] of Object.entries({ hole, shaft })) {
    if (!(limits.max >= limits.min)) throw new DomainError(name, limits, 'a largest size not below the smallest');
  }
  const maxClearance = withoutNoise(hole.max - shaft.min);
  const minClearance = withoutNoise(hole.min - shaft.max);
  const kind = minClearance >= 0 ? 'clearance' : maxClearance <= 0 ? 'interference' : 'transition';
  return { kind, maxClearance, minClearance };
}

/**
 * Fit of two tolerance classes at a size.
 *
 *     limits = nominal + deviations of the class; then as for {@link fit}
 *
 * @param nominal  nominal size [mm]
 * @param hole  class of the hole, such as H8
 * @param shaft  class of the shaft, such as f7
 * @returns limits of hole and shaft, kind of fit, clearances [mm]
 * @throws DomainError when the size is not over 0 to 500 mm or a class does not exist there
 * @source ISO-286-1
 * @valid over 0 to 500 mm
 * @example classFit(50, 'H7', 'f7').maxClearance → 0.075
 */
export function classFit(nominal: Mm, hole: string, shaft: string): Fit & { hole: Limits; shaft: Limits } {
  const holeLimits = limitsOf(nominal, hole);
  const shaftLimits = limitsOf(nominal, shaft);
  return { ...fit(holeLimits, shaftLimits), hole: holeLimits, shaft: shaftLimits };
}

/**
 * Reads a fit, `40 H8/f7`, `1/2 in H7-g6`, `⌀12H7/p6`, hole or shaft first.
 *
 * @param text  what was written
 * @param understood  unit of a bare number
 * @param path  where it stands, for the message
 * @returns size and classes
 * @throws InputError when it cannot be read, a class does not exist there, or both are holes or both shafts
 */
export function parseFit(text: string, understood: LengthUnit = 'mm', path = 'fit'): WrittenFit {
  const refuse = (expected: string): never => {
    throw new InputError([{ path, value: text, expected, example: '40 H8/f7 or 1/2 in H7/g6' }]);
  };
  const match = text.length > 60 ? null : form.exec(text.trim());
  const size = match?.[1] === undefined ? undefined : readLength(match[1], understood);
  if (!match || !size) return refuse('a size, the class of the hole and the class of the shaft');
  if (!(size.mm > 0 && size.mm <= largestSize)) return refuse(`a size over 0 up to ${largestSize} mm`);
  const classes = [match[2] ?? '', match[3] ?? ''];
  for (const name of classes) {
    try {
      limitDeviations(size.mm, name);
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      return refuse(`for ${name} ${nearestClasses(size.mm, name)}`);
    }
  }
  const hole = classes.find((name) => readToleranceClass(name)?.feature === 'hole');
  const shaft = classes.find((name) => readToleranceClass(name)?.feature === 'shaft');
  if (!hole || !shaft) return refuse('one class in capitals for the hole and one in small letters for the shaft');
  return { nominal: size.mm, unit: size.unit, hole, shaft, text: text.trim() };
}

const form = /^(.*\S)\s*?(?<![A-Za-z])([A-Za-z]{1,3}\d{1,4})\s*[/-]\s*([A-Za-z]{1,3}\d{1,4})$/;

function limitsOf(nominal: Mm, toleranceClass: string): Limits {
  const { upper, lower } = limitDeviations(nominal, toleranceClass);
  return { max: withoutNoise(nominal + upper), min: withoutNoise(nominal + lower) };
}
