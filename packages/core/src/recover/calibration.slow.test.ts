import { beforeAll, describe, expect, test } from 'vitest';
import { inventPart, type Law, modelLaw } from '../../test/invented-parts.ts';
import { below, recoverOne } from '../../test/recover-one.ts';
import { seeded } from '../numerics/seeded.ts';

/** Simulation-based calibration: how the true size stands in the posterior, over many invented parts. */
function calibrate(seed: number, parts: number, law: Law) {
  const random = seeded(seed);
  const bins = new Array<number>(20).fill(0);
  let [half, wide, designs, chance, sizes] = [0, 0, 0, 0, 0];
  for (let i = 0; i < parts; i++) {
    const part = inventPart(random, law);
    const found = recoverOne(part.readings, { role: part.role, isShaft: part.isShaft, isDiameter: true }, law.habits);
    if (!found) throw new Error('nothing found');
    const top = found.ranked[0];
    chance += top?.probability ?? 0;
    if (top?.hypothesis.nominal === part.nominal && top?.hypothesis.toleranceClass === part.toleranceClass) designs++;
    for (const density of found.densities) {
      const p = below(density, part.made[density.specimen] ?? Number.NaN);
      bins[Math.min(19, Math.floor(p * 20))] = (bins[Math.min(19, Math.floor(p * 20))] ?? 0) + 1;
      sizes++;
      if (p > 0.25 && p < 0.75) half++;
      if (p > 0.025 && p < 0.975) wide++;
    }
  }
  const expected = sizes / 20;
  const chiSquare = bins.reduce((sum, n) => sum + (n - expected) ** 2 / expected, 0);
  return {
    half: half / sizes,
    wide: wide / sizes,
    chiSquare,
    designs: designs / parts,
    stated: chance / parts,
    bins,
    sizes,
  };
}

describe('where the model is right', () => {
  let found: ReturnType<typeof calibrate>;
  beforeAll(() => {
    found = calibrate(1, 2000, modelLaw);
  });

  test('the rank of the true size is uniform: χ² of 20 bins under its 99.9 % point, 43.8 [distribution of χ², 19 degrees]', () => {
    expect(found.sizes).toBeGreaterThan(3500);
    expect(found.chiSquare).toBeLessThan(43.8);
  });

  test('95 % intervals hold 93 to 97 % of the true sizes, 50 % intervals 47 to 53 %', () => {
    expect(found.wide).toBeGreaterThan(0.93);
    expect(found.wide).toBeLessThan(0.97);
    expect(found.half).toBeGreaterThan(0.47);
    expect(found.half).toBeLessThan(0.53);
  });

  test('the first-ranked design is right as often as it is said to be', () => {
    expect(Math.abs(found.designs - found.stated)).toBeLessThan(0.03);
  });
});

describe('where wear follows another law, gauges read in steps and makers aim', () => {
  const laws: [string, Partial<Law>][] = [
    ['half-normal wear', { wear: 'half-normal' }],
    ['wear of two hits (gamma)', { wear: 'gamma' }],
    ['even wear up to a limit', { wear: 'uniform' }],
    ['one wear all over', { wear: 'all alike' }],
    ['limits of gauges and steps', { steps: true }],
    ['makers who aim at the middle', { maker: 'middle' }],
    ['makers who stop just inside', { maker: 'just inside' }],
  ];
  test.each(laws)('%s: intervals of 95 per cent still hold 90 to 99.5', (_, change) => {
    const found = calibrate(7, 400, { ...modelLaw, ...change });
    expect(found.wide).toBeGreaterThan(0.9);
    expect(found.wide).toBeLessThan(0.995);
  });
});
