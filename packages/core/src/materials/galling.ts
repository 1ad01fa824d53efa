/** Threshold stress at which stainless steels begin to gall on each other, dry. From reference/materials/galling.csv. */
import type { MPa } from '../units/quantities.ts';

const steels: readonly string[] = ['410', '416', '303', '304', '316', '430', '440C', '17-4PH', 'S21800'];

/** ksi as printed [AISI-GALL], each steel on itself and on those after it. Negative: no galling up to that stress. */
const ksi: Readonly<Record<string, readonly number[]>> = {
  '410': [3, 4, 4, 2, 2, 3, 3, 4, -50],
  '416': [13, 9, 24, 42, 3, 21, 2, -50],
  '303': [2, 2, 3, 2, 5, 3, -50],
  '304': [2, 2, 2, 3, 2, -50],
  '316': [2, 2, 37, 2, 38],
  '430': [2, 2, 3, 36],
  '440C': [11, 3, -50],
  '17-4PH': [2, -50],
  S21800: [50],
};

const mpaPerKsi = 6.894757;

export interface GallingThreshold {
  /** As printed. */
  readonly ksi: number;
  readonly threshold: MPa;
  /** The test ended without galling at that stress. */
  readonly orMore: boolean;
}

/** Threshold galling stress of two stainless steels by AISI number, dry button on block; undefined where none is printed. */
export function gallingThreshold(a: string, b: string): GallingThreshold | undefined {
  const places = [a, b].map((name) => steels.indexOf(name)).toSorted((x, y) => x - y);
  const [first, second] = places;
  if (first === undefined || second === undefined || first < 0) return undefined;
  const steel = steels[first];
  const value = steel === undefined ? undefined : ksi[steel]?.[second - first];
  if (value === undefined) return undefined;
  return { ksi: Math.abs(value), threshold: Math.abs(value) * mpaPerKsi, orMore: value < 0 };
}
