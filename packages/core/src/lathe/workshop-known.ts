/**
 * What a workshop and the tables of materials know of a test: its cutter, and the bar it was made on.
 */
import { workOf } from '../cutting/question-fields.ts';
import { InputError } from '../errors.ts';
import { findMaterial } from '../materials/find.ts';
import type { HeldWork } from './chain.ts';
import type { CutMaterial } from './cut-forces.ts';
import type { Known } from './observation.ts';
import type { Workshop } from './schema.ts';
import type { TestBar } from './test-schema.ts';

/** A bar as it is held. */
export function heldBar(bar: TestBar, betweenCentres: number): HeldWork {
  if (bar.length > betweenCentres) {
    throw new InputError([
      { path: 'bar.length', value: bar.length, expected: `at most ${betweenCentres} mm, the distance between centres` },
    ]);
  }
  const { youngsModulus, poisson, density } = findMaterial(bar.material);
  return {
    sections: [{ from: 0, to: bar.length, outerDiameter: bar.diameter }],
    youngsModulus,
    poissonRatio: poisson,
    density,
    gripLength: bar.grip,
    centreAt: bar.tailstock ? bar.length : undefined,
  };
}

/** What is cut, by name. */
export function materialOf(name: string): CutMaterial {
  const { cutData, hardens } = workOf({ material: name });
  return { cutData, hardens };
}

export function knownOf(workshop: Pick<Workshop, 'lathe' | 'cutters'>): Known {
  const { lathe, cutters } = workshop;
  return {
    shank: lathe.tests?.shank,
    cutter(id) {
      const found = cutters.find((c) => c.id === id);
      if (found) return found;
      const [nearest] = cutters;
      throw new InputError([
        {
          path: 'cutter',
          value: id,
          expected: `a cutter of the workshop: ${cutters.map((c) => c.id).join(', ') || 'it lists none'}`,
          ...(nearest ? { example: nearest.id } : {}),
        },
      ]);
    },
    work: (bar) => ({ held: heldBar(bar, lathe.betweenCentres), material: materialOf(bar.material) }),
  };
}
