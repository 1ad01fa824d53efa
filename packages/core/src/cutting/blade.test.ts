import { expect, test } from 'vitest';
import { bladeGive, bladeStress } from './blade.ts';

const blade = { thickness: 2, height: 12, reach: 20, youngsModulus: 210_000 };
const inertia = (2 * 12 ** 3) / 12;

test('a blade bends as a cantilever: F L³/(3 E I) and 6/5 of the mean shear, σ = M/W [roark-8.1 case 1a]', () => {
  const sheared = (1.2 * 20) / ((210_000 / 2.6) * 2 * 12);
  expect(bladeGive(blade).down).toBeCloseTo(20 ** 3 / (3 * 210_000 * inertia) + sheared, 12);
  expect(bladeStress(blade, 500)).toBeCloseTo((500 * 20 * 6) / inertia, 9);
});

test('its edge, half a height above the middle, leans in and is pushed back as its end turns: F L²/(2 E I), M L/(E I) [roark-8.1 cases 1a, 3a]', () => {
  const { dips, back } = bladeGive(blade);
  expect(dips).toBeCloseTo(((20 ** 2 / (2 * 210_000 * inertia)) * 12) / 2, 12);
  expect(back).toBeCloseTo((20 / (210_000 * inertia)) * 6 ** 2 + 20 / (210_000 * 2 * 12), 12);
});

/** Bent piece by piece: curvature M/EI summed twice along the blade, with nothing of the formulas above. */
test('summed up piece by piece it comes out the same', () => {
  const pieces = 20_000;
  const dx = blade.reach / pieces;
  let [slope, sinks] = [0, 0];
  for (let i = 0; i < pieces; i++) {
    const x = (i + 0.5) * dx;
    slope += ((blade.reach - x) / (blade.youngsModulus * inertia)) * dx;
    sinks += slope * dx;
  }
  const { down, dips } = bladeGive(blade);
  expect(dips / ((slope * blade.height) / 2)).toBeCloseTo(1, 4);
  expect((down - (1.2 * 20) / ((210_000 / 2.6) * 24)) / sinks).toBeCloseTo(1, 3);
});

test.each(['thickness', 'height', 'reach', 'youngsModulus'] as const)('a blade without %s is refused', (name) => {
  expect(() => bladeGive({ ...blade, [name]: 0 })).toThrow(name);
  expect(() => bladeStress({ ...blade, [name]: Number.NaN }, 100)).toThrow(name);
});
