import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { allMaterials, type Material } from './material.ts';

const all = allMaterials();
const byId = new Map(all.map((m) => [m.id, m]));
const of = (id: string): Material => {
  const found = byId.get(id);
  if (!found) throw new Error(`no material ${id}`);
  return found;
};

describe('the table of materials', () => {
  test('holds every row of the reference with its figures', () => {
    const rows = referenceRows('materials', 'materials');
    expect(all.length).toBe(rows.length);
    for (const row of rows) {
      const m = of(row.id ?? '');
      const figure = (column: string) => (row[column] === '' ? undefined : Number(row[column]));
      expect(m).toMatchObject({
        family: row.family,
        commonName: row.common_name,
        condition: row.condition,
        status: row.status,
      });
      expect({
        density: m.densityKgPerM3,
        proof: m.proofStrength,
        typical: m.proofStrengthTypical,
        tensile: m.tensileStrength,
        tensileMax: m.tensileStrengthMax,
        elongation: m.elongation,
        hardest: m.hardness?.max,
        softest: m.hardness?.min,
        conductivity: m.conductivity,
        heatCapacity: m.heatCapacity,
        maxService: m.maxService,
        machinability: m.machinability?.percent,
        anodicIndex: m.anodicIndex,
        poisson: m.poisson,
      }).toEqual({
        density: figure('density_kg_per_m3'),
        proof: figure('Rp02_min_MPa'),
        typical: figure('Rp02_typ_MPa'),
        tensile: figure('Rm_min_MPa'),
        tensileMax: figure('Rm_max_MPa'),
        elongation: figure('elong_min_pct'),
        hardest: figure('hardness_max'),
        softest: figure('hardness_min'),
        conductivity: figure('k_W_per_m_K'),
        heatCapacity: figure('cp_J_per_kg_K'),
        maxService: figure('max_service_C'),
        machinability: figure('machinability_pct'),
        anodicIndex: figure('anodic_index_V'),
        poisson: figure('poisson'),
      });
      expect(m.youngsModulus).toBeCloseTo((figure('E_GPa') ?? 0) * 1000, 6);
      expect(m.expansion * 1e6).toBeCloseTo(figure('alpha_um_per_m_K') ?? 0, 9);
      expect(m.density * 1e9).toBeCloseTo(m.densityKgPerM3, 6);
    }
  });

  test('never has a least strength above the greatest, or a proof strength above the tensile strength', () => {
    for (const m of all) {
      const top = m.tensileStrengthMax ?? Number.POSITIVE_INFINITY;
      expect(m.tensileStrength ?? 0, m.id).toBeLessThanOrEqual(top);
      expect(m.proofStrength ?? 0, m.id).toBeLessThanOrEqual(m.tensileStrength ?? top);
      expect(m.proofStrengthTypical ?? 0, m.id).toBeLessThanOrEqual(top);
      expect(m.hardness?.min ?? 0, m.id).toBeLessThanOrEqual(m.hardness?.max ?? Number.POSITIVE_INFINITY);
      expect(m.poisson, m.id).toBeGreaterThan(0.2);
      expect(m.poisson, m.id).toBeLessThan(0.5);
    }
  });

  test('gives less strength to a thicker bar of the same condition', () => {
    for (const kind of new Set(all.map((m) => `${m.grade} ${m.condition}`))) {
      const sized = all.filter((m) => `${m.grade} ${m.condition}` === kind && m.size && m.proofStrength !== undefined);
      for (const [i, thin] of sized.entries()) {
        const thick = sized[i + 1];
        if (thick) expect(thin.proofStrength, thin.id).toBeGreaterThanOrEqual(thick.proofStrength ?? 0);
      }
    }
  });
});

/** Nominal composition by mass [%], from the EN short name. */
const compositions: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'CuZn39Pb3-R430': { Cu: 58, Zn: 39, Pb: 3 },
  'C36000-H02': { Cu: 61, Zn: 36, Pb: 3 },
  'CuSn8-R450': { Cu: 92, Sn: 8 },
  'CuSn12-GC': { Cu: 88, Sn: 12 },
  C90700: { Cu: 89, Sn: 11 },
  'LG2-GC': { Cu: 85, Sn: 5, Zn: 5, Pb: 5 },
  SAE660: { Cu: 83, Sn: 7, Zn: 3, Pb: 7 },
  'Cu-ETP-R250': { Cu: 100 },
  '2011-T3-to40': { Al: 93, Cu: 6, Bi: 0.5, Pb: 0.5 },
  '5083-H111': { Al: 94.8, Mg: 4.5, Mn: 0.7 },
  '7075-T6': { Al: 90.3, Zn: 5.6, Mg: 2.5, Cu: 1.6 },
  'Ti-Gr2': { Ti: 100 },
  'Ti-Gr5': { Ti: 90, Al: 6, V: 4 },
  Monel400: { Ni: 66, Cu: 31, Fe: 2, Mn: 1 },
  '304-A': { Fe: 72, Cr: 18, Ni: 10 },
  '316-A': { Fe: 68.5, Cr: 17, Ni: 12, Mo: 2.5 },
  '431-QT800': { Fe: 82, Cr: 16, Ni: 2 },
};
/** Density of the elements at 20 °C [kg/m³] and molar mass [g/mol]; CRC Handbook, from memory. */
const elements: Readonly<Record<string, readonly [density: number, molarMass: number]>> = {
  Al: [2699, 26.98],
  Bi: [9780, 208.98],
  Cr: [7190, 52],
  Cu: [8960, 63.55],
  Fe: [7874, 55.85],
  Mg: [1738, 24.31],
  Mn: [7440, 54.94],
  Mo: [10_220, 95.95],
  Ni: [8908, 58.69],
  Pb: [11_340, 207.2],
  Sn: [7310, 118.71],
  Ti: [4506, 47.87],
  V: [6110, 50.94],
  Zn: [7140, 65.38],
};

describe('physics', () => {
  const mixed = Object.entries(compositions).map(([id, parts]) => {
    const share = Object.entries(parts).map(([symbol, percent]) => ({ percent, element: elements[symbol] ?? [0, 0] }));
    const volume = share.reduce((sum, { percent, element }) => sum + percent / element[0], 0);
    const moles = share.reduce((sum, { percent, element }) => sum + percent / element[1], 0);
    return { m: of(id), density: 100 / volume, molarMass: 100 / moles };
  });

  test('an alloy weighs what its elements weigh, within 4 % for what they contract on mixing [element densities, CRC]', ({
    task,
  }) => {
    for (const { m, density } of mixed) expect(Math.abs(m.densityKgPerM3 / density - 1), m.id).toBeLessThan(0.04);
    countOutside(task, mixed.length);
  });

  test('a metal stores 3R of heat a mole, within 15 % [Dulong and Petit]', ({ task }) => {
    for (const { m, molarMass } of mixed) {
      expect(Math.abs((m.heatCapacity * molarMass) / 1000 / (3 * 8.314) - 1), m.id).toBeLessThan(0.15);
    }
    countOutside(task, mixed.length);
  });

  test('E and Poisson’s ratio give the shear moduli that handbooks print, within 6 % [handbook values from memory]', ({
    task,
  }) => {
    const shear = {
      'C15-CD': 79.3,
      '304-A': 77,
      'CuZn39Pb3-R430': 37,
      'CuSn8-R450': 43,
      '6061-T6': 26,
      '7075-T6': 26.9,
      'Ti-Gr5': 44,
      Monel400: 66,
      'GJL-250': 44,
      'GJS-400-15': 66,
    };
    for (const [id, printed] of Object.entries(shear)) {
      const { youngsModulus, poisson } = of(id);
      expect(Math.abs(youngsModulus / (2 * (1 + poisson)) / 1000 / printed - 1), id).toBeLessThan(0.06);
    }
    countOutside(task, Object.keys(shear).length);
  });

  test('conductivity, density and heat capacity give the printed thermal diffusivity, within 15 % [Incropera, appendix A, from memory]', ({
    task,
  }) => {
    const printed = {
      '304-A': 3.95e-6,
      'Cu-ETP-R250': 117e-6,
      'CuZn39Pb3-R430': 33.9e-6,
      PTFE: 0.124e-6,
      'Ti-Gr5': 2.9e-6,
      '6061-T6': 69e-6,
    };
    for (const [id, diffusivity] of Object.entries(printed)) {
      const { conductivity, densityKgPerM3, heatCapacity } = of(id);
      expect(Math.abs(conductivity / (densityKgPerM3 * heatCapacity) / diffusivity - 1), id).toBeLessThan(0.15);
    }
    countOutside(task, Object.keys(printed).length);
  });

  test('strength and Brinell hardness of carbon and alloy steels agree by the conversion table [ISO 18265 A.1, from memory]', ({
    task,
  }) => {
    // Rm [MPa], HB
    const table = [
      [400, 119],
      [510, 152],
      [650, 195],
      [800, 238],
      [900, 266],
      [1000, 295],
      [1200, 352],
      [1400, 408],
    ] as const;
    const strengthAt = (hb: number) => {
      const above = table.findIndex(([, h]) => h >= hb);
      const [[r0, h0], [r1, h1]] = [
        table[Math.max(0, above - 1)] ?? [400, 119],
        table[Math.max(1, above)] ?? [1400, 408],
      ];
      return r0 + ((r1 - r0) * (hb - h0)) / (h1 - h0);
    };
    const steels = all.filter(
      (m) =>
        /carbon|free-cutting|alloy steel|martensitic/.test(m.family) &&
        m.hardness?.scale === 'HB' &&
        m.hardness.min !== undefined &&
        m.hardness.max !== undefined &&
        m.tensileStrength !== undefined &&
        m.tensileStrengthMax !== undefined,
    );
    expect(steels.length).toBeGreaterThanOrEqual(10);
    for (const m of steels) {
      // A band of hardness that meets the band of strength, the conversion itself being good to some 10 %.
      expect(strengthAt(m.hardness?.max ?? 0) * 1.1, m.id).toBeGreaterThan(m.tensileStrength ?? 0);
      expect(strengthAt(m.hardness?.min ?? 0) / 1.1, m.id).toBeLessThan(m.tensileStrengthMax ?? 0);
    }
    countOutside(task, steels.length);
  });
});

test('what is stated in the standards themselves is what the bar maker’s and stockholder’s sheets print [AALCO, LUCEFIN, MCD-754 by number]', () => {
  expect(of('303-A')).toMatchObject({
    proofStrength: 190,
    tensileStrength: 500,
    tensileStrengthMax: 750,
    elongation: 35,
  });
  expect(of('11SMn30-C-10-16')).toMatchObject({ proofStrength: 410, tensileStrength: 490, tensileStrengthMax: 760 });
  expect(of('6082-T6')).toMatchObject({ proofStrength: 255, tensileStrength: 310 });
});
