/** Lathes of known stiffness, and the noisy tests their owner would write down. */

import type { HeldWork } from '../src/lathe/chain.ts';
import type { Belief, ElementId, Values } from '../src/lathe/elements.ts';
import { pushGive } from '../src/lathe/observation.ts';
import { priorBeliefs } from '../src/lathe/prior-beliefs.ts';
import { valuesOf } from '../src/lathe/sampling.ts';
import { workshopSchema } from '../src/lathe/schema.ts';
import type { LatheTests } from '../src/lathe/test-schema.ts';
import { normalQuantile } from '../src/numerics/normal.ts';
import { exampleDocument } from './examples.ts';

export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
}

export const normal = (next: () => number) => normalQuantile(next());

export const prior: readonly Belief[] = priorBeliefs(180, 'unknown');

/** A lathe drawn from what is believed of its class. */
export function inventedLathe(next: () => number): Values {
  return valuesOf(
    { beliefs: prior },
    prior.map((b) => (b.scale === 'log' ? Math.log(b.middle) : b.middle) + b.spread * normal(next)),
  );
}

export function exampleWorkshop() {
  return workshopSchema('mm').parse(exampleDocument('bench-lathe.workshop.json'));
}

export const testBar = { diameter: 20, length: 60, grip: 18, material: '303' } as const;

/** A push test as written down: hysteresis, an indicator good to a micrometre, a scale off by up to a few per cent. */
export function pushTest(
  id: string,
  truth: Values,
  at: NonNullable<LatheTests['pushes']>[number]['at'],
  next: () => number,
  held?: HeldWork,
): NonNullable<LatheTests['pushes']>[number] {
  const give = pushGive(truth, { at, direction: 'radial' }, held) * (1 + 0.03 * normal(next));
  const friction = 6 * next();
  return {
    id,
    at,
    direction: 'radial',
    ...(held ? { bar: { ...testBar } } : {}),
    readings: [20, 60, 100, 150, 200].map((force) => ({
      force,
      up: give * force + normal(next),
      down: give * force + friction + normal(next),
    })),
  };
}

/** How often the truth of some elements lies inside their bounds. */
export function inside(
  ids: readonly ElementId[],
  truth: Values,
  bounds: (id: ElementId) => { low: number; high: number },
): number {
  return ids.filter((id) => truth[id] >= bounds(id).low && truth[id] <= bounds(id).high).length;
}
