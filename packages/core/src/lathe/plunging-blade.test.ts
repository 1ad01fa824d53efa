import { describe, expect, test } from 'vitest';
import { exampleWorkshop } from '../../test/invented-lathe.ts';
import type { Setup } from './chain.ts';
import { judgeCut } from './cut-verdict.ts';
import type { CuttingTool } from './cutting-tool.ts';
import { latheKnowledge } from './knowledge.ts';
import { bladeMode, bladeOf, edgeAway, edgeGive, hasBlade } from './plunging-blade.ts';
import { prepareSetup } from './prepare-setup.ts';
import { heldBar, materialOf } from './workshop-known.ts';

const workshop = exampleWorkshop();
const { joint } = latheKnowledge(workshop);
const [grooving] = workshop.cutters.filter((c) => c.kind === 'grooving');
if (!grooving) throw new Error('the example workshop has lost its grooving cutter');
const { bladeHeight: _told, ...untold } = grooving;
const parting: CuttingTool = { ...untold, kind: 'parting', width: 2, overhang: 20, maxDepth: 15 };

const judged = (cutter: CuttingTool) => {
  const setup: Setup = {
    operation: 'parting',
    work: heldBar({ diameter: 20, length: 15, grip: 18, material: '303', tailstock: false }, 300),
    cutter,
    stations: [12],
    diameter: 20,
  };
  const prepared = prepareSetup(joint, setup, materialOf('303'));
  return judgeCut(prepared, workshop.lathe, { depth: cutter.width ?? 2, feed: 0.04, speed: 125 });
};

describe('the blade of a cutter', () => {
  test('stands out as far as the cutter does when it parts, and as far as it is ground when it grooves [common practice]', () => {
    expect(bladeOf(parting).reach).toBe(20);
    expect(bladeOf({ ...parting, kind: 'grooving', maxDepth: 6 }).reach).toBe(7);
    expect(bladeOf({ ...parting, kind: 'grooving', maxDepth: 60 }).reach).toBe(20);
    expect(bladeOf({ ...parting, bladeHeight: 9 }).height).toBe(9);
    expect(hasBlade({ kind: 'turning', width: 2 })).toBe(false);
  });

  test('gives the more the longer, the lower and the narrower it is', () => {
    const { down, dips } = edgeGive(parting);
    for (const change of [{ overhang: 25 }, { bladeHeight: 9 }, { width: 1 }]) {
      const other = edgeGive({ ...parting, ...change });
      expect(other.down).toBeGreaterThan(down);
      expect(other.dips).toBeGreaterThan(dips);
    }
  });

  test('ground from a shank gives less than the blade alone would over the whole overhang, and more than without the shank', () => {
    const ground: CuttingTool = { ...parting, kind: 'grooving', maxDepth: 6, overhang: 20, shank: 10, bladeHeight: 10 };
    const { down } = edgeGive(ground);
    expect(down).toBeLessThan(edgeGive({ ...ground, kind: 'parting' }).down);
    expect(down).toBeGreaterThan(edgeGive({ ...ground, overhang: 7 }).down);
  });

  test('rings at 1.875² √(E I/ρ A)/2πL² within what the static shape allows [FEM1]', () => {
    const long: CuttingTool = { ...parting, overhang: 60, bladeHeight: 6 };
    const exact = (1.875104 ** 2 / (2 * Math.PI * 60 ** 2)) * Math.sqrt((206_000 * 6 ** 2 * 1000) / (12 * 7.85e-6));
    expect(bladeMode(long).frequency / exact).toBeGreaterThan(0.97);
    expect(bladeMode(long).frequency / exact).toBeLessThan(1.02);
  });

  test('as a mode it brings the edge in by what the cutting force bends it, newton for newton', () => {
    const { stiffness, dip } = bladeMode(parting);
    const { down, dips } = edgeGive(parting);
    // Under a newton downwards the mode moves by sin/k, of which cos goes away from the work.
    expect((Math.sin(dip) * Math.cos(dip)) / stiffness).toBeCloseTo(-dips, 12);
    expect(Math.sin(dip) ** 2 / stiffness).toBeCloseTo(down, 12);
  });
});

describe('a plunge with a blade that whips', () => {
  const stout: CuttingTool = { ...parting, overhang: 10, bladeHeight: 16 };
  const slender: CuttingTool = { ...parting, overhang: 30, bladeHeight: 8 };

  test('sings sooner than one with a stout blade', () => {
    expect(judged(slender).chatter.margin.middle).toBeLessThan(judged(stout).chatter.margin.middle);
    expect(judged(slender).chatter.probability).toBeGreaterThanOrEqual(judged(stout).chatter.probability);
  });

  test('is said to dig in, as a stout one is not', () => {
    const ids = (cutter: CuttingTool) => judged(cutter).findings.map((f) => f.id);
    expect(edgeAway(slender)).toBeLessThan(0);
    expect(ids(slender)).toContain('lathe.blade-digs-in');
    expect(ids(stout)).not.toContain('lathe.blade-digs-in');
  });

  test('says so when its height was not told', () => {
    const ids = (cutter: CuttingTool) => judged(cutter).findings.map((f) => f.id);
    expect(ids(parting)).toContain('lathe.blade-assumed');
    expect(ids(stout)).not.toContain('lathe.blade-assumed');
  });

  test('is stopped where the blade would break', () => {
    const weak: CuttingTool = { ...parting, width: 1, overhang: 40, bladeHeight: 4 };
    expect(judged(weak).findings.find((f) => f.id === 'lathe.blade-stress')?.level).toBe('stop');
  });
});
