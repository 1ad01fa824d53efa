/**
 * A slip-fit joint bonded with an anaerobic retaining compound: what it carries, and how far that can be trusted.
 *
 * The mean shear strength comes from the standard pin-and-collar test, which ranks products and does not predict service
 * (the standard says so). Makers' factors bring it to the joint at hand. No maker's handbook could be read: nearly all factors
 * are from memory, with low confidence, and are therefore bands. The answer is to be proved by a test.
 */
import { DomainError } from '../errors.ts';
import { type Finding, worstFirst } from '../finding.ts';
import type { SourceKey } from '../sources/register.ts';
import { type Standing, weakest } from '../standards/small-parts/standing.ts';
import type { Mm, Mm2, MPa, Newton, NewtonMetre } from '../units/quantities.ts';
import {
  type BondInput,
  type BondStrength,
  bondFactors,
  bondStrengths,
  type Factor,
  type Spread,
  safetyDivisors,
} from './bond-factors.ts';
import { bondFindings, digits } from './bond-findings.ts';

export interface BondResult {
  /** What the joint carries before it lets go, with no safety taken off [N·m] or [N]. */
  readonly capacity: Spread;
  readonly unit: 'N·m' | 'N';
  readonly factors: readonly Factor[];
  readonly strength: Spread;
  /** Bonded area that counts [mm²]. */
  readonly area: Mm2;
  /** Length that counts: beyond 1.5 diameters more length carries little [mm]. */
  readonly usefulLength: Mm;
  /** Capacity over duty; absent without a duty. */
  readonly safety?: Spread;
  /** What safety should be [-]. */
  readonly safetyWanted: Spread;
  readonly advice: readonly string[];
  readonly findings: readonly Finding[];
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
}

/**
 * Axial force at which a bonded joint of even shear lets go.
 *
 *     F = π d L τ
 *
 * @param diameter  joint diameter d [mm]
 * @param length  engaged length L [mm]
 * @param shear  mean shear strength τ, factors included [MPa]
 * @returns force [N]
 * @throws DomainError when a measure is not above zero
 * @source bond-MEM
 * @source ISO10123
 * @valid slip fit, whole surface wetted; L up to about 1.5 d
 * @example bondForceCapacity(12.7, 11.1, 25) → 11072
 */
export function bondForceCapacity(diameter: Mm, length: Mm, shear: MPa): Newton {
  positive('diameter', diameter);
  positive('length', length);
  positive('shear', shear);
  return Math.PI * diameter * length * shear;
}

/**
 * Torque at which a bonded joint of even shear lets go.
 *
 *     T = π d² L τ / 2
 *
 * @param diameter  joint diameter d [mm]
 * @param length  engaged length L [mm]
 * @param shear  mean shear strength τ, factors included [MPa]
 * @returns torque [N·m]
 * @throws DomainError when a measure is not above zero
 * @source bond-MEM
 * @valid slip fit, whole surface wetted; L up to about 1.5 d
 * @example bondTorqueCapacity(12, 12, 25) → 67.86
 */
export function bondTorqueCapacity(diameter: Mm, length: Mm, shear: MPa): NewtonMetre {
  return (bondForceCapacity(diameter, length, shear) * diameter) / 2 / 1000;
}

/** Torque a bonded joint carries, as a band, and the safety against a duty torque [N·m]. */
export function bondedTorque(input: BondInput, duty?: NewtonMetre): BondResult {
  return bonded(input, 'N·m', bondTorqueCapacity, duty);
}

/** Axial force a bonded joint carries, as a band, and the safety against a duty force [N]. */
export function bondedForce(input: BondInput, duty?: Newton): BondResult {
  return bonded(input, 'N', bondForceCapacity, duty);
}

function bonded(
  input: BondInput,
  unit: 'N·m' | 'N',
  capacityOf: (diameter: Mm, length: Mm, shear: MPa) => number,
  duty: number | undefined,
): BondResult {
  if (duty !== undefined && !(duty >= 0)) throw new DomainError('duty', duty, `at least 0 ${unit}`);
  positive('length', input.length);
  const strength = strengthOf(input.strength);
  const factors = bondFactors(input);
  const usefulLength = Math.min(input.length, 1.5 * input.diameter);
  const at = (end: keyof Spread): number =>
    capacityOf(
      input.diameter,
      usefulLength,
      factors.reduce((shear, factor) => shear * factor[end], strength[end]),
    );
  const capacity = { low: at('low'), typical: at('typical'), high: at('high') };
  const safety =
    duty === undefined || duty === 0
      ? undefined
      : { low: capacity.low / duty, typical: capacity.typical / duty, high: capacity.high / duty };
  const wanted = safetyDivisors[input.conditions ?? 'unproved'];
  return {
    capacity,
    unit,
    factors,
    strength,
    area: Math.PI * input.diameter * usefulLength,
    usefulLength,
    ...(safety && { safety }),
    safetyWanted: wanted,
    advice: advice(unit, duty),
    findings: worstFirst(bondFindings({ input, unit, capacity, wanted: wanted.typical, duty, factors })),
    sources: [
      ...new Set<SourceKey>(['bond-MEM', 'ISO10123', ...factors.map((factor) => factor.source), 'common-practice']),
    ],
    standing: weakest(['from memory', ...factors.map((factor) => factor.standing)]),
  };
}

function strengthOf(strength: MPa | BondStrength): Spread {
  if (typeof strength !== 'number') return bondStrengths[strength];
  positive('strength', strength);
  return { low: strength, typical: strength, high: strength };
}

function advice(unit: 'N·m' | 'N', duty: number | undefined): string[] {
  const proof =
    duty === undefined || duty === 0 ? '1.5 times the duty' : `${digits(1.5 * duty)} ${unit}, 1.5 times the duty`;
  return [
    `Prove it by a ${unit === 'N·m' ? 'torque' : 'push-out'} test after full cure and before it is fitted: ${proof} (common practice).`,
    'Make a test joint of the same materials, finish and gap and take it to failure where the load matters.',
    'Degrease both, wet both surfaces, turn while entering, vent a blind hole, wipe, and leave it still till set (common practice).',
    'Full cure on steel at 22 °C takes 6 to 72 h, typically 24; at 10 °C about 72 h [HENK-FAQ, TM5-3820].',
    'To part it, heat to 232 to 316 °C and part it hot; ventilate, the fumes are harmful [HENK-FAQ].',
  ];
}

function positive(parameter: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) throw new DomainError(parameter, value, 'more than 0');
}
