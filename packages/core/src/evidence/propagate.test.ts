/** The worked examples of the GUM and its relatives, recomputed. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { calibrationLine, lineUncertainty } from './calibration-line.ts';
import { coverageFactor, productOfSmall, propagate, trapezoidFactor } from './propagate.ts';
import { handsOf, pooledDeviation } from './repeatability.ts';
import { rectangular, resolutionUncertainty } from './uncertainty.ts';

const examples = new Map(referenceRows('metrology', 'gum-examples').map((row) => [row.id, row]));
const recomputed = (id: string) => Number(examples.get(id)?.recomputed);
const published = (id: string) => Number(examples.get(id)?.published);
const budget = (name: string) => referenceRows('metrology', 'gum-budgets').filter((r) => r.example?.startsWith(name));

/** GUM H.1: l = l_S + d − l_S (δα·θ + α_S·δθ), in nm. */
const endGauge = ([ls = 0, d = 0, da = 0, theta = 0, as = 0, dt = 0]: readonly number[]) =>
  ls + d - ls * (da * theta + as * dt);
const h1 = () => {
  const rows = budget('GUM-H1');
  const of = (start: string) => {
    const row = rows.find((r) => r.component?.startsWith(start));
    const dof = Number(row?.dof);
    return {
      value: Number(row?.estimate),
      uncertainty: Number(row?.std_uncertainty),
      degreesOfFreedom: Number.isFinite(dof) ? dof : undefined,
    };
  };
  const parts = [of('u(d-bar)'), of('u(d1)'), of('u(d2)')];
  const difference = propagate((v) => v.reduce((a, b) => a + b, 0), parts);
  const all = propagate(endGauge, [
    of('u(l_S)'),
    { value: 215, uncertainty: difference.uncertainty, degreesOfFreedom: difference.degreesOfFreedom },
    of('u(delta alpha)'),
    of('u(theta)'),
    of('u(alpha_S)'),
    of('u(delta theta)'),
  ]);
  return { difference, all };
};

const volts = [5.007, 4.994, 5.005, 4.99, 4.999];
const milliamps = [19.663, 19.639, 19.64, 19.685, 19.678];
const phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
const mean = (v: readonly number[]) => v.reduce((a, b) => a + b, 0) / v.length;
const covariance = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, x, i) => sum + (x - mean(a)) * ((b[i] ?? 0) - mean(b)), 0) / (a.length - 1) / a.length;
const deviation = (a: readonly number[]) => Math.sqrt(covariance(a, a));
const correlation = (a: readonly number[], b: readonly number[]) => covariance(a, b) / deviation(a) / deviation(b);

/** GUM H.2: means of simultaneous readings, correlated. */
const h2 = (formula: (v: readonly number[]) => number) => {
  const amps = milliamps.map((i) => i / 1000);
  const sets = [volts, amps, phase];
  const pairs = [
    [0, 1],
    [0, 2],
    [1, 2],
  ] as const;
  return propagate(
    formula,
    sets.map((s) => ({ value: mean(s), uncertainty: deviation(s) })),
    pairs.map(([first, second]) => ({ first, second, r: correlation(sets[first] ?? [], sets[second] ?? []) })),
  );
};

describe('GUM H.1, the end gauge', () => {
  test('value, uncertainty of the difference, degrees of freedom and 99 % interval', ({ task }) => {
    const { difference, all } = h1();
    expect(all.value).toBeCloseTo(published('G01'), -1);
    expect(difference.uncertainty).toBeCloseTo(recomputed('G04'), 4);
    expect(difference.degreesOfFreedom).toBeCloseTo(recomputed('G05'), 2);
    expect(all.degreesOfFreedom).toBeCloseTo(recomputed('G03'), 1);
    expect(coverageFactor(0.99, all.degreesOfFreedom) * 32).toBeCloseTo(recomputed('G06'), 0);
    expect(productOfSmall(50_000_623, recomputedAlpha, 0.40620192)).toBeCloseTo(recomputed('G07'), 2);
    countOutside(task, 6);
  });

  test('each contribution is the one printed', ({ task }) => {
    const { all } = h1();
    const printed = ['u(l_S)', 'u(delta alpha)', 'u(delta theta)'].map((c) =>
      Number(budget('GUM-H1').find((r) => r.component?.startsWith(c))?.published_contribution),
    );
    expect(Math.abs(all.contributions[0] ?? 0)).toBeCloseTo(printed[0] ?? 0, 0);
    expect(Math.abs(all.contributions[2] ?? 0)).toBeCloseTo(printed[1] ?? 0, 1);
    expect(Math.abs(all.contributions[5] ?? 0)).toBeCloseTo(printed[2] ?? 0, 1);
    countOutside(task, 3);
  });
});

/** Half width 10⁻⁶ per kelvin, rectangular. */
const recomputedAlpha = 1e-6 / Math.sqrt(3);

describe('GUM H.2, correlated means', () => {
  const R = h2(([v = 0, i = 0, p = 0]) => (v / i) * Math.cos(p));
  const X = h2(([v = 0, i = 0, p = 0]) => (v / i) * Math.sin(p));
  const Z = h2(([v = 0, i = 0]) => v / i);

  test('resistance, reactance, impedance and their uncertainties', ({ task }) => {
    expect(R.value).toBeCloseTo(recomputed('G12'), 4);
    expect(R.uncertainty).toBeCloseTo(recomputed('G13'), 4);
    expect(X.uncertainty).toBeCloseTo(recomputed('G15'), 4);
    expect(Z.value).toBeCloseTo(recomputed('G16'), 4);
    expect(Z.uncertainty).toBeCloseTo(recomputed('G17'), 4);
    expect(correlation(volts, milliamps)).toBeCloseTo(recomputed('G18'), 8);
    expect(correlation(milliamps, phase)).toBeCloseTo(recomputed('G20'), 8);
    countOutside(task, 7);
  });
});

describe('GUM H.3, a calibration line', () => {
  test('start, slope, their uncertainties and what the line says at 30 °C', ({ task }) => {
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
    const line = calibrationLine(
      t.map((at, i) => ({ at, correction: b[i] ?? 0 })),
      20,
    );
    expect(line.slope).toBeCloseTo(recomputed('G22'), 9);
    expect(line.ofStart).toBeCloseTo(recomputed('G23'), 9);
    expect(line.ofSlope).toBeCloseTo(recomputed('G24'), 10);
    expect(line.correlation).toBeCloseTo(recomputed('G25'), 8);
    expect(line.leftOver).toBeCloseTo(recomputed('G26'), 12);
    expect(lineUncertainty(line, 10)).toBeCloseTo(recomputed('G28'), 9);
    countOutside(task, 6);
  });

  test('two checks, or all at one place, are refused', () => {
    expect(() => calibrationLine([], 0)).toThrow('three');
    expect(() =>
      calibrationLine(
        [1, 2, 3].map((correction) => ({ at: 5, correction })),
        0,
      ),
    ).toThrow('different');
  });
});

describe('smaller examples', () => {
  test('rules for limits, steps, products and trapezoids [GUM 4.3, F.2.2.1, G.4.1; EA-4/02 S10]', ({ task }) => {
    expect(rectangular(0.4)).toBeCloseTo(recomputed('G34'), 9);
    expect(resolutionUncertainty(1)).toBeCloseTo(recomputed('G40'), 9);
    expect(trapezoidFactor(0.95, 50, 25)).toBeCloseTo(recomputed('G45'), 6);
    const product = propagate(
      ([a = 0, b = 0, c = 0]) => a * b * c,
      [
        { value: 1, uncertainty: 0.0025, degreesOfFreedom: 9 },
        { value: 1, uncertainty: 0.0057, degreesOfFreedom: 4 },
        { value: 1, uncertainty: 0.0082, degreesOfFreedom: 14 },
      ],
    );
    // The table recomputes 19.04 from the rounded 1.03 %; unrounded parts give 19.00, as printed.
    expect(product.degreesOfFreedom).toBeCloseTo(published('G37'), 1);
    expect(100 * product.uncertainty * coverageFactor(0.95, product.degreesOfFreedom)).toBeCloseTo(published('G38'), 1);
    const expansion = propagate(
      ([l0 = 0, l1 = 0, t0 = 0, t1 = 0]) => (l1 - l0) / (l0 * (t1 - t0)),
      [
        { value: 1.4999, uncertainty: 0.0001 },
        { value: 1.5021, uncertainty: 0.0002 },
        { value: 288.15, uncertainty: 0.02 },
        { value: 373.1, uncertainty: 0.05 },
      ],
    );
    expect(expansion.value).toBeCloseTo(recomputed('G51'), 13);
    expect(expansion.uncertainty / recomputed('G52')).toBeCloseTo(1, 5);
    countOutside(task, 7);
  });

  test.each([
    ['EA-4/02 S4', 'G42'],
    ['EA-4/02 S10', 'G44'],
    ['NPL GPG 11', 'G49'],
  ])('the budget %s adds up', (name, id) => {
    const rows = budget(name);
    expect(rows.length).toBeGreaterThan(2);
    const inputs = rows.map((r) => ({ value: 0, uncertainty: Number(r.contribution) }));
    const sum = propagate((v) => v.reduce((a, b) => a + b, 0), inputs);
    expect(sum.uncertainty / recomputed(id)).toBeCloseTo(1, 3);
  });

  test('the budgets were counted', ({ task }) => countOutside(task, 3));
});

describe('repeats', () => {
  test('a pooled deviation is that of all repeats about their own places', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.double({ min: 0, max: 50, noNaN: true }), { minLength: 2, maxLength: 5 }), {
          minLength: 1,
          maxLength: 4,
        }),
        (groups) => {
          const { deviation: s, degreesOfFreedom } = pooledDeviation(groups);
          const squares = groups.flatMap((g) => g.map((v) => (v - mean(g)) ** 2)).reduce((a, b) => a + b, 0);
          expect(s * s * degreesOfFreedom).toBeCloseTo(squares, 6);
        },
      ),
    );
  });

  test('six repeats at one place tell the hand; two do not', () => {
    const repeats = (n: number) =>
      Array.from({ length: n }, (_, i) => ({
        id: `r${i}`,
        of: 'a',
        gauge: 'm',
        along: 5,
        value: 10 + 0.002 * (i % 2),
      }));
    expect(handsOf(repeats(6)).get('m')).toBeCloseTo(0.0011, 4);
    expect(handsOf(repeats(2)).size).toBe(0);
  });

  test('impossible correlations are refused', () => {
    const two = [1, 2].map((value) => ({ value, uncertainty: 1 }));
    expect(() => propagate(([a = 0, b = 0]) => a + b, two, [{ first: 0, second: 1, r: -1.5 }])).toThrow('correlations');
  });
});
