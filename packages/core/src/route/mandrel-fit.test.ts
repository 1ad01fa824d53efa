import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { outsideGrowth, pressedPressure, slipMoment } from './mandrel-fit.ts';

const rows = referenceRows('joints', 'press-fit-worked-examples').filter((r) => Number(r.shaft_bore_mm) === 0);
const number = (text: string | undefined) => Number(text);

test('pressure of a ring on a solid plug is that of worked examples, and the moment it holds', ({ task }) => {
  let held = 0;
  for (const r of rows) {
    const smoothed = r.smoothing_factor ? (number(r.smoothing_factor) * number(r.Rz_sum_um)) / 1000 : 0;
    const interference = number(r.diametral_interference_mm) - smoothed;
    const pressure = pressedPressure({
      bore: number(r.joint_dia_mm),
      outer: number(r.hub_outer_dia_mm),
      interference,
      ring: { youngsModulus: number(r.E_hub_MPa), poisson: number(r.nu_hub) },
      plug: { youngsModulus: number(r.E_shaft_MPa), poisson: number(r.nu_shaft) },
    });
    const printed = number(r.published || r.recomputed);
    if (r.quantity?.startsWith('contact pressure')) expect(pressure / printed).toBeCloseTo(1, 3);
    else if (r.quantity === 'slip torque')
      expect(
        slipMoment(pressure, number(r.joint_dia_mm), number(r.length_mm), number(r.mu)) / 1000 / printed,
      ).toBeCloseTo(1, 3);
    else continue;
    // Only what a book prints counts as from outside; the others were worked out anew from the formula.
    held += r.published ? 1 : 0;
    expect(printed).toBeGreaterThan(0);
  }
  expect(held).toBeGreaterThan(0);
  countOutside(task, held);
});

test('a thin ring grows outside by nearly all of the interference, a thick one by little', () => {
  const steel = { youngsModulus: 200_000, poisson: 0.3 };
  const grows = (outer: number) => {
    const pressure = pressedPressure({
      bore: 20,
      outer,
      interference: 0.01,
      ring: steel,
      plug: { ...steel, youngsModulus: 1e9 },
    });
    return outsideGrowth(pressure, 20, outer, 200_000);
  };
  // A membrane on a plug that does not give: hoop strain alone, δ/d all through the wall.
  expect(grows(20.02)).toBeCloseTo(0.01, 4);
  // By hand, 60 on 20: p = 0.0005 × 200 000 / (10/8 + 0.3) = 64.5 MPa; 2 × 64.5 × 400 × 60 / (200 000 × 3200) = 0.00484.
  expect(grows(60)).toBeCloseTo(0.00484, 5);
});

test('no wall is refused', () => {
  const steel = { youngsModulus: 200_000, poisson: 0.3 };
  expect(() => pressedPressure({ bore: 20, outer: 20, interference: 0.01, ring: steel, plug: steel })).toThrow('outer');
  expect(() => outsideGrowth(1, 20, 19, 200_000)).toThrow('outer');
});
