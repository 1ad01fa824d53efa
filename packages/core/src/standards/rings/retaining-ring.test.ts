import { describe, expect, test } from 'vitest';
import { countOutside, type Row, referenceRows } from '../../../test/reference.ts';
import { retainingRing, ringEdgeMargin, ringGrooveLoad } from './retaining-ring.ts';

const rows = referenceRows('parts', 'retaining-rings');
const n = (row: Row, name: string): number => Number(row[name]);
const place = (row: Row) => (row.kind?.startsWith('shaft') ? 'shaft' : 'bore');
const held = (row: Row) => retainingRing(place(row), n(row, 'nominal_dia_mm'));

describe('retaining rings [reference parts/retaining-rings]', () => {
  test('groove limits by ISO 286 are the micrometres of the reference', () => {
    for (const row of rows) {
      const { groove } = held(row);
      const label = `${row.kind} ${row.nominal_dia_mm}`;
      expect(groove.toleranceClass, label).toBe(row.groove_tolerance);
      expect(groove.nominal, label).toBe(n(row, 'groove_dia_mm'));
      expect(1000 * (groove.max - groove.nominal), label).toBeCloseTo(n(row, 'upper_um'), 6);
      expect(1000 * (groove.min - groove.nominal), label).toBeCloseTo(n(row, 'lower_um'), 6);
    }
  });

  test('groove widths and margins to the end follow the rules, as printed', ({ task }) => {
    for (const row of rows) {
      const ring = held(row);
      const label = `${row.kind} ${row.nominal_dia_mm}`;
      expect(ring.ringThickness, label).toBe(n(row, 'ring_thickness_mm'));
      expect(ring.grooveWidth.min, label).toBeCloseTo(n(row, 'groove_width_min_mm'), 9);
      expect(ring.grooveDepth, label).toBeCloseTo(n(row, 'groove_depth_mm'), 9);
      expect(ring.edgeMargin, label).toBeCloseTo(n(row, 'edge_margin_min_mm'), 9);
      if (row.status === 'read') countOutside(task, 2);
    }
  });

  test('the printed groove loads at 200 MPa follow from the bearing area within 2 %', ({ task }) => {
    const loaded = rows.filter((row) => row.groove_load_FN_kN !== '');
    expect(loaded.length).toBe(17);
    for (const row of loaded) {
      const load = ringGrooveLoad(n(row, 'nominal_dia_mm'), n(row, 'groove_dia_mm'), 200) / 1000;
      // Printed to 10 N.
      const printed = n(row, 'groove_load_FN_kN');
      expect(Math.abs(load - printed), row.nominal_dia_mm).toBeLessThan(0.02 * printed + 0.005);
      countOutside(task, 1);
    }
  });

  test('rings thicken and grooves deepen with size', () => {
    for (const which of ['shaft', 'bore']) {
      const own = rows.filter((row) => place(row) === which);
      for (const [i, row] of own.entries()) {
        const before = own[i - 1];
        if (!before) continue;
        expect(held(row).ringThickness, row.nominal_dia_mm).toBeGreaterThanOrEqual(held(before).ringThickness);
        expect(held(row).grooveDepth, row.nominal_dia_mm).toBeGreaterThanOrEqual(held(before).grooveDepth);
        expect(held(row).groove.nominal, row.nominal_dia_mm).toBeGreaterThan(held(before).groove.nominal);
      }
    }
  });

  test('bores and shafts of one size have the same groove depth within 0.15 mm: each table witnesses for the other', () => {
    for (const row of rows.filter(
      (r) => place(r) === 'shaft' && rows.some((o) => place(o) === 'bore' && o.nominal_dia_mm === r.nominal_dia_mm),
    )) {
      const [shaft, bore] = [held(row), retainingRing('bore', n(row, 'nominal_dia_mm'))];
      expect(Math.abs(shaft.grooveDepth - bore.grooveDepth), row.nominal_dia_mm).toBeLessThanOrEqual(0.151);
    }
  });

  test('each row says how far it can be trusted', () => {
    for (const row of rows) {
      const { standing, sources } = held(row);
      expect(standing, `${row.kind} ${row.nominal_dia_mm}`).toBe(
        row.status === 'd2 read, rest from memory' ? 'read in part, rest from memory' : row.status,
      );
      expect(row.source).toContain(sources.at(-1));
    }
    expect(retainingRing('shaft', 10).notes[0]).toContain('disagree');
    expect(retainingRing('bore', 30).notes[0]).toContain('from memory');
  });

  test('a size without a ring is refused with the nearest', () => {
    expect(() => retainingRing('shaft', 20.5)).toThrow('20 or 21');
    expect(() => ringEdgeMargin(0)).toThrow('more than 0');
  });
});
