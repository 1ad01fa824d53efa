import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Row, referenceRows } from '../../test/reference.ts';
import { leastOnGrid, leastStableWidth } from './least-stable-width.ts';
import { stabilityLimit } from './limit-at-speed.ts';
import { lobeGrid } from './lobe-grid.ts';
import { lobePoint } from './lobe-point.ts';
import { directionFactor, type OrientedMode, receptance } from './receptance.ts';

const examples = referenceRows('dynamics', 'chatter-worked-examples');

function modesOf(row: Row): OrientedMode[] {
  const mode = (i: 1 | 2): OrientedMode => ({
    frequency: Number(row[`fn${i}_Hz`]),
    stiffness: 1000 * Number(row[`k${i}_N_per_um`]),
    damping: Number(row[`zeta${i}`]),
    direction: Number(row[`mu${i}`]),
  });
  return row.modes === '2' ? [mode(1), mode(2)] : [mode(1)];
}

const near = (actual: number, expected: number, share: number) =>
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThan(share);

describe('limits of the worked examples', () => {
  test('least stable width and its frequency [inputs ALT131 and TCC2 read, results recomputed elsewhere; others structure-CALC]', () => {
    for (const row of examples) {
      const limit = leastStableWidth(modesOf(row), { chipStiffness: Number(row.Ks_N_per_mm2) });
      near(limit.width, Number(row.b_lim_exact_mm), 1e-5);
      near(limit.frequency, Number(row.fc_at_min_Hz), 2e-5);
      if (row.b_lim_closed_mm) near(limit.width, Number(row.b_lim_closed_mm), 1e-5);
    }
  });

  test('at the speeds of the lowest points the limit is the least one', () => {
    for (const row of examples) {
      for (const j of [0, 1, 2, 3]) {
        const cut = { chipStiffness: Number(row.Ks_N_per_mm2) };
        const limit = stabilityLimit(modesOf(row), cut, Number(row[`n_j${j}_rpm`]));
        near(limit.width, Number(row.b_lim_exact_mm), 1e-4);
      }
    }
  });

  test('points of lobes, and whether they lie on the lower envelope [structure-CALC, envelope by the delay equation]', () => {
    for (const row of referenceRows('dynamics', 'lobe-points')) {
      const example = examples.find((r) => r.id === row.case);
      if (!example) throw new Error(`no case ${row.case}`);
      const modes = modesOf(example);
      const ks = Number(example.Ks_N_per_mm2);
      const f = Number(row.fc_Hz);
      const g = receptance(modes, f);
      near(1000 * g.re, Number(row.ReG_um_per_N), 1e-5);
      near(1000 * g.im, Number(row.ImG_um_per_N), 1e-5);
      const point = lobePoint(modes, ks, f, 6);
      near(point?.width ?? 0, Number(row.b_lim_mm), 1e-5);
      near(point?.shift ?? 0, Number(row.eps_rad), 1e-5);
      for (const j of [0, 1, 2, 5]) near(point?.speeds[j] ?? 0, Number(row[`n_j${j}_rpm`]), 1e-5);
      for (const j of [0, 1, 2]) {
        const limit = stabilityLimit(modes, { chipStiffness: ks }, Number(row[`n_j${j}_rpm`])).width;
        if (row[`on_envelope_j${j}`] === '1') near(limit, Number(row.b_lim_mm), 1e-3);
        else expect(limit).toBeLessThan(Number(row.b_lim_mm) * 0.999);
      }
    }
  });

  test('points of the delay equation fall on the right side of the limit [SEMI, rightmost roots by collocation]', () => {
    const rows = referenceRows('dynamics', 'semi-discretization-points');
    const turning = rows.filter((r) => r.source === 'SEMI');
    const mode = { frequency: 250, stiffness: 226_000 / Math.cos(Math.PI / 6) ** 2, damping: 0.012, direction: 1 };
    for (const row of turning) {
      const limit = stabilityLimit([mode], { chipStiffness: 1000 }, Number(row.p1)).width;
      expect(Number(row.p2) < limit, `${row.id}: limit ${limit}`).toBe(row.stable === '1');
    }
    expect(turning.length).toBe(16);
  });

  test('lowest points without dimensions: p = 2ζ(1 + ζ) where τ says [KN01]', () => {
    const rows = referenceRows('dynamics', 'semi-discretization-points').filter((r) =>
      /lobe minimum/.test(r.equation ?? ''),
    );
    for (const row of rows) {
      const zeta = Number(/z=([\d.]+)/.exec(row.params ?? '')?.[1]);
      const mode = { frequency: 1 / (2 * Math.PI), stiffness: 1, damping: zeta, direction: 1 };
      near(stabilityLimit([mode], { chipStiffness: 1 }, 60 / Number(row.p1)).width, Number(row.p2), 1e-4);
    }
    expect(rows.length).toBeGreaterThan(8);
  });

  test('a tool mode at 60° to chip and with the force at 60° feels half of it [structure-CALC C15]', () => {
    expect(directionFactor(Math.PI / 3, Math.PI / 3)).toBeCloseTo(0.5, 12);
  });
});

describe('rubbing at low speed', () => {
  const mode = { frequency: 180, stiffness: 6000, damping: 0.04, direction: 1 };

  test('one mode: agrees with the closed form b = 2 k z (1 + z)/Kf, z = ζ + C b/(2 v √(k m)) [methods-dynamics §4]', () => {
    for (const v of [3, 10, 30, 100]) {
      const k = mode.stiffness * 1000;
      const m = k / (2 * Math.PI * mode.frequency) ** 2;
      let b = 1e-4;
      for (let i = 0; i < 500; i++) {
        const z = mode.damping + (3e5 * b) / (2 * (v / 60) * Math.sqrt(k * m));
        const next = (2 * k * z * (1 + z)) / 2.5e9;
        if (next > 0.02) b = Infinity;
        if (b === Infinity || Math.abs(next - b) < 1e-15) break;
        b = next;
      }
      const limit = leastStableWidth([mode], { chipStiffness: 2500, processDamping: 300, cuttingSpeed: v }).width;
      if (b === Infinity) expect(limit).toBe(Infinity);
      else near(limit, 1000 * b, 1e-9);
    }
  });

  test('the slower the cut, the broader the chip that stays quiet', () => {
    const limits = [200, 100, 50, 25, 12, 6].map(
      (v) => leastStableWidth([mode], { chipStiffness: 2500, processDamping: 300, cuttingSpeed: v }).width,
    );
    expect(limits).toEqual(limits.toSorted((a, b) => a - b));
    expect(new Set(limits).size).toBeGreaterThan(3);
  });
});

const someMode = fc.record({
  frequency: fc.double({ min: 60, max: 900, noNaN: true }),
  stiffness: fc.double({ min: 1000, max: 50_000, noNaN: true }),
  damping: fc.double({ min: 0.01, max: 0.15, noNaN: true }),
  direction: fc.double({ min: -0.5, max: 1, noNaN: true }).filter((d) => Math.abs(d) > 0.02),
});

test('no speed has a lower limit than the least of all', () => {
  fc.assert(
    fc.property(
      fc.array(someMode, { minLength: 1, maxLength: 4 }),
      fc.double({ min: 60, max: 6000, noNaN: true }),
      (modes, n) => {
        const cut = { chipStiffness: 2000 };
        const least = leastStableWidth(modes, cut).width;
        const here = stabilityLimit(modes, cut, n).width;
        expect(here).toBeGreaterThanOrEqual(least * (1 - 1e-3));
      },
    ),
    { numRuns: 200 },
  );
});

test('twice as stiff in every mode bears twice the width', () => {
  fc.assert(
    fc.property(
      fc.array(someMode, { minLength: 1, maxLength: 3 }),
      fc.double({ min: 100, max: 3000, noNaN: true }),
      (modes, n) => {
        const cut = { chipStiffness: 2000 };
        const one = stabilityLimit(modes, cut, n).width;
        const two = stabilityLimit(
          modes.map((m) => ({ ...m, stiffness: 2 * m.stiffness })),
          cut,
          n,
        ).width;
        expect(two / one).toBeCloseTo(2, 6);
      },
    ),
    { numRuns: 100 },
  );
});

describe('what cannot be is refused', () => {
  const good = { frequency: 100, stiffness: 1000, damping: 0.05, direction: 1 };
  const cut = { chipStiffness: 2000 };
  test.each([
    ['modes', () => leastStableWidth([], cut)],
    ['stiffness', () => leastStableWidth([{ ...good, stiffness: 0 }], cut)],
    ['stiffness', () => leastStableWidth([{ ...good, stiffness: -5 }], cut)],
    ['damping', () => stabilityLimit([{ ...good, damping: 0 }], cut, 500)],
    ['frequency', () => stabilityLimit([{ ...good, frequency: Number.NaN }], cut, 500)],
    ['speed', () => stabilityLimit([good], cut, 0)],
    ['chipStiffness', () => stabilityLimit([good], { chipStiffness: 0 }, 500)],
    ['cuttingSpeed', () => stabilityLimit([good], { chipStiffness: 2000, processDamping: 100 }, 500)],
  ])('%s', (name, ask) => {
    expect(ask).toThrow(name);
  });
});

test('a land on short waves: what it levels and presses aside summed up piece by piece, and every phase tried [wu-1989]', () => {
  const mode = { frequency: 150, stiffness: 5000, damping: 0.05, direction: 1 };
  const frequency = 160;
  const grid = lobeGrid([mode], new Float64Array([frequency]));
  const { re, im } = receptance([mode], frequency);
  const [p, q] = [re / (re * re + im * im), -im / (re * re + im * im)];
  for (const length of [0.01, 0.5, 1.5, 2.5, 4]) {
    // A land of that many radians of wave: the mean of the wave along it is what it leaves; the pressed volume in step with the
    // velocity, against that of a land much shorter, is what it damps.
    const pieces = 20_000;
    let [pressed, across, along] = [0, 0, 0];
    for (let i = 0; i < pieces; i++) {
      const at = ((i + 0.5) * length) / pieces;
      pressed += (Math.sin(at) * length) / pieces;
      across += Math.sin(at) / pieces;
      along += Math.cos(at) / pieces;
    }
    const left = Math.hypot(across, along);
    const rubbing = 1e-4;
    const damped = (2 * Math.PI * frequency * rubbing * pressed) / (length ** 2 / 2);
    // −Q (1 − w cos φ) = −P (w sin φ + γ) at the phases that can be.
    const off = (phase: number) => q * (1 - left * Math.cos(phase)) - p * (left * Math.sin(phase) + damped);
    let least = Infinity;
    const steps = 200_000;
    for (let i = 0; i < steps; i++) {
      const [a, b] = [(2 * Math.PI * i) / steps, (2 * Math.PI * (i + 1)) / steps];
      if (off(a) * off(b) > 0) continue;
      const phase = a + ((b - a) * off(a)) / (off(a) - off(b));
      least = Math.min(least, -p / (1 - left * Math.cos(phase)));
    }
    const found = leastOnGrid(grid, rubbing, length / (2 * Math.PI * frequency));
    if (least === Infinity) expect(found).toBe(Infinity);
    else expect(found / least).toBeCloseTo(1, 5);
  }
});
