import { expect, test } from 'vitest';
import { referenceRows } from '../../../test/reference.ts';
import { degrees } from '../../units/quantities.ts';
import {
  type GeneralClass,
  generalAngleDeviation,
  generalDeviation,
  generalEdgeDeviation,
} from './general-tolerances.ts';

const isClass = (text: string | undefined): text is GeneralClass => /^[fmcv]$/.test(text ?? '');

test('general tolerances stand as in the reference table [ISO 2768-1 tables 1 to 3 as printed in HE-2768]', () => {
  const rows = referenceRows('limits-fits', 'general-tolerances');
  let compared = 0;
  for (const row of rows) {
    if (!isClass(row.class)) throw new Error(`class ${row.class}`);
    const first = Number(row.size_over_mm);
    for (const size of [
      first === 0.5 ? 0.5 : first + 0.01,
      row.size_to_mm === '' ? first + 1000 : Number(row.size_to_mm),
    ]) {
      const plusMinus =
        row.table === 'linear'
          ? generalDeviation(size, row.class)
          : row.table?.startsWith('angle')
            ? degrees(generalAngleDeviation(size, row.class)) * 60
            : generalEdgeDeviation(size, row.class);
      expect(plusMinus).toBeCloseTo(Number(row.deviation_plus_minus_mm || row.deviation_plus_minus_arcmin), 9);
      compared++;
    }
  }
  expect(compared).toBe(2 * 62);
});

test.each([
  ['below 0.5 mm', 0.4, 'm'],
  ['class v up to 3 mm', 3, 'v'],
  ['class f over 2000 mm', 2001, 'f'],
  ['beyond the table', 4001, 'c'],
  ['nothing', 0, 'm'],
  ['no number', Number.NaN, 'm'],
] as const)('%s there is no general tolerance', (_what, size, generalClass) => {
  expect(() => generalDeviation(size, generalClass)).toThrow('state the tolerance');
});

test('a coarser class is never tighter', () => {
  for (const size of [0.5, 4, 10, 50, 200, 800, 1500]) {
    const [f, m, c] = (['f', 'm', 'c'] as const).map((k) => generalDeviation(size, k));
    expect(f).toBeLessThan(m ?? 0);
    expect(m).toBeLessThan(c ?? 0);
  }
});
