import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { DomainError } from '../errors.ts';
import { calliperError, micrometerError, permissibleError, serves } from './gauge-error.ts';

const rows = referenceRows('metrology', 'instrument-mpe');

describe('errors that gauges are allowed', () => {
  test('an outside micrometer is allowed what DIN 863-1 prints for its range [DIN862-863]', ({ task }) => {
    const printed = rows.filter((r) => r.instrument === 'outside micrometer' && r.characteristic === 'error limit');
    const within = printed.filter((r) => Number(r.range_to_mm) <= 500);
    expect(within.length).toBeGreaterThan(10);
    for (const r of within)
      expect(micrometerError(Number(r.range_to_mm)), r.range_to_mm).toBeCloseTo(Number(r.limit_um) / 1000, 9);
    countOutside(task, within.length);
  });

  test('a calliper is allowed what DIN 862 prints for its length and step [DIN862-863]', ({ task }) => {
    const printed = rows.filter(
      (r) => r.instrument?.startsWith('calliper') && r.characteristic === 'error limit, outside',
    );
    expect(printed.length).toBeGreaterThan(8);
    for (const r of printed) {
      const division = Number(r.division_mm?.split(' ')[0]);
      expect(calliperError(Number(r.range_to_mm), division, 'outside'), `${r.range_to_mm} by ${division}`).toBeCloseTo(
        Number(r.limit_um) / 1000,
        9,
      );
    }
    countOutside(task, printed.length);
  });

  test('inside and depth with a calliper add 20 µm [DIN862-863, MITU-CAL]', ({ task }) => {
    const extra = rows.filter((r) => r.instrument === 'calliper, any');
    for (const r of extra)
      expect(calliperError(50, 0.01, 'depth') - calliperError(50, 0.01, 'outside')).toBeCloseTo(
        Number(r.limit_um) / 1000,
        9,
      );
    expect(extra.length).toBe(2);
    countOutside(task, extra.length);
  });

  test("the owner's own figure goes before the standard", () => {
    const good = { id: 'm', name: 'm', kind: 'outside micrometer', permissibleError: 0.002 } as const;
    expect(permissibleError(good, 20, 'outside')).toBe(0.002);
  });

  test('refuses lengths that the tables do not cover', () => {
    expect(() => micrometerError(600)).toThrow(DomainError);
    expect(() => micrometerError(Number.NaN)).toThrow(DomainError);
    expect(() => calliperError(-1, 0.01, 'outside')).toThrow('0 to 1000 mm');
  });

  test('a micrometer of 0–25 does not reach 30 mm, nor into a bore', () => {
    const m = { id: 'm', name: 'm', kind: 'outside micrometer', from: 0, to: 25 } as const;
    expect(serves(m, 'outside', 20)).toBe(true);
    expect(serves(m, 'outside', 30)).toBe(false);
    expect(serves(m, 'inside', 20)).toBe(false);
  });
});
