/** What the recovered limits are typed as is read back to the very limits. */
import { describe, expect, test } from 'vitest';
import { parseTolerancedSize, sizeLimits } from '../standards/fits/toleranced-size.ts';
import { asTyped } from './as-typed.ts';
import { hypothesesFor } from './hypotheses.ts';

const read = (text: string, units: 'mm' | 'in', general?: 'f' | 'm' | 'c') =>
  sizeLimits(parseTolerancedSize(text, units), general);

describe('limits as typed', () => {
  test.each(['mm', 'in'] as const)('every design near 12 mm, typed into a job in %s, keeps its limits', (units) => {
    for (const isShaft of [true, false])
      for (const isDiameter of [true, false]) {
        const designs = hypothesesFor({ from: 11.9, to: 12.1, role: 'sliding', isShaft, isDiameter, specimens: 1 });
        expect(designs.length).toBeGreaterThan(10);
        for (const d of designs) {
          const limits = read(asTyped(d, units, undefined), units);
          expect(Math.abs(limits.min - d.min), d.written).toBeLessThan(0.0014);
          expect(Math.abs(limits.max - d.max), d.written).toBeLessThan(0.0014);
        }
      }
  });

  test('a class is typed as it is said, and with its unit where inches are understood', () => {
    // 12 f7: −16 and −34 µm [ISO 286-1].
    const f7 = { written: '12 f7', min: 11.966, max: 11.984 };
    expect(asTyped(f7, 'mm', 'm')).toBe('12 f7');
    expect(asTyped(f7, 'in', 'm')).toBe('12 mm f7');
  });

  test('where the general tolerance of the part says the same, the bare size is typed', () => {
    // Over 6 to 30 mm, medium: 0.2 mm either way [ISO 2768-1].
    const length = { written: '20 ISO 2768-m', min: 19.8, max: 20.2 };
    expect(asTyped(length, 'mm', 'm')).toBe('20');
    expect(read('20', 'mm', 'm')).toMatchObject({ min: 19.8, max: 20.2 });
    expect(asTyped(length, 'mm', 'f')).toBe('19.800 to 20.200');
    expect(asTyped(length, 'in', 'm')).toBe('20 mm');
  });

  test('thou of old drawings stay thou', () => {
    const thou = { written: '3/8 in −.0005/−.0015', min: 9.525 - 0.0381, max: 9.525 - 0.0127 };
    expect(asTyped(thou, 'mm', undefined)).toBe('3/8 in −.0005/−.0015');
  });
});
