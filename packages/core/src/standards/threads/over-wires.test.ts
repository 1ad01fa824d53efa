import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { mmPerInch, radians } from '../../units/quantities.ts';
import {
  bestWire,
  leadAngle,
  leadCorrection,
  pitchDiameterFromWires,
  plainReading,
  readingOverWires,
  taperPitchDiameter,
  type WireGroove,
  wireRange,
  wireSensitivity,
} from './over-wires.ts';

const inch = (text: string | undefined) => Number(text) * mmPerInch;

test('three-wire readings are the published ones [MH31-p2130, JONES1915-p88, NEMES-3W; Whitworth and BA rows by formula]', ({
  task,
}) => {
  for (const row of referenceRows('threads', 'wires-worked-examples')) {
    const groove: WireGroove = {
      pitchDiameter: inch(row.pitch_dia_in),
      pitch: inch(row.pitch_in),
      flankAngle: radians(Number(row.included_angle_deg)),
      starts: 1,
    };
    const wire = inch(row.wire_in);
    const plain = plainReading(groove, wire) / mmPerInch;
    const published = row.published_M_in ?? '';
    // W02 is printed to three decimals.
    if (published !== '')
      expect(Math.abs(plain - Number(published)), row.id).toBeLessThan(row.id === 'W02' ? 0.0003 : 0.00006);
    else expect(Math.abs(plain - Number(row.recomputed_simple_in)), row.id).toBeLessThan(0.00001);
    expect(
      Math.abs(leadCorrection(groove, wire) / mmPerInch - Number(row.lead_angle_correction_in)),
      row.id,
    ).toBeLessThan(0.000007);
    countOutside(task, 2);
    // The exact reading lies above the plain one, by four fifths to all of the handbook's correction.
    const exact = readingOverWires(groove, wire) / mmPerInch - plain;
    expect(exact / Number(row.lead_angle_correction_in), row.id).toBeGreaterThan(0.74);
    expect(exact / Number(row.lead_angle_correction_in), row.id).toBeLessThan(1.1);
  }
});

test('coefficients by angle and pitch are those published [TC-sheet, MH31-p2129]', ({ task }) => {
  for (const row of referenceRows('threads', 'wire-formulas')) {
    const angle = radians(Number(row.included_angle_deg));
    const k = wireSensitivity({ pitch: 1, flankAngle: angle, starts: 1 }, bestWire(1, angle));
    expect(bestWire(1, angle)).toBeCloseTo(Number(row.best_wire_over_p), 5);
    expect(-k.wire).toBeCloseTo(Number(row.wire_coefficient_1_plus_cosec), 4);
    expect(k.pitch).toBeCloseTo(Number(row.pitch_coefficient_half_cot), 5);
    countOutside(task, 3);
  }
  const at60 = wireRange(1, radians(60), Math.sqrt(3) / 16);
  expect(at60.min).toBeCloseTo(0.505182, 4);
  expect(at60.max).toBeCloseTo(1.010362, 4);
  expect(wireRange(1, radians(55), 0.160082).min).toBeCloseTo(0.50568, 4);
  countOutside(task, 3);
  for (const row of referenceRows('threads', 'wire-constants')) {
    const pitch = 1 / Number(row.tpi);
    for (const [angle, text] of [
      [60, row.published_0p866025P_in],
      [55, row.published_whitworth_0p9605P_in],
    ] as const) {
      const k = wireSensitivity({ pitch, flankAngle: radians(angle), starts: 1 }, 1).pitch * pitch;
      expect(Math.abs(k - Number(text)), `${row.tpi} ${angle}`).toBeLessThan(0.000016);
      countOutside(task, 1);
    }
  }
});

test('a taper pipe thread: 1.00049 is 1/cos of half the taper angle [TC-sheet]', ({ task }) => {
  const secant = Math.hypot(1, 1 / 32);
  expect(secant).toBeCloseTo(1.00049, 5);
  expect(taperPitchDiameter(1, 0, 0)).toBeCloseTo(secant, 5);
  expect(taperPitchDiameter(0, 1, 0)).toBeCloseTo(-(2 + secant), 5);
  countOutside(task, 2);
});

/** The wire's resting distance by brute force: lower it at every tilt until a fine net over the flank touches it. */
function bruteReading(groove: WireGroove, wire: number): number {
  const turn = (groove.starts * groove.pitch) / (2 * Math.PI);
  const slope = Math.tan(groove.flankAngle / 2);
  const near = (centre: number, tilt: number) => {
    let [r0, t0, span] = [groove.pitchDiameter / 2, 0, 1];
    let least = Number.POSITIVE_INFINITY;
    for (let level = 0; level < 14; level++) {
      let [br, bt] = [r0, t0];
      for (let i = -8; i <= 8; i++) {
        for (let j = -8; j <= 8; j++) {
          const r = r0 + (i / 8) * span * groove.pitch;
          const theta = t0 + (j / 8) * span * 0.3;
          const z = (r - groove.pitchDiameter / 2) * slope + groove.pitch / 4 + turn * theta;
          const d = Math.hypot(r * Math.cos(theta) - centre, r * Math.sin(theta) * Math.sin(tilt) - z * Math.cos(tilt));
          if (d < least) [least, br, bt] = [d, r, theta];
        }
      }
      [r0, t0, span] = [br, bt, span / 3];
    }
    return least;
  };
  const rest = (tilt: number) => {
    let [low, high] = [groove.pitchDiameter / 2, groove.pitchDiameter / 2 + 2 * wire];
    for (let i = 0; i < 40; i++) {
      const mid = (low + high) / 2;
      if (near(mid, tilt) < wire / 2) low = mid;
      else high = mid;
    }
    return high;
  };
  let [a, b] = [leadAngle(groove) * 0.7, leadAngle(groove) * 1.2];
  for (let i = 0; i < 22; i++) {
    const [p, q] = [a + (b - a) / 3, b - (b - a) / 3];
    if (rest(p) < rest(q)) b = q;
    else a = p;
  }
  return 2 * rest((a + b) / 2) + wire;
}

test('the exact reading is that of a wire lowered onto the flanks by brute force', () => {
  for (const [pitchDiameter, pitch, angle, starts, scale] of [
    [9.026, 1.5, 60, 1, 1],
    [11.34, 2.1167, 55, 1, 1.2],
    [9.026, 1.5, 60, 3, 0.9],
  ] as const) {
    const groove = { pitchDiameter, pitch, flankAngle: radians(angle), starts };
    const wire = scale * bestWire(pitch, groove.flankAngle);
    expect(Math.abs(readingOverWires(groove, wire) - bruteReading(groove, wire))).toBeLessThan(2e-6);
  }
});

const grooves = fc.record({
  pitchDiameter: fc.double({ min: 3, max: 90, noNaN: true }),
  relative: fc.double({ min: 0.01, max: 0.25, noNaN: true }),
  flankAngle: fc.constantFrom(60, 55, 47.5).map(radians),
  wire: fc.double({ min: 0.9, max: 1.5, noNaN: true }),
});

test('from pitch diameter to reading and back is the same pitch diameter', () => {
  fc.assert(
    fc.property(grooves, ({ pitchDiameter, relative, flankAngle, wire }) => {
      const groove = { pitchDiameter, pitch: pitchDiameter * relative, flankAngle, starts: 1 };
      const w = wire * bestWire(groove.pitch, flankAngle);
      expect(pitchDiameterFromWires(readingOverWires(groove, w), groove, w)).toBeCloseTo(pitchDiameter, 8);
    }),
  );
});

test('with the best wire the half angle does not matter; sensitivities are those of small changes', () => {
  const groove = { pitchDiameter: 9.026, pitch: 1.5, flankAngle: radians(60), starts: 1 };
  const best = bestWire(1.5, radians(60));
  expect(wireSensitivity(groove, best).halfAngle).toBeCloseTo(0, 12);
  const wire = 1.1 * best;
  const k = wireSensitivity(groove, wire);
  const m = plainReading(groove, wire);
  const e = (g: WireGroove, w: number) => m - plainReading({ ...g, pitchDiameter: 0 }, w);
  const h = 1e-6;
  expect((e(groove, wire + h) - e(groove, wire)) / h).toBeCloseTo(k.wire, 4);
  expect((e({ ...groove, pitch: 1.5 + h }, wire) - e(groove, wire)) / h).toBeCloseTo(k.pitch, 4);
  expect((e({ ...groove, flankAngle: groove.flankAngle + 2 * h }, wire) - e(groove, wire)) / h).toBeCloseTo(
    k.halfAngle,
    4,
  );
});

test('refuses a wire that cannot rest on the flanks, and a reading too small for the thread', () => {
  const groove = { pitchDiameter: 9.026, pitch: 1.5, flankAngle: radians(60), starts: 1 };
  expect(() => readingOverWires(groove, 0.3)).toThrow('the best is 0.866');
  expect(() => readingOverWires({ ...groove, starts: 6 }, 0.866)).toThrow('lead angle');
  expect(() => pitchDiameterFromWires(1, groove, 0.866)).toThrow('reading');
});
