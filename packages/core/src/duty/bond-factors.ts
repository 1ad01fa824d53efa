/**
 * What makes a bond weaker than the standard test: makers' factors, as bands. Nearly all are from memory, low confidence.
 */
import { DomainError } from '../errors.ts';
import type { SourceKey } from '../sources/register.ts';
import type { Standing } from '../standards/small-parts/standing.ts';
import type { Celsius, Micrometre, Mm, MPa } from '../units/quantities.ts';

export type BondStrength = 'low' | 'medium' | 'high' | 'high temperature';
export type BondMaterial = 'steel' | 'cast iron' | 'stainless steel' | 'aluminium' | 'brass, bronze, copper' | 'plated';
export type BondAgeing = 'engine oil' | 'water and glycol' | 'brake fluid' | 'petrol';

export interface BondInput {
  readonly diameter: Mm;
  /** Engaged length. */
  readonly length: Mm;
  /** Shear strength in the standard test [MPa], from the data sheet, or a class where only that is known. */
  readonly strength: MPa | BondStrength;
  /** Diametral gap. */
  readonly gap?: Mm | undefined;
  /** Ra of the smoother surface [µm]. */
  readonly roughness?: Micrometre | undefined;
  /** Both surfaces; the weaker counts. */
  readonly materials?: readonly BondMaterial[] | undefined;
  /** Hottest in service. */
  readonly temperature?: Celsius | undefined;
  readonly ageing?: BondAgeing | undefined;
  /** Whether the load changes sign or pulses, to 10⁷ times. */
  readonly alternating?: boolean | undefined;
  /** `known`: static load, proved surfaces. `unproved`: shock, a part that safety hangs on, or surfaces not tried. */
  readonly conditions?: 'known' | 'unproved' | undefined;
  /** Where findings belong; `bond` where not given. */
  readonly at?: string | undefined;
}

/** Low, typical and high end of what is said of one figure. */
export interface Spread {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
}

/** A factor on the strength of the standard test. */
export interface Factor extends Spread {
  /** `gap`, `roughness`… */
  readonly name: string;
  /** What it was taken for: `0.1 mm`. */
  readonly condition: string;
  readonly source: SourceKey;
  readonly standing: Standing;
}

const spread = (low: number, typical: number, high: number): Spread => ({ low, typical, high });
const none = spread(1, 1, 1);

/** Shear strength in the standard test by class: steel, 0.05 mm gap, 24 h, 22 °C [MPa]. */
export const bondStrengths: Record<BondStrength, Spread> = {
  low: spread(4, 7, 10),
  medium: spread(8, 12, 17),
  high: spread(19, 25, 30),
  'high temperature': spread(15, 20, 28),
};

/** What capacity over duty should be, common practice. */
export const safetyDivisors: Record<'known' | 'unproved', Spread> = {
  known: spread(2, 2, 3),
  unproved: spread(3, 4, 6),
};

export const bondMaterials: Record<BondMaterial, Spread> = {
  steel: none,
  'cast iron': spread(0.7, 0.85, 1),
  'stainless steel': spread(0.4, 0.6, 0.9),
  aluminium: spread(0.3, 0.5, 0.8),
  'brass, bronze, copper': spread(0.4, 0.7, 1),
  plated: spread(0.25, 0.4, 0.6),
};

export const bondAgeings: Record<BondAgeing, Spread> = {
  'engine oil': spread(0.9, 1, 1),
  'water and glycol': spread(0.5, 0.7, 0.9),
  'brake fluid': spread(0.9, 1, 1),
  petrol: spread(0.8, 0.9, 1),
};

type Point = readonly [at: number, factor: Spread];

export const gapPoints: readonly Point[] = [
  [0.05, none],
  [0.1, spread(0.75, 0.85, 1)],
  [0.15, spread(0.55, 0.7, 0.9)],
  [0.25, spread(0.3, 0.5, 0.8)],
];

export const roughnessPoints: readonly Point[] = [
  [0.4, spread(0.6, 0.75, 0.9)],
  [0.8, none],
  [3.2, none],
];

export const ordinaryHeat: readonly Point[] = [
  [22, none],
  [100, spread(0.5, 0.65, 0.8)],
  [150, spread(0.2, 0.35, 0.5)],
];

export const specialHeat: readonly Point[] = [
  [22, none],
  [150, spread(0.5, 0.65, 0.8)],
];

const alternating = spread(0.2, 0.3, 0.5);

/** The factors that apply to a joint; a condition not stated takes none off, and is not listed. */
export function bondFactors(input: BondInput): Factor[] {
  const factors: Factor[] = [];
  const add = (name: string, condition: string, factor: Spread): void => {
    const definition = factor.low === 1 && factor.high === 1;
    factors.push({
      name,
      condition,
      ...factor,
      source: definition ? 'ISO10123' : 'bond-MEM',
      standing: definition ? 'computed' : 'from memory',
    });
  };
  const { gap, roughness, materials, temperature, ageing } = input;
  if (gap !== undefined) {
    within('gap', gap, 0, 0.25, 'mm: no compound is known to fill more');
    add('gap', `${gap} mm on the diameter`, between(gapPoints, gap));
  }
  if (roughness !== undefined) {
    within('roughness', roughness, 0, 50, 'µm');
    add('roughness', `Ra ${roughness} µm`, between(roughnessPoints, roughness));
  }
  if (materials !== undefined && materials.length > 0) {
    const weakest = materials.reduce((a, b) => (bondMaterials[b].typical < bondMaterials[a].typical ? b : a));
    add('material', weakest, bondMaterials[weakest]);
  }
  if (temperature !== undefined) {
    within('temperature', temperature, -55, 150, '°C, beyond which no factor is known');
    add(
      'temperature',
      `${temperature} °C`,
      between(input.strength === 'high temperature' ? specialHeat : ordinaryHeat, temperature),
    );
  }
  if (ageing !== undefined) add('ageing', ageing, bondAgeings[ageing]);
  if (input.alternating) add('alternating load', '10⁷ times', alternating);
  return factors;
}

/** The factor between two points of a table, in proportion; beyond its ends, that of the end. */
function between(points: readonly Point[], at: number): Spread {
  const upper = points.findIndex(([x]) => x >= at);
  const [x1, high] = points[upper === -1 ? points.length - 1 : upper] ?? [0, none];
  const [x0, low] = points[upper - 1] ?? [x1, high];
  const share = x1 === x0 ? 0 : (at - x0) / (x1 - x0);
  const mix = (end: keyof Spread): number => low[end] + share * (high[end] - low[end]);
  return spread(mix('low'), mix('typical'), mix('high'));
}

function within(parameter: string, value: number, least: number, most: number, unit: string): void {
  if (!(value >= least && value <= most)) throw new DomainError(parameter, value, `${least} to ${most} ${unit}`);
}
