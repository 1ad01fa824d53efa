import { describe, expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { type PartDocument, partSchema } from '../part/schema.ts';
import { planRoute } from './plan-route.ts';

type Section = NonNullable<PartDocument['outside']>[number];

/** The finishing table of a stem, its rows and notes. */
function finish(more: Partial<Extract<Section, { kind: 'cylinder' }>>) {
  const part = definePart(
    partSchema('mm').parse({
      name: 'stem',
      material: '303',
      outside: [
        { id: 'stem', kind: 'cylinder', length: 20, ...more },
        { id: 'head', kind: 'cylinder', diameter: 18, length: 10 },
      ],
    }),
  );
  const route = planRoute(part, workshopSchema('mm').parse(fullWorkshop), undefined);
  const operation = route?.operations.find((o) => o.id === 'finish-turn-stem');
  const table = route?.tables.find((t) => t.id === 'finish-turn-stem-table');
  if (!operation || !table) throw new Error('not finished');
  return {
    why: operation.why.join(' '),
    notes: table.notes.join(' '),
    stages: table.rows.map((r) => r.stage),
    depths: table.rows.map((r) => Number(r.depth)),
    sizes: table.rows.map((r) => Number(r.diameter)),
  };
}

describe('the last two cuts of a size are named, and alike', () => {
  test('with close limits, after one that clears the roughing, with the reason', () => {
    const { stages, depths, why } = finish({ diameter: '12 h7' });
    expect(stages.slice(-2)).toEqual(['semi-finish', 'finish']);
    expect(stages.length).toBeGreaterThanOrEqual(3);
    expect(depths.at(-1)).toBe(depths.at(-2));
    // 12 h7 is 0.018 mm wide (ISO 286-2).
    expect(why).toContain('0.018 mm apart');
  });

  test('on what slides, though its limits are wide', () => {
    const { stages, why } = finish({ diameter: '12 h11', role: 'sliding' });
    expect(stages.length).toBeGreaterThanOrEqual(3);
    expect(why).toContain('seals or slides');
  });

  test('elsewhere in two passes, a division apart at most', () => {
    const { stages, depths, why } = finish({ diameter: '12 h11' });
    expect(stages).toEqual(['semi-finish', 'finish']);
    expect(Math.abs((depths[0] ?? 0) - (depths[1] ?? 0))).toBeLessThanOrEqual(0.02 + 1e-9);
    expect(why).toContain('limits are wide');
  });
});

test('the size to measure at is the one the semi-finish pass is set to', () => {
  const { sizes, notes } = finish({ diameter: '12 h11' });
  expect(notes).toContain(`Ø${sizes.at(-2)?.toFixed(3)} mm is set`);
});

test('what warm work reads too large is its expansion: 303 grows 17.2 millionths a kelvin, Ø12 over 20 K 0.004 mm [materials tables]', () => {
  expect(12 * 20 * 17.2e-6).toBeCloseTo(0.0041, 4);
  expect(finish({ diameter: '12 h11' }).notes).toContain('20 K too warm it reads 0.004 mm too large');
});
