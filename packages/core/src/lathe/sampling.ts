/**
 * Draws of a lathe from what is believed of it, always the same ones.
 */
import { normalQuantile } from '../numerics/normal.ts';
import { type Belief, type ElementId, type Values, valueAt } from './elements.ts';

/** What is believed of all elements of one state together: normal, in the coordinates of the beliefs. */
export interface Joint {
  readonly beliefs: readonly Belief[];
  readonly mean: readonly number[];
  /** Lower triangular factor of the covariance, row by row. */
  readonly factor: readonly (readonly number[])[];
}

/** The values at the middle of what is believed. */
export function middle(joint: Joint): Values {
  return valuesOf(joint, joint.mean);
}

/** Values at coordinates. */
export function valuesOf({ beliefs }: Pick<Joint, 'beliefs'>, coordinates: readonly number[]): Values {
  const values: Partial<Record<ElementId, number>> = {};
  beliefs.forEach((belief, i) => {
    values[belief.id] = valueAt(belief, coordinates[i] ?? 0);
  });
  return complete(values);
}

function complete(values: Partial<Record<ElementId, number>>): Values {
  const need = (id: ElementId): number => {
    const value = values[id];
    if (value === undefined || !Number.isFinite(value)) throw new Error(`nothing is believed of ${id}`);
    return value;
  };
  return {
    spindleRadial: need('spindleRadial'),
    spindleTilt: need('spindleTilt'),
    spindleAxial: need('spindleAxial'),
    grip: need('grip'),
    tailstock: need('tailstock'),
    toolPost: need('toolPost'),
    topSlide: need('topSlide'),
    crossSlide: need('crossSlide'),
    saddle: need('saddle'),
    toolAxialRatio: need('toolAxialRatio'),
    toolTangentialRatio: need('toolTangentialRatio'),
    chuckMass: need('chuckMass'),
    axialMass: need('axialMass'),
    toolMass: need('toolMass'),
    toolDamping: need('toolDamping'),
    workDamping: need('workDamping'),
    axialDamping: need('axialDamping'),
    toolTilt: need('toolTilt'),
    force: need('force'),
    rubbing: need('rubbing'),
    alignment: need('alignment'),
  };
}

/**
 * Draws that a chance is counted from, wherever it is told; against 1500 they are off by 0.03 in the root mean square. How far a
 * size may spread needs more: its bounds from these alone come out too narrow.
 */
export const chanceDraws = 32;

/**
 * Lathes as they may be, in batches of {@link chanceDraws}, so that the first batch is the same however many follow.
 */
export function draws(joint: Joint, count: number): Values[] {
  const next = lcg(20_240_229);
  const found: Values[] = [];
  while (found.length < count) found.push(...batch(joint, Math.min(chanceDraws, count - found.length), next));
  return found;
}

/**
 * For each element the draws of a batch stand evenly over its distribution and in an order of their own, and come in pairs on either
 * side of the middle.
 */
function batch(joint: Joint, count: number, next: () => number): Values[] {
  const half = Math.ceil(count / 2);
  const dimensions = joint.beliefs.length;
  const columns = Array.from({ length: dimensions }, () => shuffled(half, next));
  const found: Values[] = [];
  for (let i = 0; i < half; i++) {
    // Strata of the upper half; the sign is drawn, and the partner takes the other.
    const z = columns.map((order) => {
      const p = 0.5 + ((order[i] ?? 0) + 0.5) / (2 * half);
      return (next() < 0.5 ? -1 : 1) * normalQuantile(p);
    });
    for (const sign of [1, -1]) {
      if (found.length === count) break;
      found.push(valuesOf(joint, along(joint, z, sign)));
    }
  }
  return found;
}

function along({ mean, factor }: Joint, z: readonly number[], sign: number): number[] {
  return mean.map((m, i) => {
    let sum = m;
    const row = factor[i];
    for (let k = 0; k <= i; k++) sum += sign * (row?.[k] ?? 0) * (z[k] ?? 0);
    return sum;
  });
}

function lcg(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

function shuffled(count: number, next: () => number): number[] {
  const order = Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(next() * (i + 1));
    [order[i], order[j]] = [order[j] ?? 0, order[i] ?? 0];
  }
  return order;
}

/** Joint belief before any test: every element for itself. @internal */
export function independent(beliefs: readonly Belief[]): Joint {
  return {
    beliefs,
    mean: beliefs.map((b) => (b.scale === 'log' ? Math.log(b.middle) : b.middle)),
    factor: beliefs.map((b, i) => beliefs.map((_, k) => (i === k ? b.spread : 0))),
  };
}
