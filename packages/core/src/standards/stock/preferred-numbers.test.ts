import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { nearestPreferred, type SeriesName, series } from './preferred-numbers.ts';

const names = Object.keys(series) as SeriesName[];
const rows = referenceRows('limits-fits', 'preferred-numbers');
const inReference = (name: SeriesName) =>
  name.startsWith('ANSI') ? `ANSI B4.2 ${name.slice(5)} choice size (mm)` : name;

test.each(names)('%s has the values of the reference list', (name) => {
  const listed = rows.filter((row) => row.series === inReference(name));
  expect(listed.length).toBeGreaterThan(4);
  expect(series[name].values).toEqual(listed.map((row) => Number(row.value)));
});

test('no series of the reference is left out', () => {
  expect(new Set(rows.map((row) => row.series))).toEqual(new Set(names.map(inReference)));
});

test('each basic series is a geometric one, within 1.3 % of 10^(i/n)', ({ task }) => {
  for (const n of [5, 10, 20, 40] as const) {
    series[`R${n}`].values.forEach((value, i) => {
      expect(Math.abs(value / 10 ** (i / n) - 1)).toBeLessThan(0.0127);
    });
    countOutside(task, n);
  }
});

test('the nearest value is in the series, in any decade, and no other is nearer', () => {
  const value = fc.double({ min: 0.001, max: 1e5, noNaN: true });
  fc.assert(
    fc.property(value, fc.constantFrom<SeriesName>('R5', 'R10', 'R40', "R'20", 'R"20'), (x, name) => {
      const { nearest, below = 0, above = Number.POSITIVE_INFINITY } = nearestPreferred(x, name);
      expect(below).toBeLessThanOrEqual(x * (1 + 1e-8));
      expect(above).toBeGreaterThanOrEqual(x * (1 - 1e-8));
      expect(Math.abs(x - nearest)).toBeLessThanOrEqual(Math.min(x - below, above - x) + 1e-8 * x);
      const mantissa = nearest / 10 ** Math.floor(Math.log10(nearest * 1.000001));
      expect(series[name].values.some((v) => Math.abs(v - mantissa) < 1e-9)).toBe(true);
    }),
  );
});

test('a value of the series is its own neighbour on both sides', () => {
  for (const v of [1, 1.6, 10, 63, 0.25, 1000]) {
    expect(nearestPreferred(v, 'R5')).toMatchObject({ nearest: v, below: v, above: v, off: 0 });
  }
});

test('beyond the listed sizes only one neighbour is known', () => {
  expect(nearestPreferred(700, 'ANSI first')).toMatchObject({ nearest: 500, below: 500, above: undefined });
  expect(nearestPreferred(0.4, 'ANSI first')).toMatchObject({ nearest: 1, below: undefined, above: 1 });
});

test.each([0, -3, Number.NaN, Number.POSITIVE_INFINITY])('%s is refused', (value) => {
  expect(() => nearestPreferred(value, 'R10')).toThrow('over 0');
});
