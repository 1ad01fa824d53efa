import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { at20, rectangular, resolutionUncertainty, weigh } from './uncertainty.ts';

const rules = referenceRows('metrology', 'standard-uncertainty-rules');
const rule = (start: string) => Number(rules.find((r) => r.situation?.startsWith(start))?.factor);

describe('uncertainty of a reading', () => {
  test('limits alone give a/√3, a step w/√12 [GUM 4.3.7, F.2.2.1]', ({ task }) => {
    expect(rectangular(1)).toBeCloseTo(rule('rectangular, half-width'), 9);
    expect(resolutionUncertainty(1)).toBeCloseTo(rule('rectangular, full width'), 9);
    countOutside(task, 2);
  });

  test('a steel rod of 500.035 mm at 23.7 °C is 500.013 mm at 20 °C [NPL-FAQ, row X01]', ({ task }) => {
    expect(at20(500.035, 11.7e-6, 23.7, 11.5e-6, 20)).toBeCloseTo(500.013, 3);
    countOutside(task, 1);
  });

  test('a 300 mm steel part 10 K too warm reads 34.5 µm too much [OPTO, row X02]', ({ task }) => {
    expect(300.0345 - at20(300.0345, 11.5e-6, 30, 11.5e-6, 20)).toBeCloseTo(0.0345, 4);
    countOutside(task, 1);
  });

  test('part and gauge equally warm and of one metal need no correction', () => {
    expect(at20(100, 11.5e-6, 28, 11.5e-6, 28)).toBeCloseTo(100, 12);
  });

  test('aluminium pin and steel micrometer both at 28 °C [constructed row X07]', () => {
    expect(at20(30.012, 23.6e-6, 28, 11.5e-6, 28)).toBeCloseTo(30.00909539, 7);
  });

  test('the shares of a reading add up by squares, largest first', () => {
    const micrometer = { id: 'm', name: 'micrometer', kind: 'outside micrometer', resolution: 0.01 } as const;
    const w = weigh({ id: 'r', of: 'a.diameter', value: 20 }, micrometer, 'outside', 17e-6);
    const squares = w.budget.reduce((sum, b) => sum + b.share ** 2, 0);
    expect(w.uncertainty).toBeCloseTo(Math.sqrt(squares), 12);
    expect(w.budget.map((b) => b.share)).toEqual(w.budget.map((b) => b.share).toSorted((a, b) => b - a));
  });

  test('a zero error is taken off, a warm part is brought to 20 °C', () => {
    const gauge = { id: 'm', name: 'micrometer', kind: 'outside micrometer', zeroError: 0.01 } as const;
    expect(weigh({ id: 'r', of: 'a', value: 20.01 }, gauge, 'outside', 17e-6).value).toBeCloseTo(20, 9);
    const warm = weigh({ id: 'r', of: 'a', value: 20.01, temperature: 40 }, gauge, 'outside', 17e-6);
    expect(warm.value).toBeCloseTo(20 / (1 + 17e-6 * 20), 9);
  });

  test('a reading with no gauge named counts as one with a calliper', () => {
    const bare = weigh({ id: 'r', of: 'a', value: 20 }, undefined, 'outside', 11.5e-6);
    expect(bare.budget[0]?.from).toBe('error of the gauge');
    expect(bare.uncertainty).toBeGreaterThan(0.011);
  });
});
