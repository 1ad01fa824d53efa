import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { classesForLimits, fitsForClearance, roles, suggestFits } from './choose.ts';
import { classFit } from './fit.ts';
import { limitDeviations } from './limit-deviations.ts';
import { preferredFit } from './preferred-fits.ts';

test('printed limits are held snugly by the class they were printed for', ({ task }) => {
  let checked = 0;
  for (const row of referenceRows('limits-fits', 'limit-deviations-check')) {
    if (row.upper_um === '' || row.lower_um === '' || /^js/i.test(row.class ?? '')) continue;
    const nominal = Number(row.size_to_mm);
    const measured = { max: nominal + Number(row.upper_um) / 1000, min: nominal + Number(row.lower_um) / 1000 };
    const found = classesForLimits(nominal, measured, row.feature === 'hole' ? 'hole' : 'shaft');
    const snug = found.filter((c) => c.slack < 1e-6).map((c) => c.toleranceClass);
    expect(snug).toContain(row.class);
    checked++;
  }
  expect(checked).toBeGreaterThan(200);
  countOutside(task, checked);
});

test('every class offered holds the measured limits, and the slack grows down the list', () => {
  const size = fc.double({ min: 3, max: 400, noNaN: true });
  const deviation = fc.double({ min: -0.2, max: 0.2, noNaN: true });
  const width = fc.double({ min: 0, max: 0.1, noNaN: true });
  fc.assert(
    fc.property(
      size,
      deviation,
      width,
      fc.constantFrom('hole' as const, 'shaft' as const),
      (nominal, low, w, feature) => {
        const measured = { min: nominal + low, max: nominal + low + w };
        const found = classesForLimits(nominal, measured, feature);
        found.forEach((c, i) => {
          expect(limitDeviations(nominal, c.toleranceClass)).toEqual({ upper: c.upper, lower: c.lower });
          expect(nominal + c.upper).toBeGreaterThanOrEqual(measured.max - 1e-8);
          expect(nominal + c.lower).toBeLessThanOrEqual(measured.min + 1e-8);
          if (i > 0) expect(c.slack).toBeGreaterThanOrEqual(found[i - 1]?.slack ?? 0);
        });
      },
    ),
  );
});

test('a wanted clearance is kept by every fit offered, preferred fits before others', () => {
  const wanted = { min: 0.02, max: 0.12 };
  for (const basis of ['hole', 'shaft'] as const) {
    const found = fitsForClearance(40, wanted, basis);
    expect(found.length).toBeGreaterThan(3);
    for (const f of found) {
      expect(f.minClearance).toBeGreaterThanOrEqual(wanted.min);
      expect(f.maxClearance).toBeLessThanOrEqual(wanted.max);
      expect((basis === 'hole' ? f.hole : f.shaft).toLowerCase()).toMatch(/^h\d/);
    }
    const named = found.map((f) => f.name !== '');
    expect(named).toEqual(named.toSorted((a, b) => Number(b) - Number(a)));
  }
});

test('a clearance of 25 to 75 µm at 50 mm is H7/f7 [ND-225]', ({ task }) => {
  expect(fitsForClearance(50, { min: 0.025, max: 0.075 }, 'hole')[0]).toMatchObject({ hole: 'H7', shaft: 'f7' });
  countOutside(task, 1);
});

test('a range narrower than any pair of workshop grades finds nothing', () => {
  expect(fitsForClearance(50, { min: 0.01, max: 0.012 }, 'hole')).toEqual([]);
});

test('every role names fits of the preferred list, and gives limits at any size', () => {
  for (const [role, { fits }] of Object.entries(roles)) {
    for (const name of fits) expect(preferredFit(name), `${role} ${name}`).toBeDefined();
  }
  for (const f of suggestFits('sliding seal', 12, 'hole')) {
    const { kind, maxClearance } = classFit(12, f.hole, f.shaft);
    expect([f.kind, f.maxClearance]).toEqual([kind, maxClearance]);
    expect(f.kind).toBe('clearance');
  }
  expect(suggestFits('press', 25, 'shaft').map((f) => f.shaft)).toEqual(['h6', 'h6', 'h6']);
});

test('bad input is refused', () => {
  expect(() => classesForLimits(600, { max: 600, min: 600 }, 'hole')).toThrow('500 mm');
  expect(() => classesForLimits(40, { max: 39, min: 40 }, 'hole')).toThrow('not below');
  expect(() => classesForLimits(40, { max: 40, min: 39.99 }, 'shaft', '25')).toThrow('01, 0, 1');
  expect(() => fitsForClearance(40, { max: 0.02, min: 0.05 }, 'hole')).toThrow('above the smallest');
});

test('looking through all classes takes less than 2 ms', () => {
  const best = Math.min(
    ...Array.from({ length: 10 }, (_, n) => {
      const started = performance.now();
      classesForLimits(40 + n, { max: 40 + n - 0.025, min: 40 + n - 0.045 }, 'shaft', '01');
      return performance.now() - started;
    }),
  );
  expect(best).toBeLessThan(2);
});
