import { describe, expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { type PartDocument, partSchema } from '../part/schema.ts';
import { planRoute } from './plan-route.ts';

const workshop = workshopSchema('mm').parse(fullWorkshop);
const chamfer = { kind: 'chamfer', size: 0.5 } as const;

/** A flanged bush: whole outside from the right, bore written as entered from the left. */
function bush(bore: object, more: Partial<PartDocument> = {}) {
  const part = definePart(
    partSchema('mm').parse({
      name: 'bush',
      material: '303',
      outside: [
        { id: 'flange', kind: 'cylinder', diameter: '30', length: 4 },
        { id: 'body', kind: 'cylinder', diameter: '24 f7', length: 20 },
      ],
      inside: { left: [{ id: 'bore', kind: 'bored', diameter: '16 H7', depth: 'through', ...bore }] },
      ...more,
    }),
  );
  const route = planRoute(part, workshop, undefined);
  if (!route) throw new Error('no route');
  return (id: string) => route.operations.filter((o) => o.id === id).map((o) => o.setup);
}

// Surfaces that must run true with each other are turned in one setup; `common practice`.
describe('a plain bore right through', () => {
  test('is bored in the setup that turns the outside, from whichever end it was written', () => {
    const setups = bush({});
    expect(setups('bore-bore')).toEqual(['setup-1']);
    expect(setups('bore-bore')).toEqual(setups('finish-turn-body'));
  });

  test('has each of its edges shaped from the end it lies at', () => {
    const setups = bush({ startEdge: chamfer, endEdge: chamfer });
    expect(setups('chamfer-inside-right')).toEqual(['setup-1']);
    expect(setups('chamfer-inside-left')).toEqual(['setup-2']);
  });

  test('that carries a thread is still entered from its own end', () => {
    const setups = bush({ diameter: '16' }, { threads: [{ id: 'nut', on: 'bore', designation: 'M18x1.5' }] });
    expect(setups('thread-nut')).toEqual(['setup-2']);
  });
});
