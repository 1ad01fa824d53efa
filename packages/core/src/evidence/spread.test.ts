/** Drawn spreads beside the examples of JCGM 101, clause 9. */
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { type Spread, spread } from './spread.ts';

const rows = new Map(referenceRows('metrology', 'gum-examples').map((r) => [r.id ?? '', r]));
const recomputed = (id: string) => Number(rows.get(id)?.recomputed);
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
const trials = 100_000;
const rectangle = (sd: number): Spread => ({ shape: 'rectangular', value: 0, half: sd * Math.sqrt(3) });

describe('sums of four inputs', () => {
  test.each<[string, string, Spread[], number]>([
    ['four normal ones [9.2.2]', 'G55', Array<Spread>(4).fill({ shape: 'normal', value: 0, uncertainty: 1 }), 0.03],
    ['four rectangular ones [9.2.3]', 'G56', Array<Spread>(4).fill(rectangle(1)), 0.03],
    ['one rectangular that outweighs three [9.2.4]', 'G58', [1, 1, 1, 10].map(rectangle), 0.08],
  ])('%s: upper end of the 95 %% interval', (_, id, inputs, within) => {
    expect(Math.abs(spread(sum, inputs, 0.95, trials).high - recomputed(id))).toBeLessThan(within);
  });

  test('they were counted', ({ task }) => countOutside(task, 3));
});

test('a mass calibration whose result is no normal: 0.0754 mg, not the 0.0539 of the first order [9.3]', ({ task }) => {
  const inputs: Spread[] = [
    { shape: 'normal', value: 100_000, uncertainty: 0.05 },
    { shape: 'normal', value: 1.234, uncertainty: 0.02 },
    { shape: 'rectangular', value: 1.2, half: 0.1 },
    { shape: 'rectangular', value: 8000, half: 1000 },
    { shape: 'rectangular', value: 8000, half: 50 },
  ];
  const result = spread(
    ([m = 0, d = 0, air = 0, w = 1, r = 1]) => (m + d) * (1 + (air - 1.2) * (1 / w - 1 / r)) - 100_000,
    inputs,
    0.95,
    trials,
  );
  expect(Math.abs(result.value - recomputed('G59'))).toBeLessThan(0.001);
  expect(Math.abs(result.uncertainty - recomputed('G61'))).toBeLessThan(0.0005);
  expect(Math.abs(result.shortest.low - recomputed('G62'))).toBeLessThan(0.004);
  countOutside(task, 3);
});

test('the end gauge: 36 nm against the 32 of the first order, and its 99 % interval [9.5]', ({ task }) => {
  const t = (value: number, uncertainty: number, degreesOfFreedom: number): Spread => ({
    shape: 'normal',
    value,
    uncertainty,
    degreesOfFreedom,
  });
  const inputs: Spread[] = [
    t(50_000_623, 25, 18),
    t(215, 6, 24),
    t(0, 4, 5),
    t(0, 7, 8),
    { shape: 'rectangular', value: 11.5e-6, half: 2e-6 },
    { shape: 'normal', value: -0.1, uncertainty: 0.2 },
    { shape: 'arcsine', value: 0, half: 0.5 },
    { shape: 'rectangular', value: 0, half: 1e-6, blur: 0.1e-6 },
    { shape: 'rectangular', value: 0, half: 0.05, blur: 0.025 },
  ];
  const result = spread(
    ([ls = 0, d0 = 0, d1 = 0, d2 = 0, as = 0, theta0 = 0, swing = 0, da = 0, dt = 0]) => {
      const theta = theta0 + swing;
      return (ls * (1 + as * (theta + dt)) + d0 + d1 + d2) / (1 + (as + da) * theta) - 50_000_000;
    },
    inputs,
    0.99,
    trials,
  );
  expect(Math.abs(result.value - recomputed('G64'))).toBeLessThan(0.4);
  expect(Math.abs(result.uncertainty - recomputed('G65'))).toBeLessThan(0.4);
  expect(Math.abs(result.shortest.low - recomputed('G68'))).toBeLessThan(2.5);
  expect(Math.abs(result.shortest.high - recomputed('G69'))).toBeLessThan(2.5);
  countOutside(task, 4);
});

test('a triangle has a/√6 and a blurred rectangle √((a² + b²/3)/3) [JCGM 101 table 1]', () => {
  const sd = (input: Spread) => spread(sum, [input], 0.95, trials).uncertainty;
  expect(sd({ shape: 'triangular', value: 0, half: 1 })).toBeCloseTo(1 / Math.sqrt(6), 2);
  expect(sd({ shape: 'rectangular', value: 0, half: 1, blur: 0.5 })).toBeCloseTo(Math.sqrt((1 + 0.25 / 3) / 3), 2);
});

test('the same is drawn every time; a share of nought and few trials are refused', () => {
  const inputs: Spread[] = [rectangle(1)];
  expect(spread(sum, inputs, 0.9, 2000)).toEqual(spread(sum, inputs, 0.9, 2000));
  expect(() => spread(sum, inputs, 0, 2000)).toThrow('share');
  expect(() => spread(sum, inputs, 0.9, 10)).toThrow('trials');
});
