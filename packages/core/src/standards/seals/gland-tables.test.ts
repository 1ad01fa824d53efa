import { describe, expect, test } from 'vitest';
import { countOutside, type Row, referenceRows } from '../../../test/reference.ts';
import { type GlandRow, type GlandService, glandRows } from './gland-row.ts';
import { sectionAfterStretch, squeeze } from './groove-formulas.ts';
import { leadIns, mouthDiameter } from './lead-in.ts';
import { findORing } from './o-ring.ts';
import { grooveDiameterFor, recommendGland } from './recommend-gland.ts';

const serviceOf: Record<string, GlandService> = {
  'static-radial': 'static',
  'static-face': 'face',
  'static-face-liquid': 'face, liquid',
  'static-face-gas-vacuum': 'face, gas or vacuum',
  reciprocating: 'moving',
  'reciprocating-hydraulic': 'moving, liquid',
  'reciprocating-pneumatic': 'moving, gas',
};

const published = [...referenceRows('seals', 'gland-static'), ...referenceRows('seals', 'gland-dynamic')];
const n = (row: Row, name: string): number => Number(row[name]);

function rowFor(row: Row): GlandRow | undefined {
  return glandRows().find(
    (r) => r.service === serviceOf[row.type ?? ''] && r.source === row.source && r.section === Number(row.cs_mm),
  );
}

const backUps = published.filter((row) => row.type === 'static-radial-backup-widths');
const glands = published.filter((row) => row.type !== 'static-radial-backup-widths');
const bySource = [...new Set(glands.map((row) => row.source ?? ''))];

describe('published glands [reference seals/gland-static, gland-dynamic]', () => {
  test('every row is held, and no other', () => {
    expect(glandRows().length).toBe(glands.length);
    for (const row of glands) {
      const held = rowFor(row);
      const label = `${row.source} ${row.type} ${row.cs_mm}`;
      expect(held?.depth, label).toEqual({ min: n(row, 'depth_min_mm'), max: n(row, 'depth_max_mm') });
      expect(held?.width.min, label).toBeCloseTo(n(row, 'width_min_mm'), 6);
      expect(held?.width.max, label).toBeCloseTo(n(row, 'width_max_mm'), 2);
      if (row.width_two_backups_min_mm !== '') {
        expect(held?.widthTwoBackUps?.min, label).toBeCloseTo(n(row, 'width_two_backups_min_mm'), 6);
      }
      if (row.leadin_z_min_mm !== '') expect(held?.leadInMin, label).toBe(n(row, 'leadin_z_min_mm'));
      if (row.edge_break_max_mm !== '') expect(held?.edgeBreakMax, label).toBe(n(row, 'edge_break_max_mm'));
      if (row.eccentricity_max_mm !== '') expect(held?.runOutMax, label).toBe(n(row, 'eccentricity_max_mm'));
      if (row.groove_radius_max_mm !== '') expect(held?.radius?.max, label).toBe(n(row, 'groove_radius_max_mm'));
    }
    for (const row of backUps) {
      const held = glandRows().find((r) => r.source === 'engineersedge-static' && r.section === Number(row.cs_mm));
      expect(held?.widthOneBackUp?.min).toBe(n(row, 'width_one_backup_min_mm'));
      expect(held?.widthTwoBackUps?.max).toBeCloseTo(n(row, 'width_two_backups_max_mm'), 6);
    }
  });

  test.each(bySource)('the squeeze that %s prints follows from its own depths and ring tolerance', (source) => {
    for (const row of glands.filter((r) => r.source === source)) {
      const held = rowFor(row);
      const [cs, tolerance] = [n(row, 'cs_mm'), n(row, 'cs_tol_mm')];
      const label = `${row.type} ${row.cs_mm}`;
      // Printed to the whole or half per cent, rounded either way; the squeezes of the metric sources were computed.
      const least = squeeze(cs - tolerance, held?.depth.max ?? Number.NaN);
      const most = squeeze(cs + tolerance, held?.depth.min ?? Number.NaN);
      expect(Math.abs(least - n(row, 'squeeze_min_pct')), label).toBeLessThan(0.75);
      expect(Math.abs(most - n(row, 'squeeze_max_pct')), label).toBeLessThan(0.75);
    }
  });

  test('printed squeezes of the makers, counted', ({ task }) => {
    const makers = glands.filter((row) => ['apple-gland', 'engineersedge-static'].includes(row.source ?? ''));
    for (const row of makers) {
      const held = rowFor(row);
      const depth = held?.depth ?? { min: Number.NaN, max: Number.NaN };
      expect(n(row, 'cs_mm') - n(row, 'cs_tol_mm') - depth.max).toBeCloseTo(n(row, 'squeeze_min_mm'), 2);
      expect(n(row, 'cs_mm') + n(row, 'cs_tol_mm') - depth.min).toBeCloseTo(n(row, 'squeeze_max_mm'), 2);
      countOutside(task, 2);
    }
    expect(makers.length).toBe(33);
  });

  test('within a table a thicker ring has a deeper and wider groove', () => {
    for (const source of bySource) {
      for (const service of Object.values(serviceOf)) {
        const rows = glandRows()
          .filter((r) => r.source === source && r.service === service)
          .toSorted((a, b) => a.section - b.section);
        for (const [i, row] of rows.entries()) {
          const before = rows[i - 1];
          if (!before) continue;
          expect(row.depth.min, `${source} ${service} ${row.section}`).toBeGreaterThanOrEqual(before.depth.min);
          expect(row.width.min, `${source} ${service} ${row.section}`).toBeGreaterThanOrEqual(before.width.min);
        }
      }
    }
  });

  test('for the same section two sources agree on the depth within a tenth of the section', () => {
    for (const service of ['static', 'moving'] as const) {
      const rows = glandRows().filter((r) => r.service === service && r.section >= 1.5);
      for (const a of rows) {
        for (const b of rows.filter((r) => Math.abs(r.section - a.section) <= 0.003)) {
          expect(Math.abs(a.depth.min - b.depth.min) / a.section, `${a.source} ${b.source} ${a.section}`).toBeLessThan(
            0.1,
          );
        }
      }
    }
  });

  test('a moving gland is shallower in squeeze than a static one of the same source and section', () => {
    for (const moving of glandRows().filter((r) => r.service.startsWith('moving'))) {
      const still = glandRows().find(
        (r) => r.service === 'static' && r.source === moving.source && r.section === moving.section,
      );
      if (still && still.standing !== 'doubtful')
        expect(moving.depth.min, `${moving.source} ${moving.section}`).toBeGreaterThanOrEqual(still.depth.min);
    }
  });
});

test('the one remembered depth that breaks that order is marked doubtful, and is the disputed 3.55 mm of GB/T 3452.3', () => {
  const doubtful = glandRows().filter((row) => row.standing === 'doubtful');
  expect(doubtful.map((row) => [row.source, row.service, row.section])).toEqual([['mem-gbt3452.3', 'static', 3.55]]);
});

describe('a recommended gland', () => {
  test('comes from a read table with a printed depth tolerance where there is one', () => {
    expect(recommendGland(findORing('AS568-210'), 'piston', 'static').chosen.source).toBe('engineersedge-static');
    expect(recommendGland(findORing('20 x 2.65'), 'rod', 'static').chosen.source).toBe('sealsupply');
    const moving = recommendGland(findORing('20 x 2.65'), 'piston', 'moving');
    expect(moving.chosen.source).toBe('orings-uk');
    expect(moving.others.map((row) => row.source)).toContain('mem-gbt3452.3');
  });

  test('refuses a section no table has, naming the nearest, and a face seal that moves', () => {
    expect(() => recommendGland(findORing('100 x 9.5'), 'piston', 'static')).toThrow('nearest 7 or 6.99');
    expect(() => recommendGland(findORing('P20'), 'face', 'moving')).toThrow('static');
  });

  test('groove diameters are those of the complete glands worked by another hand', () => {
    const worked = referenceRows('seals', 'gland-worked-examples').filter((row) => row.kind === 'computed');
    for (const row of worked) {
      const male = row.gland?.startsWith('male') ?? false;
      const mating = male
        ? { min: n(row, 'bore_min_mm'), max: n(row, 'bore_max_mm') }
        : { min: n(row, 'mating_min_mm'), max: n(row, 'mating_max_mm') };
      const depth = { min: n(row, 'depth_min_mm'), max: n(row, 'depth_max_mm') };
      const groove = grooveDiameterFor(male ? 'piston' : 'rod', mating, depth);
      expect(groove.min, row.id).toBeCloseTo(n(row, 'groove_dia_min_mm'), 3);
      expect(groove.max, row.id).toBeCloseTo(n(row, 'groove_dia_max_mm'), 3);
    }
  });

  test('refuses a mating part that varies more than the depth may', () => {
    expect(() => grooveDiameterFor('piston', { min: 40, max: 40.5 }, { min: 3, max: 3.1 })).toThrow('under 0.200 mm');
  });
});

describe('lead-in [reference seals/lead-in]', () => {
  const rows = referenceRows('seals', 'lead-in').filter((row) => row.length_min_mm !== '');

  test('every published chamfer is offered for its section', () => {
    expect(rows.length).toBe(21);
    for (const row of rows) {
      const lengths = leadIns(Number(row.cs_max_mm)).filter((lead) => lead.source === row.source);
      expect(
        lengths.map((lead) => lead.length),
        `${row.source} ${row.cs_max_mm}`,
      ).toContain(Number(row.length_min_mm));
    }
  });

  test('the lead-in grows with the section, and a steeper one is shorter', () => {
    for (const source of ['sealsupply', 'mem-gbt3452.3'] as const) {
      const lengths = [1, 1.8, 2.6, 3.5, 5.3].flatMap((section) =>
        leadIns(section)
          .filter((l) => l.source === source)
          .map((l) => l.length),
      );
      expect(lengths).toEqual(lengths.toSorted((a, b) => a - b));
    }
    for (const section of [1.78, 2.62, 3.53, 5.33]) {
      const [shallow, steep] = leadIns(section).filter((lead) => lead.source === 'mem-trelleborg-leadin');
      expect(shallow?.length).toBeGreaterThan(steep?.length ?? Number.NaN);
    }
  });

  test('the mouth clears a ring on its groove: it is never smaller than the stretched ring', () => {
    const section = sectionAfterStretch(32.92, 3.53, 33.8);
    expect(mouthDiameter(33.8, 3.53)).toBeGreaterThanOrEqual(33.8 + 2 * section);
  });
});
