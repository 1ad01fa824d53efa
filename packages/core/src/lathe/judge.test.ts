import { describe, expect, test } from 'vitest';
import { exampleWorkshop } from '../../test/invented-lathe.ts';
import { DomainError } from '../errors.ts';
import type { Setup } from './chain.ts';
import { judgeCut } from './cut-verdict.ts';
import { judgeOf, knownLathe } from './judge.ts';
import { latheKnowledge } from './knowledge.ts';
import { prepareSetup } from './prepare-setup.ts';
import { heldBar, materialOf } from './workshop-known.ts';

const workshop = exampleWorkshop();
const material = materialOf('303');
const [turning] = workshop.cutters.filter((c) => c.kind === 'turning');
const [grooving] = workshop.cutters.filter((c) => c.kind === 'grooving');
if (!turning || !grooving) throw new Error('the example workshop has lost its cutters');

const setupOf = (operation: Setup['operation'], diameter: number, length: number, tailstock = false): Setup => {
  const plunge = operation === 'grooving';
  return {
    operation,
    work: heldBar({ diameter, length, grip: 18, material: '303', tailstock }, 300),
    cutter: plunge ? grooving : turning,
    stations: plunge || operation === 'facing' ? [length] : Array.from({ length: 9 }, (_, i) => (length * (i + 1)) / 9),
    diameter,
    axialFloat: 0.01,
  };
};
const setups = [
  setupOf('turning', 10, 40),
  setupOf('turning', 8, 80),
  setupOf('turning', 12, 100, true),
  setupOf('facing', 25, 30),
  setupOf('grooving', 16, 20),
];
const asked = [
  { depth: 0.1, feed: 0.05, speed: 400, sizeLimit: 0.05 },
  { depth: 0.5, feed: 0.1, speed: 800, sizeLimit: 0.05 },
];

describe('a cut judged for a route', () => {
  test('has the force and power of the verdict with all draws, and its size and singing within what twelve draws can tell', () => {
    const { joint } = latheKnowledge(workshop);
    for (const setup of setups) {
      const judge = judgeOf(knownLathe(workshop), setup, material);
      const whole = prepareSetup(joint, setup, material);
      for (const cut of asked) {
        const [few, all] = [judge(cut), judgeCut(whole, workshop.lathe, cut)];
        expect(few.cutting).toBe(all.cutting);
        expect(few.powerShare).toBe(all.powerShare);
        expect(Math.abs(few.size.most.middle / all.size.most.middle - 1)).toBeLessThan(0.2);
        // Near one half a share of 12 draws has a standard deviation of 0.144 and one of 32 of 0.088: together 0.17.
        expect(Math.abs(few.chatter - all.chatter.probability)).toBeLessThan(0.25);
        expect(judge.chance(cut)).toBe(all.chatter.probability);
      }
    }
  });

  test('sings sooner the deeper it is, but for how the rounded nose turns the push towards the feed', () => {
    const judge = judgeOf(knownLathe(workshop), setups[0] as Setup, material);
    const chances = [0.1, 0.2, 0.3, 0.5, 0.8].map((depth) => judge.chance({ depth, feed: 0.05, speed: 800 }));
    chances.slice(1).forEach((chance, i) => {
      expect(chance).toBeGreaterThan((chances[i] ?? 0) - 1.5 / 33);
    });
    expect(chances.at(-1)).toBeGreaterThan((chances[0] ?? 1) + 0.02);
  });

  test('names the number that decides, worst first', () => {
    const judge = judgeOf(knownLathe(workshop), setups[1] as Setup, material);
    const { verdict, decides, weighed } = judge({ depth: 0.5, feed: 0.05, speed: 800, sizeLimit: 0.005 });
    expect(verdict).toBe('not on this lathe');
    expect(decides.state).toBe('bad');
    expect(weighed).toContain(decides);
  });

  test('knows a workshop once', () => {
    expect(knownLathe(workshop)).toBe(knownLathe(workshop));
    expect(knownLathe({ ...workshop, cutters: [] })).not.toBe(knownLathe(workshop));
  });

  test('refuses a cut or a setup that cannot be', () => {
    const [setup] = setups as [Setup];
    expect(() => judgeOf(knownLathe(workshop), { ...setup, stations: [] }, material)).toThrow(DomainError);
    const judge = judgeOf(knownLathe(workshop), setup, material);
    expect(() => judge({ depth: 0, feed: 0.05, speed: 400 })).toThrow(DomainError);
    expect(() => judge({ depth: 0.1, feed: 0.05, speed: -1 })).toThrow(DomainError);
  });
});
