/** Curved sections from their points: what an arc, a cone or a dome is found as, and what stays free. */
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import type { Gauge, Reading } from '../evidence/schema.ts';
import { recover } from './recover.ts';

const gauges: Gauge[] = [
  { id: 'm', name: 'micrometer', kind: 'outside micrometer', resolution: 0.001, permissibleError: 0.004 },
  { id: 'd', name: 'depth gauge', kind: 'depth gauge', resolution: 0.001, permissibleError: 0.005 },
];

function curveOf(of: string, points: readonly (readonly [along: number, value: number])[], gauge = 'm') {
  const readings = points.map(
    ([along, value], i): Reading => ({ id: `r${i}`, of, value, along, gauge, condition: 'protected' }),
  );
  const result = recover({ evidence: { readings }, gauges });
  return { curve: result.curves[0], result };
}

/** Steps of a micrometre up and down, the same at every run. */
const jitter = (i: number) => [0.001, -0.001, 0.0005, -0.0005][i % 4] ?? 0;

describe('a curved section', () => {
  test('a dome profile of eleven points is an arc of the radius of its least-squares circle [circle-fit-results F45]', ({
    task,
  }) => {
    const points = referenceRows('metrology', 'circle-fit-data')
      .filter((r) => r.dataset === 'DOME11')
      .map((r) => [Number(r.x) + 20, 2 * Number(r.y)] as const);
    const row = referenceRows('metrology', 'circle-fit-results').find((r) => r.id === 'F45');
    const { curve } = curveOf('dome.profile', points);
    const [best] = curve?.shapes ?? [];
    expect(points).toHaveLength(11);
    expect(best?.shape).toBe('arc');
    expect(best?.bulge).toBe('outward');
    expect(best?.radius).toBeCloseTo(Number(row?.recomputed_r), 5);
    countOutside(task, 1);
  });

  test('a waist of radius 40 is an arc that bulges inward', () => {
    const points = [0, 5, 10, 15, 20].map(
      (z, i) => [z, 2 * (50 - Math.sqrt(1600 - (z - 10) ** 2)) + jitter(i)] as const,
    );
    const [best] = curveOf('waist.profile', points).curve?.shapes ?? [];
    expect(best).toMatchObject({ shape: 'arc', bulge: 'inward' });
    expect(Math.abs((best?.radius ?? 0) - 40)).toBeLessThan(3 * (best?.uncertainty ?? 0));
  });

  test('a straight side is a cone with the diameters it was made to', () => {
    const points = [0, 6, 12, 18].map((z, i) => [z, 20 - z / 10 + jitter(i)] as const);
    const [best] = curveOf('side.profile', points).curve?.shapes ?? [];
    expect(best?.shape).toBe('cone');
    expect(best?.ends?.[0].size).toBeCloseTo(20, 2);
    expect(best?.ends?.[1].size).toBeCloseTo(18.2, 2);
  });

  test('an S-shaped handle is neither: it stays free, through its points', () => {
    const points = [0, 4, 8, 12, 16, 20, 24].map((z) => [z, 16 + 3 * Math.sin(z / 4)] as const);
    const { curve } = curveOf('handle.profile', points);
    expect(curve?.shapes[0]?.shape).toBe('free');
    expect(curve?.fitted.map((p) => [p.along, p.size])).toEqual(points.map(([z, d]) => [z, d]));
  });

  test('depths of a dome of radius 50 are those of a sphere [Pythagoras]', () => {
    const points = [0, 5, 10, 15, 20].map((r, i) => [r, 2 + 50 - Math.sqrt(2500 - r * r) + jitter(i)] as const);
    const [best] = curveOf('dome.depths', points, 'd').curve?.shapes ?? [];
    expect(best?.shape).toBe('sphere');
    expect(Math.abs((best?.radius ?? 0) - 50)).toBeLessThan(3 * (best?.uncertainty ?? 0));
  });

  test('two places, and readings without a place, say so and give no curve', () => {
    const { curve, result } = curveOf('dome.profile', [
      [0, 20],
      [5, 19],
    ]);
    expect(curve).toBeUndefined();
    expect(result.findings.map((f) => f.id)).toContain('evidence.too-few-places');
  });

  test('points of a curve are no sizes: none is recovered from them', () => {
    const points = [0, 5, 10].map((z) => [z, 20 - z] as const);
    expect(curveOf('bowl.profile', points).result.sizes).toEqual([]);
  });
});
