import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { radians } from '../../units/quantities.ts';
import { type FormName, formConstants, forms } from './forms.ts';
import { bestWire } from './over-wires.ts';

const byRow: Record<string, FormName> = {
  'ISO metric / Unified (external)': 'ISO metric',
  'Whitworth BSW BSF BSP BSB': 'Whitworth',
  'BA (British Association)': 'BA',
  'BSC / CEI': 'British Standard Cycle',
  Loewenherz: 'Löwenherz',
  'Sharp V': 'sharp V',
  NPT: 'American pipe',
  'BSPT (ISO 7-1)': 'Whitworth',
  'US Standard - American National (Sellers)': 'American National',
};

test('heights, depths, radii and best wires of every form are those published [ISO68-1, TC-sheet, MTECH-BSW, EN-ACAD-BA]', ({
  task,
}) => {
  for (const row of referenceRows('threads', 'form-constants')) {
    const name = byRow[row.form ?? ''];
    if (!name) throw new Error(`no form for ${row.form}`);
    const form = forms[name];
    const k = formConstants(name);
    expect(form.includedAngle).toBeCloseTo(Number.parseFloat(row.included_angle_deg ?? ''), 3);
    // ISO 7-1 prints 0.960237 for H: its triangle sits on the taper.
    expect(Math.abs(k.height - Number(row.sharp_height_H_over_p)), name).toBeLessThan(
      row.form?.startsWith('BSPT') ? 0.0003 : 0.000002,
    );
    expect(Math.abs(k.depth - Number.parseFloat(row.depth_over_p ?? '')), name).toBeLessThan(0.00004);
    const radius = Number.parseFloat(row.crest_root_radius_over_p ?? '');
    if (!Number.isNaN(radius) && form.rootRadius !== undefined) {
      expect(Math.abs(form.rootRadius - radius), name).toBeLessThan(0.00006);
      countOutside(task, 1);
    }
    expect(bestWire(1, radians(form.includedAngle))).toBeCloseTo(Number(row.best_wire_over_p), 5);
    countOutside(task, 4);
  }
});

test('a rounded root touches both flanks at the depth the form gives: r (1/sin α − 1) = truncation', () => {
  for (const form of Object.values(forms)) {
    if (form.rootRadius === undefined) continue;
    const truncation = form.rootRadius * (1 / Math.sin(radians(form.includedAngle / 2)) - 1);
    expect(truncation, form.name).toBeCloseTo(form.rootTruncation, 5);
  }
});

test('the factors of ISO 68-1 times the pitch [ISO68-1, MH27-p1794]', ({ task }) => {
  const k = formConstants('ISO metric');
  const unified = formConstants('Unified');
  const factors: Record<string, number> = {
    H: k.height,
    H1: k.minorDrop / 2,
    d2: k.pitchDrop,
    D1: k.minorDrop,
    d3: k.rootDrop,
    h3: k.depth,
    crest_flat_external: 2 * forms['ISO metric'].crestTruncation * Math.tan(radians(30)),
    root_flat_basic: 2 * forms['ISO metric'].minorTruncation * Math.tan(radians(30)),
    R_nominal: forms['ISO metric'].rootRadius ?? 0,
  };
  let checked = 0;
  for (const row of referenceRows('threads', 'metric-profile-constants')) {
    const factor = factors[row.symbol ?? ''];
    if (factor === undefined) continue; // R_min, C_min, C_max and the handbook's two drops are limits of a root, checked with the limits.
    expect(Math.abs(factor - Number(row.k_times_pitch)), row.symbol).toBeLessThan(0.000002);
    checked++;
  }
  expect(checked).toBe(9);
  countOutside(task, checked);
  expect(unified.rootDrop).toBeCloseTo(1.19078, 5);
});
