/** What a round-nosed cutter leaves at the steps of a curve: flats, and the round of its nose in the inner corners. */
import type { Point } from '../../part/outline-types.ts';
import type { Mm } from '../../units/quantities.ts';
import type { CurveStep } from './curve-steps.ts';

/** Where the tip of the cutter stops. */
export type Stop = Pick<CurveStep, 'depth' | 'radius'>;

/** The corner that a step leaves against the one before: where its flat, or its round, meets the round that the nose left there. */
export function cornerOf(before: Stop | undefined, step: Stop, nose: Mm): Point {
  if (!before) return { z: 0, r: leftBy(step, 0, nose) };
  let [low, high] = [Math.max(0, before.depth - nose), before.depth];
  const stands = (z: Mm) => leftBy(before, z, nose) >= leftBy(step, z, nose);
  if (stands(low)) high = low;
  while (high - low > cornerFound) {
    const z = (low + high) / 2;
    if (stands(z)) high = z;
    else low = z;
  }
  return { z: high, r: leftBy(step, high, nose) };
}

/** How closely the corner is sought. */
const cornerFound: Mm = 1e-6;

/** Radius that a step leaves at a depth: that of the tip, and towards its face the round of the nose. */
export function leftBy({ depth, radius }: Stop, z: Mm, nose: Mm): Mm {
  const over = Math.max(0, nose - Math.max(0, depth - z));
  return radius + nose - Math.sqrt(Math.max(0, nose ** 2 - over ** 2));
}
