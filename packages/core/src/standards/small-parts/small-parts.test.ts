import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, type Row, referenceRows } from '../../../test/reference.ts';
import { centreForWork, centreHole, inchCentreDrills } from './centre-hole.ts';
import { generalChamfer, greaseNipples } from './edges.ts';
import { type KeySeries, key } from './key.ts';
import { knurl, knurlBlank } from './knurl.ts';
import { clevisPin, type DowelKind, dowel, pinShearLoad, splitPin } from './pins.ts';
import { weakest } from './standing.ts';

const n = (row: Row, name: string): number => Number(row[name]);

describe('dowels [reference parts/dowels]', () => {
  const rows = referenceRows('parts', 'dowels');
  const kindOf = (row: Row): DowelKind =>
    row.kind?.includes('ASME') ? 'ASME B18.8.5M' : row.kind?.includes('6325') ? 'DIN 6325' : 'ISO 2338';

  test('limits by ISO 286 are the micrometres that the tables print', ({ task }) => {
    for (const row of rows) {
      const pin = dowel(kindOf(row), n(row, 'dia_mm'));
      const label = `${row.kind} ${row.dia_mm}`;
      expect(1000 * (pin.max - pin.nominal), label).toBeCloseTo(n(row, 'upper_um'), 6);
      expect(1000 * (pin.min - pin.nominal), label).toBeCloseTo(n(row, 'lower_um'), 6);
      // m6 was computed here and printed there; the inch-bodied limits are a table only.
      if (row.tolerance === 'm6') countOutside(task, 2);
      const slip = /h8 lower limit (-\d+)/.exec(row.note ?? '')?.[1];
      if (slip !== undefined)
        expect(1000 * (dowel('ISO 2338', n(row, 'dia_mm'), 'h8').min - pin.nominal), label).toBeCloseTo(
          Number(slip),
          6,
        );
    }
  });

  test('chamfers, leads and holes are held, and grow with the pin', () => {
    for (const kind of ['ISO 2338', 'DIN 6325', 'ASME B18.8.5M'] as const) {
      const own = rows.filter((row) => kindOf(row) === kind);
      for (const [i, row] of own.entries()) {
        const pin = dowel(kind, n(row, 'dia_mm'));
        if (row.chamfer_mm !== '') expect(pin.chamfer).toBe(n(row, 'chamfer_mm'));
        if (row.lead_mm !== '') expect(pin.lead).toBe(n(row, 'lead_mm'));
        if (row.hole_max_mm !== '')
          expect(pin.hole).toEqual({ min: n(row, 'hole_min_mm'), max: n(row, 'hole_max_mm') });
        const before = own[i - 1];
        if (before) expect(pin.chamfer ?? 0).toBeGreaterThanOrEqual(dowel(kind, n(before, 'dia_mm')).chamfer ?? 0);
      }
    }
  });

  test('the printed shear loads are 1050 MPa on the section, within 1 %', ({ task }) => {
    const loaded = rows.filter((row) => row.single_shear_kN !== '');
    expect(loaded.length).toBe(10);
    for (const row of loaded) {
      expect(Math.abs(pinShearLoad(n(row, 'dia_mm'), 1050) / (1000 * n(row, 'single_shear_kN')) - 1)).toBeLessThan(
        0.01,
      );
      expect(dowel('ASME B18.8.5M', n(row, 'dia_mm')).singleShear).toBe(1000 * n(row, 'single_shear_kN'));
      countOutside(task, 1);
    }
  });

  test('refuses sizes and fits that are not made', () => {
    expect(() => dowel('DIN 6325', 7)).toThrow('6 or 8');
    expect(() => dowel('DIN 6325', 6, 'h8')).toThrow('only parallel pins');
  });
});

describe('split pins and clevis pins [reference parts/split-pins, clevis-pins]', () => {
  const rows = referenceRows('parts', 'split-pins');

  test('every range gives its pin at both ends, for bolts and for clevis pins, and the pin enters its hole', () => {
    for (const row of rows) {
      for (const [use, over, to] of [
        ['bolt', 'bolt_over_mm', 'bolt_to_mm'],
        ['clevis pin', 'clevis_over_mm', 'clevis_to_mm'],
      ] as const) {
        for (const diameter of [n(row, over) + 0.01, n(row, to)]) {
          const pin = splitPin(diameter, use);
          expect(pin.nominal, `${use} ${diameter}`).toBe(n(row, 'nominal_hole_dia_mm'));
          expect(pin.pin).toEqual({ min: n(row, 'pin_dia_min_mm'), max: n(row, 'pin_dia_max_mm') });
          expect(pin.pin.max).toBeLessThan(pin.hole.min);
        }
      }
    }
    expect(() => splitPin(90, 'bolt')).toThrow('at most 80 mm');
  });

  test('the hole that the clevis table gives is the one that the split-pin ranges give: two tables', () => {
    for (const row of referenceRows('parts', 'clevis-pins')) {
      const pin = clevisPin(n(row, 'dia_mm'));
      expect(pin.splitPinHole).toBe(n(row, 'split_pin_hole_mm'));
      expect(pin.holeToEnd).toBe(n(row, 'hole_to_end_min_mm'));
      expect(splitPin(pin.nominal, 'clevis pin').nominal, row.dia_mm).toBe(pin.splitPinHole);
      expect(pin.min).toBeLessThan(pin.max);
    }
    expect(() => clevisPin(7)).toThrow('6 or 8');
  });
});

describe('keys [reference parts/keys]', () => {
  const rows = referenceRows('parts', 'keys');
  const seriesOf = (row: Row): KeySeries => (row.series?.startsWith('high') ? 'DIN 6885-1' : 'DIN 6885-2');

  test('every range gives its key, groove depths and depth tolerance', () => {
    for (const row of rows) {
      for (const shaft of [n(row, 'shaft_over_mm') + 0.1, n(row, 'shaft_to_mm')]) {
        const found = key(shaft, seriesOf(row));
        const label = `${seriesOf(row)} ${shaft}`;
        expect(found, label).toMatchObject({ width: n(row, 'key_width_mm'), height: n(row, 'key_height_mm') });
        expect(found.shaftKeyway.depth.min, label).toBe(n(row, 'shaft_groove_depth_mm'));
        expect(found.hubKeyway.depth.min, label).toBe(n(row, 'hub_groove_depth_mm'));
        expect(found.shaftKeyway.depth.max - found.shaftKeyway.depth.min, label).toBeCloseTo(
          n(row, 'depth_tolerance_plus_mm'),
          9,
        );
        expect(found.standing, label).toBe(row.status);
      }
    }
  });

  test('the two depths leave 0.1 to 0.4 mm over every key', () => {
    for (const row of rows) {
      const { topClearance } = key(n(row, 'shaft_to_mm'), seriesOf(row));
      expect(topClearance).toBeGreaterThanOrEqual(0.1);
      expect(topClearance).toBeLessThanOrEqual(0.4);
    }
  });

  test('a 6 mm shaft takes 2 × 2, as the read table has it', () => {
    expect(key(6)).toMatchObject({ width: 2, height: 2 });
    expect(() => key(5.9)).toThrow('over 6 to 95 mm');
  });

  test('a tight keyway is narrower than the key, a light one in the hub wider or equal', () => {
    expect(key(20, 'DIN 6885-1', 'tight').shaftKeyway.width.max).toBeLessThan(6);
    expect(key(20).hubKeyway.width.max).toBeGreaterThan(6);
  });
});

describe('knurls [reference parts/knurls]', () => {
  const forms = ['RAA', 'RBL', 'RBR', 'RGE', 'RGV', 'RKE', 'RKV'] as const;

  test('every row is its factor times its pitch', () => {
    for (const row of referenceRows('parts', 'knurls')) {
      const form = forms.find((name) => row.type?.startsWith(name)) ?? 'RAA';
      const { blank } = knurl(form, 20, n(row, 'pitch_mm'));
      expect(20 - blank, row.type).toBeCloseTo(n(row, 'blank_smaller_by_mm'), 9);
    }
  });

  test('a knurl rolled with raised points starts from the smallest blank', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 60, noNaN: true }), (d) => {
        expect(knurl('RGE', d, 1).blank).toBeLessThan(knurl('RAA', d, 1).blank);
        expect(knurl('RAA', d, 1).blank).toBeLessThan(knurl('RGV', d, 1).blank);
      }),
    );
    expect(() => knurl('RAA', 20, 0.7)).toThrow('0.5, 0.6, 0.8');
    expect(() => knurlBlank(0.3, 1, 0.5)).toThrow('more than 0.5 mm');
  });
});

describe('centre holes [reference cutting/centre-drills, centre-drill-choice]', () => {
  const rows = referenceRows('cutting', 'centre-drills');
  const metric = rows.filter((row) => /^[ABR] /.test(row.form ?? ''));

  test('every drill is held', () => {
    for (const row of metric) {
      const hole = centreHole(
        (['A', 'B', 'R'] as const).find((form) => row.form?.startsWith(form)) ?? 'A',
        n(row, 'pilot_d_mm'),
      );
      const label = `${row.form} ${row.pilot_d_mm}`;
      expect(hole.body, label).toBe(n(row, 'body_D_mm'));
      if (row.countersink_max_d_mm !== '') expect(hole.mouthMax, label).toBe(n(row, 'countersink_max_d_mm'));
      if (row.pilot_length_mm !== '') expect(hole.pilotLength, label).toBe(n(row, 'pilot_length_mm'));
      if (row.overall_length_mm !== '') expect(hole.drillLength, label).toBe(n(row, 'overall_length_mm'));
    }
    const inch = rows.filter((row) => row.form?.startsWith('inch'));
    expect(inch.map((row) => n(row, 'pilot_d_mm'))).toEqual(inchCentreDrills.map((drill) => drill.pilot));
    expect(inch.map((row) => n(row, 'body_D_mm'))).toEqual(inchCentreDrills.map((drill) => drill.body));
  });

  test('pilots run in the R10 series, and the mouth of form A is 2.12 times the pilot', () => {
    for (const row of metric.filter((r) => r.form?.startsWith('A'))) {
      const pilot = n(row, 'pilot_d_mm');
      const step = 10 * Math.log10(pilot);
      expect(Math.abs(step - Math.round(step)), row.pilot_d_mm).toBeLessThan(0.05);
      const { mouthMax, body, pilotLength } = centreHole('A', pilot);
      expect((mouthMax ?? 0) / pilot).toBeCloseTo(2.12, 1);
      expect(body).toBeGreaterThan(mouthMax ?? Number.NaN);
      expect((pilotLength ?? 0) / pilot).toBeCloseTo(1.27, 1);
    }
  });

  test('inch drills measure whole sixty-fourths of an inch', () => {
    for (const { body, pilot } of inchCentreDrills) {
      for (const size of [body, pilot]) {
        const parts = (size / 25.4) * 64;
        expect(Math.abs(parts - Math.round(parts))).toBeLessThan(0.01);
      }
    }
  });

  test('the choice by work diameter is held, and names a drill that is made', () => {
    for (const row of referenceRows('cutting', 'centre-drill-choice')) {
      for (const diameter of [n(row, 'work_d_over_mm') + 0.1, n(row, 'work_d_to_mm')]) {
        const { pilot, heavier } = centreForWork(diameter);
        expect(pilot).toBe(n(row, 'pilot_d_mm'));
        expect(centreHole('A', pilot).pilot).toBe(pilot);
        expect(heavier).toBeGreaterThan(pilot);
        expect(centreHole('A', pilot).mouthMax).toBeLessThan(diameter);
      }
    }
    expect(() => centreForWork(2)).toThrow('over 3 to 100 mm');
    expect(() => centreHole('B', 1.25)).toThrow('1, 1.6');
  });
});

describe('grease nipples and chamfers [reference parts/grease-nipples]', () => {
  test('the hole is the thread less its pitch', () => {
    const rows = referenceRows('parts', 'grease-nipples');
    expect(rows.length).toBe(greaseNipples.length);
    for (const [i, row] of rows.entries())
      expect(greaseNipples[i]?.hole.startsWith(row.hole_or_tapping_mm ?? '?')).toBe(true);
    const pitch: Record<string, [number, number]> = {
      M6: [6, 1],
      M8: [8, 1],
      M10: [10, 1],
      'G1/': [9.728, 25.4 / 28],
      '1/4': [6.35, 25.4 / 28],
    };
    for (const [name, [diameter, step]] of Object.entries(pitch)) {
      const nipple = greaseNipples.find(({ thread }) => thread.startsWith(name));
      expect(Math.abs(Number.parseFloat(nipple?.hole ?? '') - (diameter - step)), name).toBeLessThan(0.07);
    }
  });

  test('a chamfer grows with its diameter and takes little of it', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 119, noNaN: true }), (d) => {
        expect(generalChamfer(d).leg).toBeLessThanOrEqual(generalChamfer(d + 1).leg);
        expect(generalChamfer(d).leg).toBeLessThanOrEqual(0.2 * d);
      }),
    );
    expect(() => generalChamfer(200)).toThrow('at most 120 mm');
  });
});

test('an answer is trusted no further than the weakest value in it', () => {
  expect(weakest(['read', 'from memory', 'computed'])).toBe('from memory');
  expect(weakest(['doubtful', 'from memory'])).toBe('doubtful');
  expect(weakest([])).toBe('read');
});
