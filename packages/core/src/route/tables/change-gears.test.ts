import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { DomainError } from '../../errors.ts';
import { mmPerInch } from '../../units/quantities.ts';
import { diameterForDrift, driftOver, type GearTrain, gearTrains, leadOf } from './change-gears.ts';

const rows = referenceRows('threads', 'change-gears-examples');
const teeth = (cell: string | undefined) => (cell ?? '').split('x').map(Number);
const light = [20, 24, 30, 33, 36, 38, 40, 44, 45, 48, 50, 55, 60, 65, 70, 75, 80, 127];

describe('the trains of the books', () => {
  test.each(rows.map((r) => [`${r.id} ${r.case} [${r.source}]`, r] as const))('%s', (_, row) => {
    const [drivers, driven] = [teeth(row.drivers), teeth(row.driven)];
    const meshes = drivers.map((driver, i) => ({ driver, driven: driven[i] ?? Number.NaN }));
    const lead = leadOf(Number(row.leadscrew_pitch_mm), meshes);
    expect(lead).toBeCloseTo(Number(row.achieved_pitch_mm), 4);
    const error = 1e6 * (lead / Number(row.target_pitch_mm) - 1);
    // Pitches are printed to a micrometre in a thousandth: 1e-6 mm in 1 mm is 1 ppm.
    expect(Math.abs(error - Number(row.error_ppm))).toBeLessThan(1);
    expect(mmPerInch / lead).toBeCloseTo(Number(row.achieved_tpi), 3);
  });

  const published = rows.filter((r) => r.source !== 'computed from formula');

  test.each(published.map((r) => [`${r.id} ${r.case} [${r.source}]`, r] as const))(
    'are found from their own wheels: %s',
    (_, row) => {
      const gears = [...teeth(row.drivers), ...teeth(row.driven)];
      const [best] = gearTrains(Number(row.target_pitch_mm), Number(row.leadscrew_pitch_mm), gears);
      expect(Math.abs(1e6 * (best?.error ?? 1))).toBeLessThan(Math.abs(Number(row.error_ppm)) + 1);
    },
  );

  test('give what is printed: exact pitches, or the threads an inch [TM-LIB, MEF-MYFORD, ROSE-p632, JONES1915-p93, CNC-CZ]', ({
    task,
  }) => {
    let compared = 0;
    for (const row of published) {
      const gears = teeth(row.drivers).map((driver, i) => ({ driver, driven: teeth(row.driven)[i] ?? Number.NaN }));
      const lead = leadOf(Number(row.leadscrew_pitch_mm), gears);
      const tpi = /([\d.]+) tpi(?:;|$)/.exec(row.published_result ?? '')?.[1];
      if (tpi) expect(Math.abs(mmPerInch / lead - Number(tpi))).toBeLessThan(0.0006);
      else expect(Math.abs(lead / Number(row.target_pitch_mm) - 1)).toBeLessThan(2e-6);
      const percent = /([\d.]+) %/.exec(row.published_result ?? '')?.[1];
      // Printed beside threads an inch of three decimals: known to half of the last.
      const off = 100 * Math.abs(mmPerInch / lead / nominal(row) - 1);
      if (percent) expect(Math.abs(off - Number(percent))).toBeLessThan(0.05 / nominal(row));
      compared += percent ? 2 : 1;
    }
    countOutside(task, compared);
    expect(compared).toBeGreaterThan(15);
  });
});

function nominal(row: Readonly<Record<string, string>>): number {
  return mmPerInch / Number(row.target_pitch_mm);
}

test('a 127 wheel cuts metric pitches exactly on an inch leadscrew [G06, G18]', () => {
  for (const pitch of [1, 1.5, 2]) expect(gearTrains(pitch, 3.175, light)[0]?.error).toBe(0);
});

test('without it the best is the nearest of all trains there are, found by going through every one', () => {
  const wheel = fc.integer({ min: 12, max: 100 });
  fc.assert(
    fc.property(
      fc.array(wheel, { minLength: 2, maxLength: 7 }),
      fc.double({ min: 0.3, max: 4, noNaN: true }),
      fc.constantFrom(1.5, 3, 25.4 / 8),
      (gears, lead, screw) => {
        const [best] = gearTrains(lead, screw, gears);
        const least = Math.min(...every(gears).map((ratio) => Math.abs((ratio * screw) / lead - 1)));
        expect(Math.abs(best?.error ?? 0)).toBeLessThanOrEqual(least + 1e-9);
        expect(Math.abs(best?.error ?? 0)).toBeGreaterThanOrEqual(least - 1e-9);
      },
    ),
    { numRuns: 200 },
  );
});

/** Ratios of every simple train and every compound one that clears its studs, by the plainest loops. */
function every(gears: readonly number[]): number[] {
  const ratios: number[] = [];
  const at = (i: number) => gears[i] ?? Number.NaN;
  for (let i = 0; i < gears.length; i++)
    for (let j = 0; j < gears.length; j++) {
      if (i === j) continue;
      ratios.push(at(i) / at(j));
      for (let k = 0; k < gears.length; k++)
        for (let l = 0; l < gears.length; l++) {
          if (new Set([i, j, k, l]).size < 4) continue;
          if (at(i) + at(j) < at(k) + 15 || at(k) + at(l) < at(j) + 15) continue;
          ratios.push((at(i) * at(k)) / (at(j) * at(l)));
        }
    }
  return ratios;
}

test('no wheel is used more often than it is there', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 18, max: 80 }), { maxLength: 12 }), (gears) => {
      for (const train of gearTrains(1.25, 3, gears)) {
        const left = [...gears];
        for (const wheel of train.meshes.flatMap((m) => [m.driver, m.driven])) {
          expect(left).toContain(wheel);
          left.splice(left.indexOf(wheel), 1);
        }
      }
    }),
  );
});

test('the least error comes first, and of equal ones the fewest wheels', () => {
  const trains = gearTrains(1.25, 1.5, light);
  const rank = (t: GearTrain) => 1e6 * Math.abs(t.error) + 1e-3 * t.meshes.length;
  expect(trains.map(rank)).toEqual(trains.map(rank).toSorted((a, b) => a - b));
  // 1.25 on 1.5 is 5 to 6: of 20 : 24, 30 : 36, 40 : 48 and 50 : 60 the largest wheels run smoothest.
  expect(trains[0]?.meshes).toEqual([{ driver: 50, driven: 60 }]);
});

test('two wheels alike make a train of one to one; one wheel alone makes none', () => {
  expect(gearTrains(1.5, 1.5, [40, 40])[0]).toMatchObject({ error: 0, meshes: [{ driver: 40, driven: 40 }] });
  expect(gearTrains(1.5, 1.5, [40])).toEqual([]);
});

test('twenty wheels are gone through in less than twenty milliseconds', () => {
  const twenty = [20, 21, 24, 28, 30, 33, 35, 38, 40, 42, 45, 48, 50, 55, 60, 63, 65, 70, 80, 100];
  gearTrains(0.9, 3.175, twenty);
  const times = Array.from({ length: 9 }, (_, i) => {
    const before = performance.now();
    gearTrains(0.7 + i / 8, 3.175, twenty);
    return performance.now() - before;
  });
  expect(times.toSorted((a, b) => a - b)[4]).toBeLessThan(20);
});

test('an error of 125 in a million over 20 mm is 2.5 µm, and makes a 60° bolt 4.3 µm thicker to its nut [G09, by hand]', () => {
  expect(driftOver(125e-6, 20)).toBeCloseTo(0.0025, 9);
  expect(diameterForDrift(0.0025, Math.PI / 3)).toBeCloseTo(0.00433, 5);
});

test('leads and leadscrews of nothing are refused', () => {
  expect(() => gearTrains(0, 1.5, light)).toThrow(DomainError);
  expect(() => gearTrains(1, 0, light)).toThrow(DomainError);
  expect(() => diameterForDrift(0.01, 0)).toThrow(DomainError);
});
