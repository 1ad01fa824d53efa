import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { erfcx } from '../numerics/error-function.ts';
import { logWornReading, quickErfcx, quickWornReading } from './worn-reading.ts';

const rows = referenceRows('recover', 'worn-reading').map((row) => ({
  above: Number(row.above_mm),
  u: Number(row.u_mm),
  wear: Number(row.wear_mm),
  scipy: Number(row.log_density_scipy),
  digits: Number(row.log_density_60_digits),
}));

const relative = (a: number, b: number) => Math.abs(a - b) / Math.max(1, Math.abs(b));

test('the density keeps 11 figures from u/λ of 10⁻⁵ to 50 000 and 4000 uncertainties out [mpmath, 60 digits]', ({
  task,
}) => {
  for (const { above, u, wear, digits } of rows) {
    expect(relative(logWornReading(above, u, wear), digits), `${above} ${u} ${wear}`).toBeLessThan(2e-11);
  }
  countOutside(task, rows.length);
});

test('it agrees with scipy.stats.exponnorm wherever scipy agrees with 60 digits', ({ task }) => {
  const sound = rows.filter((r) => Number.isFinite(r.scipy) && relative(r.scipy, r.digits) < 1e-9);
  expect(sound.length).toBeGreaterThan(100);
  for (const { above, u, wear, scipy } of sound)
    expect(relative(logWornReading(above, u, wear), scipy)).toBeLessThan(2e-9);
  countOutside(task, sound.length);
});

test('the quick density agrees with the exact one wherever it is a number worth having', () => {
  for (const { above, u, wear } of rows.filter((r) => r.digits > -600 && r.u / r.wear < 30)) {
    const z = above / u;
    const quick = quickWornReading(z, Math.exp((-z * z) / 2), u / wear, wear);
    expect(relative(Math.log(quick), logWornReading(above, u, wear))).toBeLessThan(1e-7);
  }
});

test('the quick erfcx agrees with the exact one to 10⁻⁷ of itself', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (x) => {
      expect(Math.abs(quickErfcx(x) / erfcx(x) - 1)).toBeLessThan(1e-7);
    }),
  );
});

test('the density holds the whole probability, and its mean lies λ below the size as made', () => {
  const [u, wear, step] = [0.004, 0.02, 0.0002];
  let [area, mean] = [0, 0];
  for (let y = -0.6; y < 0.05; y += step) {
    const p = Math.exp(logWornReading(y, u, wear)) * step;
    area += p;
    mean += y * p;
  }
  expect(area).toBeCloseTo(1, 6);
  expect(mean).toBeCloseTo(-wear, 5);
});

test('refuses an uncertainty or a wear of nought', () => {
  expect(() => logWornReading(0, 0, 0.01)).toThrow('uncertainty');
  expect(() => logWornReading(0, 0.01, 0)).toThrow('wear');
});
