import { describe, expect, test } from 'vitest';
import { exampleWorkshop } from '../../test/invented-lathe.ts';
import type { Setup } from './chain.ts';
import { judgeCut } from './cut-verdict.ts';
import { latheKnowledge } from './knowledge.ts';
import { prepareSetup } from './prepare-setup.ts';
import { heldBar, materialOf } from './workshop-known.ts';

const workshop = exampleWorkshop();
const { joint } = latheKnowledge(workshop);
const material = materialOf('303');
const cutterOf = (kind: string) => {
  const found = workshop.cutters.find((c) => c.kind === kind);
  if (!found) throw new Error(`the example workshop has no cutter for ${kind}`);
  return found;
};

const setupOf = (operation: Setup['operation'], at: number, more: Partial<Setup> = {}): Setup => ({
  operation,
  work: heldBar({ diameter: 16, length: 40, grip: 18, material: '303' }, 300),
  cutter: cutterOf(operation === 'facing' ? 'turning' : operation),
  stations: [at],
  diameter: 16,
  ...more,
});

describe('a spindle that floats along its axis', () => {
  const asked = { depth: 0.1, feed: 0.05, speed: 400 };
  const faced = (axialFloat: number) =>
    judgeCut(prepareSetup(joint, setupOf('facing', 40, { axialFloat }), material), workshop.lathe, asked);

  test('leaves a face proud by anything up to the float, and is no stiffness: singing stays as it was', () => {
    const [tight, loose] = [faced(0), faced(0.04)];
    expect(loose.size.most.low).toBe(tight.size.most.low);
    expect(loose.size.most.middle - tight.size.most.middle).toBeCloseTo(0.02, 12);
    expect(loose.size.most.high - tight.size.most.high).toBeCloseTo(0.04, 12);
    expect(loose.chatter).toEqual(tight.chatter);
  });

  test('is told, louder when it is much', () => {
    const level = (float: number) => faced(float).findings.find((f) => f.id === 'lathe.axial-float')?.level;
    expect([level(0), level(0.01), level(0.05)]).toEqual([undefined, 'note', 'caution']);
  });

  test('means nothing to a turning cut, and cannot be negative', () => {
    const turned = (axialFloat: number) =>
      judgeCut(prepareSetup(joint, setupOf('turning', 40, { axialFloat }), material), workshop.lathe, asked);
    expect(turned(0.04).size).toEqual(turned(0).size);
    expect(() => faced(-0.01)).toThrow('axialFloat');
  });
});
