import { describe, expect, test } from 'vitest';
import { exampleWorkshop } from '../../test/invented-lathe.ts';
import type { Setup } from './chain.ts';
import { type JobCut, whatWouldHelpJob } from './job-remedies.ts';
import { latheKnowledge } from './knowledge.ts';
import { heldBar, materialOf } from './workshop-known.ts';

const workshop = exampleWorkshop();
const { joint } = latheKnowledge(workshop);
const [cutter] = workshop.cutters.filter((c) => c.kind === 'turning');
if (!cutter) throw new Error('the example workshop has lost its cutters');

function bar(id: string, diameter: number, length: number, depth: number, speed = 800): JobCut {
  const setup: Setup = {
    operation: 'turning',
    work: heldBar({ diameter, length, grip: 18, material: '303' }, 300),
    cutter: cutter as Setup['cutter'],
    stations: Array.from({ length: 9 }, (_, i) => (length * (i + 1)) / 9),
    diameter,
  };
  return { id, setup, joint, material: materialOf('303'), asked: { depth, feed: 0.05, speed, sizeLimit: 0.02 } };
}

describe('what would help a whole job', () => {
  const long = bar('long', 10, 90, 0.2);
  const short = bar('short', 20, 25, 0.2, 400);
  const { asItStands, remedies } = whatWouldHelpJob([short, long], workshop.lathe);

  test('the long slender cut stands worst, and the tailstock comes first [common practice]', () => {
    expect(asItStands.map((c) => c.id)).toEqual(['long', 'short']);
    expect(remedies[0]?.name).toBe('support the end with the tailstock centre');
    expect(remedies[0]?.worstGain).toBeGreaterThan(0);
  });

  test('the order is that of gain for the worst and gain for all, and settings are taken only where they help', () => {
    const worth = remedies.map((r) => r.worstGain + r.sumGain / 2);
    expect(worth).toEqual(worth.toSorted((a, b) => b - a));
    for (const r of remedies) {
      if (r.effort === 'now' || r.effort === 'minutes') expect(r.sumGain, r.name).toBeGreaterThan(0);
    }
  });

  test('an alteration of the lathe counts for every cut, and what it settles stands good with it', () => {
    const block = remedies.find((r) => r.name.startsWith('solid block'));
    expect(block?.cuts.map((c) => c.id).toSorted()).toEqual(['long', 'short']);
    for (const { settles, cuts } of remedies) {
      for (const id of settles) {
        expect(asItStands.find((c) => c.id === id)?.outcome.decides.state).not.toBe('good');
        expect(cuts.find((c) => c.id === id)?.outcome.decides.state).toBe('good');
      }
    }
  });

  test('a job of one cut ranks by that cut alone', () => {
    for (const r of whatWouldHelpJob([long], workshop.lathe).remedies) expect(r.sumGain).toBeCloseTo(r.worstGain, 12);
  });

  test('a cut that cannot be is named', () => {
    expect(() => whatWouldHelpJob([], workshop.lathe)).toThrow('at least one cut');
    expect(() => whatWouldHelpJob([short, bar('none', 10, 40, 0)], workshop.lathe)).toThrow('none: depth');
  });
});
