import { describe, expect, test } from 'vitest';
import { seeded } from '../numerics/seeded.ts';
import { conicDepth, fitCrown } from './crown.ts';

const radii = [0, 2, 4, 6, 8, 10, 12, 14, 16, 17, 18, 19];

/** Noise of 4 µm from a seeded source, near enough normal. */
function noisy(seed: number) {
  const random = seeded(seed);
  return () => 0.004 * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** Exact depth of a sphere by Pythagoras, apart from the formula under test. */
const sphere = (r: number, R: number) => R - Math.sqrt(R * R - r * r);

describe('domes from depth readings', () => {
  test('conic depth of a sphere is that of Pythagoras', () => {
    for (const r of radii) expect(conicDepth(r, 1 / 50, 0)).toBeCloseTo(sphere(r, 50), 10);
  });

  test('a sphere of 50 mm is found as one, within three of its stated uncertainties', () => {
    const noise = noisy(3);
    const [best] = fitCrown(
      radii.map((radius) => ({ radius, depth: sphere(radius, 50) + noise() })),
      0.004,
      false,
    );
    expect(best?.shape).toBe('sphere');
    expect(Math.abs((best?.radius ?? 0) - 50)).toBeLessThan(3 * (best?.radiusUncertainty ?? 0));
    expect(best?.radiusUncertainty).toBeLessThan(0.3);
  });

  test('a cone of 60° to the axis is found as one', () => {
    const noise = noisy(4);
    const [best] = fitCrown(
      radii.map((radius) => ({ radius, depth: radius / Math.tan(Math.PI / 3) + noise() })),
      0.004,
      true,
    );
    expect(best?.shape).toBe('cone');
    expect(best?.slope).toBeCloseTo(1 / Math.tan(Math.PI / 3), 2);
  });

  test('an ellipse with half axes 8 along and 20 across is no sphere', () => {
    const noise = noisy(5);
    const depth = (r: number) => 8 - 8 * Math.sqrt(1 - (r / 20) ** 2);
    const [best] = fitCrown(
      radii.map((radius) => ({ radius, depth: depth(radius) + noise() })),
      0.004,
      false,
    );
    expect(best?.shape).toBe('ellipse');
    expect((best?.radius ?? 0) / (1 + (best?.conic ?? 0))).toBeCloseTo(8, 0);
  });

  test('wear on the crown pulls the radius less than plain least squares does', () => {
    const noise = noisy(6);
    const readings = radii.map((radius, i) => ({ radius, depth: sphere(radius, 50) + noise() + (i < 4 ? 0.06 : 0) }));
    const off = (wears: boolean) => {
      const found = fitCrown(readings, 0.004, wears).find((f) => f.shape === 'sphere');
      return Math.abs((found?.radius ?? 0) - 50);
    };
    expect(off(true)).toBeLessThan(0.4 * off(false));
    const found = fitCrown(readings, 0.004, true).find((f) => f.shape === 'sphere');
    expect(found?.wear[1]).toBeGreaterThan(0.04);
    expect(found?.wear[9]).toBeLessThan(0.02);
  });

  test('depths at two distances say nothing of the shape', () => {
    expect(() =>
      fitCrown(
        [
          { radius: 0, depth: 0 },
          { radius: 5, depth: 1 },
          { radius: -5, depth: 1 },
        ],
        0.01,
        true,
      ),
    ).toThrow('three');
  });

  test('readings that are all alike give finite answers', () => {
    for (const f of fitCrown(
      [0, 1, 2, 3].map((radius) => ({ radius, depth: 5 })),
      0.01,
      true,
    )) {
      expect(Number.isFinite(f.probability)).toBe(true);
      expect(Number.isFinite(f.deviation)).toBe(true);
    }
  });
});
