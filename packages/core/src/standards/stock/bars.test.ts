import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { limitDeviations } from '../fits/limit-deviations.ts';
import { barTolerance, type Supply, supplies } from './bar-tolerances.ts';
import { inchBars, massPerMetre, metricBars, nextBar, nextBars } from './bars.ts';

const rows = referenceRows('limits-fits', 'bar-stock');
const ofRecord = (record: string) => rows.filter((row) => row.record === record);

test('listed sizes are those of the reference list', () => {
  const metric = ofRecord('stock size').filter((row) => row.description?.includes('metric'));
  const inch = ofRecord('stock size').filter((row) => row.description?.includes('inch'));
  expect(metricBars.map((b) => b.diameter)).toEqual(
    [...new Set(metric.map((row) => Number(row.size_mm)))].toSorted((a, b) => a - b),
  );
  expect(inchBars.map((b) => b.label)).toEqual(inch.map((row) => row.size));
  inchBars.forEach((b, i) => {
    expect(Math.abs(b.diameter - Number(inch[i]?.size_mm))).toBeLessThan(0.0006);
  });
});

test('masses of stainless bar agree with the stockholder’s list [SJ-bar, density 7950 kg/m³]', ({ task }) => {
  const printed = rows.filter((row) => row.mass_kg_per_m !== '');
  expect(printed.length).toBe(24);
  for (const row of printed) {
    // Printed to two or three figures, some cut rather than rounded.
    const room = Math.max(0.011, 0.005 * Number(row.mass_kg_per_m));
    expect(Math.abs(massPerMetre(Number(row.size_mm), 7950) - Number(row.mass_kg_per_m))).toBeLessThanOrEqual(room);
  }
  countOutside(task, printed.length);
});

test('bar tolerances by class agree with the bar standard and with stockholders’ sheets [EV-10278, RB-ss]', ({
  task,
}) => {
  const printed = ofRecord('tolerance').filter((row) => /^\d+ to \d+$/.test(row.size ?? '') && row.class !== '');
  expect(printed.length).toBe(76);
  for (const row of printed) {
    const [over = 0, to = 0] = (row.size ?? '').split(' to ').map(Number);
    for (const diameter of [over + 0.01, to]) {
      const { upper, lower } = limitDeviations(diameter, row.class ?? '');
      expect([row.class, diameter, upper * 1000, lower * 1000]).toEqual([
        row.class,
        diameter,
        Number(row.upper_um),
        expect.closeTo(Number(row.lower_um), 6),
      ]);
    }
  }
  countOutside(task, printed.length * 2);
});

test('h9 and h11 in inches are the metric classes converted [SX-inch]', ({ task }) => {
  const printed = rows.filter((row) => row.source === 'SX-inch');
  expect(printed.length).toBe(14);
  for (const row of printed) {
    const inches = Number(/-0\.\d+/.exec(row.note ?? '')?.[0]);
    const upTo = /to (.*) in$/.exec(row.size ?? '')?.[1] ?? '';
    const size = upTo.split('-').reduce(
      (sum, piece) =>
        sum +
        (piece
          .split('/')
          .map(Number)
          .reduce((a, b) => a / b) || 0),
      0,
    );
    // The inch ranges end a little before or after the metric ones, so the size is taken from inside the range.
    const { lower } = limitDeviations(size * 25.4 * 0.94, row.class ?? '');
    // h11 up to 1/8 in is printed 0.00240, a rounding up of 60 µm (0.00236).
    const room = inches === -0.0024 ? 0.00004 : 0.000011;
    expect(Math.abs(lower / 25.4 - inches)).toBeLessThanOrEqual(room);
  }
  countOutside(task, printed.length);
});

test('tables of their own stand as printed [AB-970, A108, DS-rod]', () => {
  const supplyOf: [RegExp, Supply][] = [
    [/BS 970-3/, 'BS 970 drawn'],
    [/to 0\.28/, 'A108 low carbon'],
    [/over 0\.28/, 'A108 medium carbon'],
    [/drill rod/, 'tool steel rod'],
  ];
  let compared = 0;
  for (const row of ofRecord('tolerance')) {
    const supply = row.class === '' ? supplyOf.find(([words]) => words.test(row.description ?? ''))?.[1] : undefined;
    if (!supply) continue;
    const last = Number(/([\d.]+)\D*$/.exec(row.size ?? '')?.[1]);
    const tolerance = barTolerance(row.size?.endsWith(' in') ? last * 25.4 : last, supply);
    expect(Math.round((tolerance?.upper ?? Number.NaN) * 1000)).toBe(Number(row.upper_um));
    expect(Math.round((tolerance?.lower ?? Number.NaN) * 1000)).toBe(Number(row.lower_um));
    compared++;
  }
  expect(compared).toBe(16);
});

test('the classes go with the ways of supply as the bar standards say [TC-10278, SS-norm]', () => {
  const classes = ofRecord('which class').map((row) => row.class);
  const offered = Object.keys(supplies).map((s) => barTolerance(20, s as Supply)?.toleranceClass);
  for (const toleranceClass of classes) expect(offered).toContain(toleranceClass);
  expect(barTolerance(20, 'drawn')?.toleranceClass).toBe('h10');
  expect(barTolerance(20, 'ground')?.toleranceClass).toBe('h9');
});

test('the next bar can always be turned to the diameter, even at its smallest, and none smaller could', () => {
  const diameter = fc.double({ min: 0.5, max: 49, noNaN: true });
  const supply = fc.constantFrom<Supply>('drawn', 'ground', 'turned');
  fc.assert(
    fc.property(
      diameter,
      fc.constantFrom('mm' as const, 'in' as const, 'either' as const),
      supply,
      (wanted, list, how) => {
        const [first] = nextBars(wanted, list, how);
        const listed = list === 'mm' ? metricBars : list === 'in' ? inchBars : [...metricBars, ...inchBars];
        expect(first?.least).toBeGreaterThanOrEqual(wanted - 1e-9);
        for (const bar of listed) {
          const least = bar.diameter + (barTolerance(bar.diameter, how)?.lower ?? 0);
          if (least >= wanted) expect(bar.diameter).toBeGreaterThanOrEqual(first?.diameter ?? 0);
        }
      },
    ),
  );
});

test('a 12 mm drawn bar cannot be relied on for 11.99 mm, a ground one down to 11.957 can for 11.95', () => {
  expect(nextBars(11.99, 'mm', 'drawn')[0]?.label).toBe('13 mm');
  expect(nextBars(11.95, 'mm', 'ground')[0]?.label).toBe('12 mm');
});

test('without further wishes the next bar is drawn metric bar, and beyond the list there is none', () => {
  expect(nextBar(11.95).label).toBe('13 mm');
  expect(nextBar(11.9).label).toBe('12 mm');
  expect(() => nextBar(200)).toThrow('largest listed bar');
});

test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('a diameter of %s is refused', (diameter) => {
  expect(() => nextBars(diameter, 'mm', 'drawn')).toThrow('over 0');
  expect(() => massPerMetre(diameter, 7850)).toThrow('over 0');
});
