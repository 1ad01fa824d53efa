import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { choices } from './cutting-choice.ts';
import { cuttingData, drillFeed, specificForceSpread } from './cutting-data.ts';
import { findMaterial } from './find.ts';
import { forceRows } from './force-table.ts';
import { allMaterials, grades } from './material.ts';
import { depthTables, feedTables, speedTables } from './speed-table.ts';

const asNumber = (text: string | undefined) => (text === '' || text === undefined ? undefined : Number(text));

describe('the printed tables', () => {
  test('hold their force rows as the reference does', () => {
    const reference = new Map(referenceRows('cutting', 'specific-force').map((r) => [r.id, r]));
    for (const [row, , force, exponent, , status, source] of forceRows) {
      const printed = reference.get(row);
      expect([force, exponent, status, source]).toEqual([
        asNumber(printed?.kc11_MPa),
        asNumber(printed?.mc),
        printed?.status,
        printed?.source,
      ]);
    }
  });

  test('hold their speeds, feeds and depths as the reference does', () => {
    const reference = new Map(referenceRows('cutting', 'speeds-feeds').map((r) => [r.id, r]));
    const columns = {
      speed: ['vc_low_m_per_min', 'vc_high_m_per_min'],
      feed: ['f_low_mm_per_rev', 'f_high_mm_per_rev'],
      depth: ['ap_low_mm', 'ap_high_mm'],
    } as const;
    const kinds = [
      [speedTables, ['speed', 'feed', 'depth']],
      [feedTables, ['feed', 'depth']],
      [depthTables, ['depth']],
    ] as const;
    for (const [tables, quantities] of kinds)
      for (const { rows, status } of tables)
        for (const [row, , , material, ...values] of rows) {
          const printed = reference.get(row);
          expect([printed?.material, printed?.status], row).toEqual([material, status]);
          for (const [i, q] of quantities.entries()) {
            const [low, high] = columns[q].map((column) => asNumber(printed?.[column]));
            if (values[2 * i] === undefined) expect([low, high], `${row} ${q}`).toEqual([undefined, undefined]);
            else expect([values[2 * i], values[2 * i + 1]], `${row} ${q}`).toEqual([low ?? high, high ?? low]);
          }
        }
  });
});

describe('specific cutting force', () => {
  const kcOf = (name: string, row: string, chip: number) => {
    const force = cuttingData(findMaterial(name)).forces.find((f) => f.row === row);
    if (force?.exponent === undefined) throw new Error(`${name} has no force ${row}`);
    return force.specificForce * chip ** -force.exponent;
  };

  test('agrees within 3.3 % with what the chuck maker and the encyclopedia print over the chip thickness [ROH, WKZ]', ({
    task,
  }) => {
    const same: Readonly<Record<string, readonly [name: string, row: string]>> = {
      'S235/S275 (St 42)': ['S275', 'KC039'],
      S275JR: ['S275', 'KC039'],
      '42CrMo4': ['42CrMo4', 'KC042'],
      '16MnCr5': ['16MnCr5', 'KC041'],
      'EN-GJL-250': ['GJL-250', 'KC059'],
      C45: ['C45', 'KC049'],
      'brass CuZn37': ['naval brass', 'KC038'],
    };
    let checked = 0;
    for (const row of referenceRows('cutting', 'kienzle-check')) {
      const [name, force] = same[row.material ?? ''] ?? [];
      if (name === undefined || force === undefined) continue;
      const error = kcOf(name, force, Number(row.h_mm)) / Number(row.kc_published_MPa) - 1;
      expect(Math.abs(error), row.id).toBeLessThan(0.033);
      checked++;
    }
    expect(checked).toBeGreaterThan(20);
    countOutside(task, checked);
  });

  test('lies, with its spread, within 40 % of a third publisher’s turning table [MIT]', ({ task }) => {
    const same: Readonly<Record<string, string>> = {
      'mild steel': 'S275',
      'medium steel': 'C45',
      'grey cast iron': 'GJL-250',
      'chrome molybdenum steel': '42CrMo4',
    };
    let checked = 0;
    for (const row of referenceRows('cutting', 'kc-vs-chip-thickness')) {
      const name = same[row.material ?? ''];
      if (name === undefined || row.note !== 'turning') continue;
      const spread = specificForceSpread(cuttingData(findMaterial(name)), Number(row.x_mm));
      const printed = Number(row.kc_MPa);
      expect(printed, `${row.id} ${name}`).toBeGreaterThan((spread?.low ?? 0) * 0.6);
      expect(printed, `${row.id} ${name}`).toBeLessThan((spread?.high ?? 0) * 1.4);
      checked++;
    }
    expect(checked).toBeGreaterThanOrEqual(20);
    countOutside(task, checked);
  });

  test('is absent, not guessed, for plastics, and without exponent for hardened steel', () => {
    for (const m of allMaterials().filter((p) => p.family === 'plastic')) {
      expect(cuttingData(m).specificForce).toBeUndefined();
      expect(cuttingData(m).missing.join()).toContain('specific cutting force');
    }
    const hard = cuttingData(findMaterial('440C', { condition: 'hardened' }));
    expect([hard.isoGroup, hard.exponent]).toEqual(['H', undefined]);
  });

  test('says when it is its group’s and when its sources differ', () => {
    expect(cuttingData(findMaterial('303')).status).toContain('from group');
    expect(cuttingData(findMaterial('S275')).status).toContain('printed for the alloy (read)');
    expect(cuttingData(findMaterial('CuSn8')).status).toMatch(/from memory.*sources differ/);
  });
});

describe('speeds and feeds', () => {
  test('every row chosen exists, and every grade has a choice', () => {
    const speeds = new Set(speedTables.flatMap((t) => t.rows.map(([row]) => row)));
    const others = new Set([...feedTables, ...depthTables].flatMap((t) => t.rows.map(([row]) => row)));
    for (const [key, choice] of Object.entries(choices)) {
      for (const row of [...choice.own, ...choice.group]) expect(speeds, `${key} ${row}`).toContain(row);
      for (const row of [...choice.feeds, ...choice.depths]) expect(others, `${key} ${row}`).toContain(row);
    }
    for (const { grade } of grades) expect(Object.keys(choices)).toContain(grade);
  });

  test('ranges run from low to high, are positive, and name a source', () => {
    for (const m of allMaterials()) {
      const { speeds, feeds, depths } = cuttingData(m);
      for (const r of [...speeds, ...feeds, ...depths]) {
        expect(r.low, `${m.id} ${r.row}`).toBeGreaterThan(0);
        expect(r.high, `${m.id} ${r.row}`).toBeGreaterThanOrEqual(r.low);
        expect(r.source.length).toBeGreaterThan(0);
      }
      for (const f of feeds) expect(f.high, `${m.id} ${f.row}`).toBeLessThan(2);
      for (const d of depths) expect(d.high, `${m.id} ${d.row}`).toBeLessThan(5);
    }
  });

  test('one source lets carbide run faster than high-speed steel in the same material and operation', () => {
    for (const m of allMaterials()) {
      const { speeds } = cuttingData(m);
      for (const hss of speeds.filter((s) => s.cutter === 'high-speed steel' && s.source !== 'common-practice')) {
        const carbide = speeds.filter(
          (s) =>
            s.cutter === 'carbide' && s.source === hss.source && s.operation === hss.operation && s.for === hss.for,
        );
        for (const c of carbide) expect(c.low, `${m.id} ${hss.row} ${c.row}`).toBeGreaterThan(hss.low);
      }
    }
  });

  test('303 is drilled and turned at what the Air Force and the reamer maker print [TO1, PRC]', () => {
    const { speeds } = cuttingData(findMaterial('303'));
    expect(speeds[0]).toMatchObject({
      cutter: 'high-speed steel',
      operation: 'rough',
      low: 7.6,
      high: 16.8,
      source: 'TO1',
    });
    expect(speeds.find((s) => s.operation === 'drill')).toMatchObject({ low: 25.9, source: 'PRC' });
  });

  test('threading and parting speeds are a stated share of the turning speed', () => {
    const { speeds } = cuttingData(findMaterial('EN1A'));
    const thread = speeds.find((s) => s.operation === 'thread' && s.cutter === 'high-speed steel');
    expect(thread?.low).toBeCloseTo(40 / 3, 6);
    expect(thread?.high).toBeCloseTo(30, 6);
    expect(thread?.status).toContain('common practice');
  });

  test('a 5 mm drill is fed 0.051 to 0.102 mm a turn, steps meeting at their printed ends [NAVY]', () => {
    expect(drillFeed(5)).toMatchObject({ low: 0.051, high: 0.102 });
    expect([3.2, 6.4, 12.7, 25, 26].map((d) => drillFeed(d).high)).toEqual([0.051, 0.102, 0.178, 0.381, 0.635]);
  });
});

test('materials that harden carry the least feed and the advice; the others do not', () => {
  for (const m of allMaterials()) {
    const { hardening } = cuttingData(m);
    const strong = m.workHardening === 'high' && m.family.includes('stainless');
    expect(hardening.chipLoadFloor !== undefined, m.id).toBe(strong);
    if (strong) expect(hardening.advice.join()).toContain('never dwell or rub');
  }
});
