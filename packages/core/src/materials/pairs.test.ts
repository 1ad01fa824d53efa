import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { findMaterial } from './find.ts';
import { gallingThreshold } from './galling.ts';
import { allMaterials } from './material.ts';
import { pairFindings, pairVerdict } from './pairs.ts';

const anyMaterial = fc.constantFrom(...allMaterials());
const pair = (a: string, b: string) => pairVerdict(findMaterial(a), findMaterial(b));

describe('galling', () => {
  test('thresholds are the printed ones, whichever steel is named first [AISI-GALL, from memory]', () => {
    for (const row of referenceRows('materials', 'galling')) {
      const name = (text: string | undefined) => (text?.includes('S21800') ? 'S21800' : (text ?? ''));
      const [a, b] = [name(row.metal_a), name(row.metal_b)];
      const found = gallingThreshold(a, b);
      expect(found).toEqual(gallingThreshold(b, a));
      expect(found?.ksi, `${a} on ${b}`).toBe(Number.parseFloat(row.threshold_ksi ?? ''));
      expect(found?.orMore).toBe(row.bound === 'over');
      expect(Math.abs((found?.threshold ?? 0) - Number(row.threshold_MPa))).toBeLessThan(1);
    }
  });

  test('austenitics on themselves are worst, a hardened or free-cutting 13 % chromium steel does better [BSSA, in words]', () => {
    for (const [a, b] of [
      ['304', '304'],
      ['316', '316'],
      ['303', '304'],
    ] as const)
      expect(pair(a, b).galling.level).toBe('high');
    expect(pair('416', '316').galling.level).toBe('low');
    expect(pair('316', 'nickel aluminium bronze').galling.level).not.toBe('high');
  });

  test('titanium seizes on itself and on stainless; plastics do not gall', () => {
    expect(pair('Ti-Gr5', 'Ti-Gr2').galling.level).toBe('high');
    expect(pair('Ti-Gr5', '316').galling.level).toBe('high');
    expect(pair('PTFE', '316').galling.level).toBe('low');
  });
});

describe('galvanic couples', () => {
  test('materials stand at the anodic index printed for their class [VK6; steel and aluminium from memory]', ({
    task,
  }) => {
    const rows = referenceRows('materials', 'galvanic').filter((r) => r.scale === 'anodic index');
    const indexOf = (words: string) => Number(rows.find((r) => r.metal?.includes(words))?.potential_high_V);
    const classes = {
      'titanium grade 2': 'nickel, titanium',
      Monel: 'monel',
      'Cu-ETP': 'copper, silver solder',
      CuSn8: 'brass and bronze',
      LG2: 'brass and bronze',
      CuZn39Pb3: 'high brass',
      '304': '18 % chromium',
      '416': '12 % chromium',
      '2011': 'aluminium 2000',
      EN1A: 'iron, plain carbon',
      'GJL-250': 'iron, plain carbon',
      '6082': 'other than 2000',
    };
    for (const [name, words] of Object.entries(classes))
      expect(findMaterial(name).anodicIndex, name).toBe(indexOf(words));
    countOutside(task, Object.keys(classes).length);
  });

  test('the one eaten is the one that stands lower in flowing seawater too [L36]', ({ task }) => {
    const sea = referenceRows('materials', 'galvanic').filter((r) => r.scale?.startsWith('flowing'));
    const potential = (metal: string) => Number(sea.find((r) => r.metal === metal)?.potential_high_V);
    const metals = [
      ['Ti-Gr2', 'titanium'],
      ['Cu-ETP', 'copper'],
      ['LG2', 'G bronze'],
      ['naval brass', 'naval brass C464'],
      ['EN1A', 'carbon steel'],
      ['GJL-250', 'cast iron'],
      ['5083', 'aluminium 3003'],
    ] as const;
    let checked = 0;
    for (const [a, seaA] of metals)
      for (const [b, seaB] of metals) {
        const gap = potential(seaA) - potential(seaB);
        if (gap < 0.08) continue;
        expect(pair(a, b).galvanic?.attacked, `${a} on ${b}`).toBe(findMaterial(b).id);
        checked++;
      }
    expect(checked).toBeGreaterThanOrEqual(14);
    countOutside(task, checked);
  });

  test('aluminium on stainless, 0.40 V, is bearable only where damp is controlled [VK6, EICAC: 0.15, 0.25, 0.50 V]', ({
    task,
  }) => {
    const { galvanic } = pair('6082', '303');
    expect(galvanic?.difference).toBe(0.4);
    expect(galvanic?.allowed).toEqual({ harsh: false, normal: false, controlled: true });
    countOutside(task, 3);
  });

  test('a difference at exactly the limit is within it', () => {
    // copper −0.35, 18 % chromium stainless −0.50
    expect(pair('Cu-ETP', '304').galvanic).toMatchObject({ difference: 0.15, allowed: { harsh: true } });
  });
});

describe('any pair', () => {
  test('is judged the same whichever comes first', () => {
    fc.assert(
      fc.property(anyMaterial, anyMaterial, (a, b) => {
        const [one, other] = [pairVerdict(a, b), pairVerdict(b, a)];
        expect(one.galling.level).toBe(other.galling.level);
        expect(one.galvanic?.difference).toBe(other.galvanic?.difference);
        expect(one.galvanic?.attacked).toBe(other.galvanic?.attacked);
        expect(new Set(one.avoid.map((r) => r.why))).toEqual(new Set(other.avoid.map((r) => r.why)));
      }),
    );
  });

  test('on itself makes no galvanic couple', () => {
    fc.assert(
      fc.property(anyMaterial, (m) => {
        const { galvanic } = pairVerdict(m, m);
        expect(galvanic === undefined ? m.family : galvanic.difference).toBe(galvanic === undefined ? 'plastic' : 0);
      }),
    );
  });

  test('gives cautions with a number and a way out, and none where nothing is wrong', () => {
    const at = { at: 'spindle', stage: 'duty' } as const;
    const found = pairFindings(findMaterial('6082'), findMaterial('303'), { ...at, surroundings: 'harsh' });
    expect(found.map((f) => f.id)).toEqual(['materials.galling', 'materials.galvanic']);
    expect(found[1]?.because[0]).toMatchObject({ value: 0.4, limit: 0.15, unit: 'V' });
    for (const f of found) expect(f.remedies.length).toBeGreaterThan(0);
    expect(
      pairFindings(findMaterial('SAE660'), findMaterial('GJL-250'), { ...at, surroundings: 'controlled' }),
    ).toEqual([]);
  });
});
