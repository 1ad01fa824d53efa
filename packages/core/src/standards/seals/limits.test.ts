import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, type Row, referenceRows } from '../../../test/reference.ts';
import {
  elastomers,
  elastomersFor,
  elastomerTemperatures,
  knownElastomer,
  knownMedium,
  rateElastomer,
} from './elastomer.ts';
import { elastomerRows } from './elastomer-table.ts';
import { extrusionLimit } from './extrusion-gap.ts';
import { fillByArea, fillByVolume, makerSectionLoss, sectionAfterStretch, squeeze } from './groove-formulas.ts';
import { squareRingFacts } from './square-ring.ts';

const n = (row: Row, name: string): number => Number(row[name]);

describe('extrusion gaps [reference seals/extrusion-gap]', () => {
  const rows = referenceRows('seals', 'extrusion-gap').filter((row) => row.source !== 'gioang');

  test('every row is what its table answers in the middle of its band', () => {
    expect(rows.length).toBe(60);
    for (const row of rows) {
      const pressure = (n(row, 'pressure_over_MPa') + n(row, 'pressure_upto_MPa')) / 2;
      const section = row.cs_upto_mm === '' ? 8 : (n(row, 'cs_over_mm') + n(row, 'cs_upto_mm')) / 2;
      const { tables } = extrusionLimit(n(row, 'hardness_shore_A'), pressure, section);
      const own = tables.find((table) => table.source === row.source);
      const label = `${row.source} ${row.hardness_shore_A} ${pressure} ${section}`;
      expect(own?.diametral, label).toBeCloseTo(n(row, 'diametral_gap_max_mm'), 6);
      expect(own?.radial, label).toBeCloseTo(n(row, 'radial_gap_max_mm'), 2);
    }
  });

  test('the gaps printed in inches for pressures in psi are whole thousandths and round thousands', () => {
    for (const row of rows.filter((r) => r.source === 'sealanddesign')) {
      const inch = extrusionLimit(n(row, 'hardness_shore_A'), n(row, 'pressure_upto_MPa'), 8).tables.find(
        (t) => t.source === 'sealanddesign',
      );
      const thousandths = (inch?.diametral ?? Number.NaN) / 0.0254;
      expect(Math.abs(thousandths - Math.round(thousandths))).toBeLessThan(0.02);
      const psi = n(row, 'pressure_upto_MPa') / 0.00689476;
      expect(Math.abs(psi / 500 - Math.round(psi / 500))).toBeLessThan(0.01);
    }
  });

  test('a higher pressure never allows more, a harder or thicker ring never less, silicone half', () => {
    const pressure = fc.double({ min: 0, max: 10, noNaN: true });
    const section = fc.double({ min: 0.5, max: 10, noNaN: true });
    fc.assert(
      fc.property(pressure, pressure, section, section, (p1, p2, s1, s2) => {
        const [low, high] = p1 < p2 ? [p1, p2] : [p2, p1];
        const [thin, thick] = s1 < s2 ? [s1, s2] : [s2, s1];
        expect(extrusionLimit(70, high, thin).radial).toBeLessThanOrEqual(extrusionLimit(70, low, thin).radial);
        expect(extrusionLimit(70, low, thin).radial).toBeLessThanOrEqual(extrusionLimit(70, low, thick).radial);
        expect(extrusionLimit(70, low, thin).radial).toBeLessThanOrEqual(extrusionLimit(90, low, thin).radial);
        expect(extrusionLimit(70, low, thin, true).radial).toBeCloseTo(extrusionLimit(70, low, thin).radial / 2, 9);
      }),
    );
  });

  test('hardness between the columns takes the softer one', () => {
    expect(extrusionLimit(80, 5, 3.53)).toEqual(extrusionLimit(70, 5, 3.53));
  });

  test('refuses softer rings and pressures that want a back-up ring', () => {
    expect(() => extrusionLimit(60, 5, 3)).toThrow('70 to 100 Shore A');
    expect(() => extrusionLimit(70, 25, 3)).toThrow('20.68 MPa without a back-up ring');
  });
});

describe('elastomers [reference seals/elastomers]', () => {
  const rows = referenceRows('seals', 'elastomers');

  test('every row is held as published', () => {
    expect(elastomerRows.length).toBe(rows.length);
    for (const row of rows) {
      const held = elastomerRows.filter(
        (r) => r.material === row.material && r.medium === row.medium && r.source === row.source,
      );
      const same = held.some(
        (r) =>
          (r.rating ?? '') === row.rating &&
          String(r.coldest ?? '') === row.temp_min_C &&
          String(r.hottest ?? '') === row.temp_max_C,
      );
      expect(same, `${row.material} ${row.medium} ${row.source}`).toBe(true);
    }
  });

  test('where two sources rate the same pair they differ by one grade at most', () => {
    for (const row of rows.filter((r) => r.rating !== '')) {
      for (const other of rows.filter(
        (r) => r.rating !== '' && r.material === row.material && r.medium === row.medium && r.source !== row.source,
      )) {
        const grades = Math.abs((row.rating ?? '').charCodeAt(0) - (other.rating ?? '').charCodeAt(0));
        expect(grades, `${row.material} ${row.medium}`).toBeLessThanOrEqual(1);
      }
    }
  });

  test('the worse rating and the narrower temperatures count', () => {
    expect(rateElastomer('NBR', 'mineral oil')).toMatchObject({ rating: 'B', best: 'A', coldest: -25, hottest: 100 });
    expect(elastomerTemperatures('NBR')).toMatchObject({ coldest: -30, hottest: 100 });
  });

  test('no rubber does for both mineral oil and glycol brake fluid', () => {
    const good = (medium: string) =>
      elastomersFor(medium)
        .filter((v) => v.rating === 'A' || v.rating === 'B')
        .map((v) => v.material);
    expect(good('brake fluid').length).toBeGreaterThan(0);
    for (const material of good('brake fluid')) expect(good('mineral oil')).not.toContain(material);
  });

  test('trade words are understood, and others refused with the list', () => {
    expect(knownElastomer('nitrile 70')).toBe('NBR');
    expect(knownElastomer('Viton')).toBe('FKM');
    expect(knownMedium('dot4')).toBe('glycol brake fluid (DOT 3/4/5.1)');
    expect(() => rateElastomer('cork', 'oil')).toThrow(elastomers.join(', '));
  });
});

describe('geometry of the groove', () => {
  const size = fc.double({ min: 2, max: 100, noNaN: true });

  test('stretch keeps the volume of the ring', () => {
    fc.assert(
      fc.property(
        size,
        fc.double({ min: 0.5, max: 7, noNaN: true }),
        fc.double({ min: 1, max: 1.5, noNaN: true }),
        (inside, section, more) => {
          const seat = inside * more;
          const after = sectionAfterStretch(inside, section, seat);
          expect(((seat + after) * after ** 2) / ((inside + section) * section ** 2)).toBeCloseTo(1, 9);
          expect(after).toBeLessThanOrEqual(section);
        },
      ),
    );
  });

  test('a few per cent of stretch takes about half as much off the section [seals-marco]', ({ task }) => {
    for (const x of [1, 2, 3, 5]) {
      const loss = 100 * (1 - sectionAfterStretch(40, 3, 40 * (1 + x / 100)) / 3);
      expect(loss / x).toBeGreaterThan(0.42);
      expect(loss / x).toBeLessThan(0.5);
    }
    countOutside(task, 1);
  });

  test('the maker takes 1.5 to 2 times that off up to 4 %, and his two branches meet within 0.2 %', () => {
    for (const x of [1.5, 2, 3, 4]) {
      const constantVolume = 100 * (1 - sectionAfterStretch(100, 3, 100 + x) / 3);
      expect(makerSectionLoss(x) / constantVolume).toBeGreaterThan(1.2);
      expect(makerSectionLoss(x) / constantVolume).toBeLessThan(2.3);
    }
    expect(Math.abs(makerSectionLoss(3) - makerSectionLoss(3 + 1e-9))).toBeLessThan(0.2);
    expect(() => makerSectionLoss(30)).toThrow('25 %');
  });

  test('fill by volume comes to fill by area where the ring is large and sits in the middle of its gland', () => {
    const [section, depth, width] = [3.53, 2.8, 4.8];
    const inside = 1000;
    // Centre line of the ring on the middle of the gland.
    const inner = inside + section - depth;
    expect(fillByVolume(inside, section, inner, inner + 2 * depth, width)).toBeCloseTo(
      fillByArea(section, width, depth),
      6,
    );
  });

  test('squeeze grows with the section and falls with the depth', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 7, noNaN: true }),
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        (section, more) => {
          expect(squeeze(section + more, 0.8 * section)).toBeGreaterThan(squeeze(section, 0.8 * section));
          expect(squeeze(section, 0.8 * section + more)).toBeLessThan(squeeze(section, 0.8 * section));
        },
      ),
    );
  });
});

describe('square rings [reference seals/square-seal]', () => {
  const rows = referenceRows('seals', 'square-seal');

  test('every figure of the reference is said', () => {
    for (const row of rows.filter((r) => r.value_min !== '' || r.value_max !== '')) {
      if (row.item === 'diametral_clearance_new') continue;
      const said = squareRingFacts.find(
        (fact) =>
          fact.source.replace('seals-', '') === row.source?.replace('seals-', '') &&
          String(fact.min ?? '') === String(row.value_min === '' ? '' : Number(row.value_min)) &&
          String(fact.max ?? '') === String(row.value_max === '' ? '' : Number(row.value_max)),
      );
      expect(said, row.item).toBeDefined();
    }
  });

  test('new bore and piston leave the clearance of 0.040 to 0.081 mm', () => {
    const [bore, piston] = squareRingFacts.filter((fact) => fact.source === 'montesa-cota4');
    expect((bore?.min ?? 0) - (piston?.max ?? 0)).toBeCloseTo(0.04, 6);
    expect((bore?.max ?? 0) - (piston?.min ?? 0)).toBeCloseTo(0.081, 6);
  });
});
