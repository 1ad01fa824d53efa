/**
 * Which tolerance classes a maker is likely to have given a surface, by what it is for. Weights are workshop judgement,
 * `common practice`; the pairs are those of the preferred fits.
 */
import type { roles } from '../part/roles.ts';
import { type Mm, mmPerInch } from '../units/quantities.ts';

/** What a surface is for, as in the part. */
export type Role = (typeof roles)[number];

/** Which part of a pair is made to the plain class: H holes, or h shafts. */
export type Basis = 'hole' | 'shaft';

export type Weights = Readonly<Record<string, number>>;

/** Hole basis: letters of the shaft, grade and weight. */
const shaftOnHoleBasis: Readonly<Record<Role, Weights>> = {
  sliding: { f7: 0.28, g6: 0.26, h7: 0.12, f8: 0.1, h6: 0.08, e8: 0.08, h8: 0.08 },
  sealing: { f7: 0.34, f8: 0.18, h8: 0.14, g6: 0.12, h9: 0.12, e8: 0.1 },
  locating: { h6: 0.24, h7: 0.22, k6: 0.12, g6: 0.1, js6: 0.1, h8: 0.08, h9: 0.08, m6: 0.06 },
  running: { f7: 0.32, e8: 0.22, f8: 0.16, g6: 0.1, d9: 0.1, e9: 0.06, h7: 0.04 },
  pressed: { p6: 0.36, r6: 0.22, s6: 0.18, n6: 0.14, m6: 0.1 },
  bonded: { f7: 0.3, h9: 0.26, h8: 0.22, g6: 0.12, f8: 0.1 },
  clearance: { d9: 0.28, h11: 0.22, c11: 0.18, h9: 0.16, d10: 0.16 },
  free: { 'ISO 2768-m': 0.42, h11: 0.18, h9: 0.12, h12: 0.1, 'ISO 2768-f': 0.1, 'ISO 2768-c': 0.08 },
};

/** Shaft basis: the shaft is plain, the letters are the hole's. */
const shaftOnShaftBasis: Readonly<Record<Role, Weights>> = {
  sliding: { h6: 0.4, h7: 0.4, h8: 0.2 },
  sealing: { h7: 0.34, h8: 0.33, h9: 0.33 },
  locating: { h6: 0.5, h7: 0.3, h8: 0.2 },
  running: { h6: 0.3, h7: 0.3, h8: 0.25, h9: 0.15 },
  pressed: { h6: 0.7, h5: 0.3 },
  bonded: { h7: 0.35, h8: 0.35, h9: 0.3 },
  clearance: { h9: 0.5, h11: 0.5 },
  free: shaftOnHoleBasis.free,
};

const holeOnHoleBasis: Readonly<Record<Role, Weights>> = {
  sliding: { H7: 0.45, H8: 0.45, H9: 0.1 },
  sealing: { H8: 0.5, H7: 0.25, H9: 0.25 },
  locating: { H7: 0.6, H8: 0.25, H9: 0.15 },
  running: { H7: 0.35, H8: 0.45, H9: 0.2 },
  pressed: { H7: 0.85, H6: 0.15 },
  bonded: { H8: 0.5, H7: 0.25, H9: 0.25 },
  clearance: { H11: 0.5, H9: 0.3, H10: 0.2 },
  free: { 'ISO 2768-m': 0.36, H11: 0.2, H12: 0.16, H9: 0.14, 'ISO 2768-f': 0.07, 'ISO 2768-c': 0.07 },
};

const holeOnShaftBasis: Readonly<Record<Role, Weights>> = {
  sliding: { F8: 0.45, G7: 0.35, H7: 0.2 },
  sealing: { F8: 0.6, G7: 0.2, H8: 0.2 },
  locating: { H7: 0.5, K7: 0.25, H8: 0.15, JS7: 0.1 },
  running: { F8: 0.45, E8: 0.3, E9: 0.15, D9: 0.1 },
  pressed: { P7: 0.5, R7: 0.25, S7: 0.15, N7: 0.1 },
  bonded: { F8: 0.4, H8: 0.35, H9: 0.25 },
  clearance: { D9: 0.4, C11: 0.3, D10: 0.3 },
  free: holeOnHoleBasis.free,
};

/** Any class at all, should the role be wrong: each of these a little. */
const anyShaft = ['h6', 'h7', 'h8', 'h9', 'h11', 'g6', 'f7', 'e8', 'd9', 'k6', 'm6', 'p6'];
const anyHole = ['H6', 'H7', 'H8', 'H9', 'H11', 'G7', 'F8', 'E8', 'K7', 'P7'];
const anyWeight = 0.06;

/** Weights of the classes of a shaft or bore, together 1. */
export function classWeights(role: Role, isShaft: boolean, basis: Basis): ReadonlyMap<string, number> {
  const name = `${role} ${isShaft} ${basis}`;
  const known = cache.get(name);
  if (known) return known;
  const table = isShaft
    ? basis === 'hole'
      ? shaftOnHoleBasis
      : shaftOnShaftBasis
    : basis === 'hole'
      ? holeOnHoleBasis
      : holeOnShaftBasis;
  const any = isShaft ? anyShaft : anyHole;
  const weights = new Map(Object.entries(table[role]).map(([c, w]) => [c, w * (1 - anyWeight)]));
  for (const c of any) weights.set(c, (weights.get(c) ?? 0) + anyWeight / any.length);
  cache.set(name, weights);
  return weights;
}

const cache = new Map<string, ReadonlyMap<string, number>>();

/** Limits as inch drawings gave them, in thou from nominal: upper, lower, weight. */
type Band = readonly [upper: number, lower: number, weight: number];

const closeShaft: readonly Band[] = [
  [-0.5, -1.5, 0.3],
  [-1, -2, 0.2],
  [0, -1, 0.2],
  [-1, -3, 0.12],
  [-0.5, -1, 0.09],
  [0, -0.5, 0.09],
];
const closeHole: readonly Band[] = [
  [1, 0, 0.4],
  [0.5, 0, 0.2],
  [2, 0, 0.15],
  [1.5, 0.5, 0.15],
  [3, 1, 0.1],
];
const looseShaft: readonly Band[] = [
  [-2, -5, 0.35],
  [0, -5, 0.35],
  [-5, -10, 0.3],
];
const looseHole: readonly Band[] = [
  [5, 0, 0.6],
  [10, 0, 0.4],
];
const freeBands: readonly Band[] = [
  [5, -5, 0.4],
  [10, -10, 0.35],
  [15.625, -15.625, 0.25],
];

const inchBands: Readonly<Record<Role, { readonly shaft: readonly Band[]; readonly hole: readonly Band[] }>> = {
  sliding: { shaft: closeShaft, hole: closeHole },
  sealing: { shaft: closeShaft, hole: closeHole },
  running: { shaft: closeShaft, hole: closeHole },
  bonded: { shaft: closeShaft, hole: closeHole },
  locating: {
    shaft: [
      [0, -0.5, 0.3],
      [0, -1, 0.4],
      [-0.5, -1.5, 0.15],
      [0.5, 0, 0.15],
    ],
    hole: closeHole,
  },
  pressed: {
    shaft: [
      [1, 0.5, 0.4],
      [1.5, 1, 0.3],
      [2, 1, 0.3],
    ],
    hole: [
      [0.5, 0, 0.6],
      [1, 0, 0.4],
    ],
  },
  clearance: { shaft: looseShaft, hole: looseHole },
  free: { shaft: freeBands, hole: freeBands },
};

export interface ThouBand {
  readonly upper: Mm;
  readonly lower: Mm;
  readonly weight: number;
  /** `−.0005/−.0015`. */
  readonly written: string;
}

/** Limits of old inch drawings for a role, weights together 1. */
export function thouBands(role: Role, isShaft: boolean): readonly ThouBand[] {
  return inchBands[role][isShaft ? 'shaft' : 'hole'].map(([upper, lower, weight]) => ({
    upper: (upper * mmPerInch) / 1000,
    lower: (lower * mmPerInch) / 1000,
    weight,
    written: upper === -lower ? `±${thou(upper).slice(1)}` : `${thou(upper)}/${thou(lower)}`,
  }));
}

const thou = (t: number) =>
  t === 0
    ? '0'
    : `${t < 0 ? '−' : '+'}${Number((Math.abs(t) / 1000).toFixed(4))
        .toString()
        .replace(/^0/, '')}`;
