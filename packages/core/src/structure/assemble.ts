/**
 * Puts the matrices of beam elements together.
 */
import { addTo, type BandedSymmetric } from '../numerics/banded.ts';
import type { Mm } from '../units/quantities.ts';
import type { ElementStiffness } from './beam-element.ts';
import type { ElementMass } from './element-mass.ts';

/** The different numbers of an element's matrix, whether of stiffness or of mass; rotations in radians. */
export type ElementEntries = ElementMass;

/** Stiffness in the order that mass is kept in. */
export function stiffnessEntries({ deflect, couple, near, far }: ElementStiffness): ElementEntries {
  return { near: deflect, far: -deflect, nearTurn: couple, farTurn: couple, turn: near, otherTurn: far };
}

/** Numbers of the unknowns at both ends of an element: deflection and turn; -1 for what is held fast. */
export interface Ends {
  readonly deflect: readonly [number, number];
  readonly turn: readonly [number, number];
}

/**
 * Adds an element to a matrix. Rotations are counted times `scale`, the whole length, so that all entries are of like size.
 */
export function addElement(matrix: BandedSymmetric, ends: Ends, element: ElementEntries, scale: Mm): void {
  const [w1, w2] = ends.deflect;
  const [t1, t2] = ends.turn;
  const nearTurn = element.nearTurn / scale;
  const farTurn = element.farTurn / scale;
  const turn = element.turn / (scale * scale);
  addKnown(matrix, w1, w1, element.near);
  addKnown(matrix, w2, w2, element.near);
  addKnown(matrix, w1, w2, element.far);
  addKnown(matrix, w1, t1, nearTurn);
  addKnown(matrix, w2, t2, -nearTurn);
  addKnown(matrix, w1, t2, farTurn);
  addKnown(matrix, w2, t1, -farTurn);
  addKnown(matrix, t1, t1, turn);
  addKnown(matrix, t2, t2, turn);
  addKnown(matrix, t1, t2, element.otherTurn / (scale * scale));
}

/** Adds to an entry unless a row of it is held fast. */
export function addKnown(matrix: BandedSymmetric, i: number, j: number, value: number): void {
  if (i >= 0 && j >= 0) addTo(matrix, i, j, value);
}
