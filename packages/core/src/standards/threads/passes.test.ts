import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { firstInfeedLimit, usualPasses } from './passes.ts';

test('numbers of passes are the makers’ [TUNGALOY-p1636, INGERSOLL-p1262]', ({ task }) => {
  for (const row of referenceRows('threads', 'pass-counts')) {
    // The full-profile lists of the second maker are not held: they are for his own inserts.
    if (row.applies_to?.includes('full-profile')) continue;
    const maker = row.source === 'TUNGALOY-p1636' ? 'TUNGALOY-p1636' : 'INGERSOLL-p1262';
    expect(usualPasses(Number(row.pitch_mm), maker)).toEqual({
      least: Number(row.passes_min),
      most: Number(row.passes_max),
    });
    countOutside(task, 2);
  }
});

test('first infeeds by material are the maker’s inches, in millimetres [INGERSOLL-p1262]', ({ task }) => {
  const materials = [
    'low carbon steel',
    'high carbon steel',
    'alloy steel',
    'stainless steel',
    'non-ferrous / aluminium',
  ] as const;
  for (const row of referenceRows('threads', 'first-pass-by-material')) {
    const material = materials.find((m) => m === row.material);
    if (!material) throw new Error(`unknown material ${row.material}`);
    const published = Number(row.column_a_if_inch_mm);
    // Another maker's ceiling of 0.5 mm a pass caps the softest materials.
    expect(
      Math.abs(firstInfeedLimit(Number(row.pitch_mm), material) - Math.min(published, 0.5)),
      JSON.stringify(row),
    ).toBeLessThan(0.0051);
    countOutside(task, 1);
  }
});

test('between listed pitches both neighbours count; outside them there is no answer', () => {
  expect(usualPasses(1.27)).toEqual({ least: 5, most: 10 });
  expect(() => usualPasses(5)).toThrow('4.5 mm');
  expect(() => firstInfeedLimit(0.5, 'alloy steel')).toThrow('1 to 3 mm');
});
