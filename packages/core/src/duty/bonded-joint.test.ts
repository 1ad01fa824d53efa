import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { socketTorqueByFlanks } from '../standards/drives/hexagon-strength.ts';
import {
  bondAgeings,
  bondMaterials,
  bondStrengths,
  gapPoints,
  ordinaryHeat,
  roughnessPoints,
  type Spread,
  safetyDivisors,
  specialHeat,
} from './bond-factors.ts';
import { bondedForce, bondedTorque, bondForceCapacity, bondTorqueCapacity } from './bonded-joint.ts';

const newtonMetrePerPoundInch = 0.1129848;

describe('worked bonds [reference joints/bond-worked-examples]', () => {
  const rows = referenceRows('joints', 'bond-worked-examples');
  const published = rows.filter((row) => row.published !== '' && row.status !== 'from memory');

  test('bonded areas that two sources print come out as printed', ({ task }) => {
    const areas = published.filter((row) => row.quantity === 'bond area');
    expect(areas.length).toBe(2);
    for (const row of areas) {
      // The force at 1 MPa is the area.
      const area = bondForceCapacity(Number(row.dia_mm), Number(row.length_mm), 1);
      expect(Math.abs(area / Number(row.published) - 1), row.id).toBeLessThan(0.002);
      countOutside(task, 1);
    }
  });

  test('18 N·m is the 159 lbf·in that a maker sets beside it [HENK-FAQ]', ({ task }) => {
    const [row] = published.filter((r) => r.unit === 'lbf in');
    expect(18 / newtonMetrePerPoundInch).toBeCloseTo(Number(row?.published), -0.3);
    countOutside(task, 1);
  });

  test('every row agrees with a second calculation by the formulas', () => {
    for (const row of rows.filter((r) => r.recomputed !== '' && r.id !== 'bond-08' && r.id !== 'bond-37')) {
      const [diameter, length] = [Number(row.dia_mm), Number(row.length_mm)];
      const shear = (Number(row.shear_N_per_mm2) * Number(row.factor_product || 1)) / Number(row.safety_divisor || 1);
      const answer = row.case?.includes('flanks')
        ? socketTorqueByFlanks(diameter, length, 600)
        : row.quantity === 'torque'
          ? bondTorqueCapacity(diameter, length, shear)
          : row.quantity === 'bond area'
            ? Math.PI * diameter * length
            : bondForceCapacity(diameter, length, shear) / 1000;
      expect(Math.abs(answer / Number(row.recomputed) - 1), row.id).toBeLessThan(0.001);
    }
  });

  test('named conditions bring in the factors that the rows state as products', () => {
    const of = (id: string) => Number(rows.find((row) => row.id === id)?.recomputed);
    const stainless = bondedForce({
      diameter: 12,
      length: 15,
      strength: 25,
      materials: ['steel', 'stainless steel'],
      gap: 0.1,
    });
    expect(stainless.capacity.typical / 2000).toBeCloseTo(of('bond-13'), 3);
    const aluminium = bondedTorque({ diameter: 20, length: 20, strength: 25, materials: ['aluminium', 'steel'] });
    expect(aluminium.capacity.typical / 2).toBeCloseTo(of('bond-18'), 2);
    const hot = bondedTorque({ diameter: 8, length: 8, strength: 25, temperature: 100 });
    expect(hot.capacity.typical / 2).toBeCloseTo(of('bond-26'), 3);
    const alternating = bondedForce({ diameter: 18, length: 25, strength: 25, alternating: true });
    expect(alternating.capacity.typical / 1500).toBeCloseTo(of('bond-27'), 3);
    const long = bondedForce({ diameter: 25, length: 40, strength: 25, ageing: 'petrol' });
    expect(long.capacity.typical / 3000).toBeCloseTo(of('bond-23'), 2);
  });
});

describe('factors [reference joints/bond-factors]', () => {
  const rows = referenceRows('joints', 'bond-factors');

  test('every factor, strength and divisor of the reference is in the tables', () => {
    const tabled: readonly Spread[] = [
      ...Object.values(bondStrengths),
      ...Object.values(bondMaterials),
      ...Object.values(bondAgeings),
      ...Object.values(safetyDivisors),
      ...[gapPoints, roughnessPoints, ordinaryHeat, specialHeat].flatMap((points) =>
        points.map(([, factor]) => factor),
      ),
      { low: 0.2, typical: 0.3, high: 0.5 },
    ];
    const kinds = /factor$|static shear strength|safety divisor/;
    const wanted = rows.filter((row) => kinds.test(row.factor ?? ''));
    expect(wanted.length).toBeGreaterThan(25);
    for (const row of wanted) {
      const { value_low: low, value_typical: typical, value_high: high } = row;
      const match = tabled.some(
        (t) => t.low === Number(low) && t.typical === Number(typical) && t.high === Number(high),
      );
      expect(match, `${row.factor} ${row.condition}`).toBe(true);
    }
  });

  test('each band stands in order, and a wider gap or more heat never strengthens a bond', () => {
    for (const row of rows.filter((r) => r.value_typical !== '' && r.value_low !== '' && r.value_high !== '')) {
      expect(Number(row.value_low), row.condition).toBeLessThanOrEqual(Number(row.value_typical));
      expect(Number(row.value_typical), row.condition).toBeLessThanOrEqual(Number(row.value_high));
    }
    for (const points of [gapPoints, ordinaryHeat, specialHeat]) {
      for (const [i, [at, factor]] of points.entries()) {
        const [before, stronger] = points[i - 1] ?? [Number.NEGATIVE_INFINITY, factor];
        expect(at).toBeGreaterThan(before);
        for (const end of ['low', 'typical', 'high'] as const) expect(factor[end]).toBeLessThanOrEqual(stronger[end]);
      }
    }
  });
});

describe('a bonded joint', () => {
  const joint = { diameter: 12, length: 12, strength: 25 } as const;
  const size = fc.double({ min: 3, max: 60, noNaN: true });

  test('carries torque as the square of its diameter and as its length', () => {
    fc.assert(
      fc.property(size, fc.double({ min: 1, max: 1.5, noNaN: true }), (diameter, share) => {
        const length = 0.6 * diameter;
        const one = bondedTorque({ diameter, length, strength: 'high' }).capacity.typical;
        const longer = bondedTorque({ diameter, length: length * share, strength: 'high' }).capacity.typical;
        const thicker = bondedTorque({ diameter: diameter * share, length, strength: 'high' }).capacity.typical;
        expect(longer / one).toBeCloseTo(share, 9);
        expect(thicker / one).toBeCloseTo(share ** 2, 9);
      }),
    );
  });

  test('has its band in order, whatever is asked', () => {
    const input = fc.record({
      diameter: size,
      length: size,
      strength: fc.constantFrom<'low' | 'medium' | 'high' | 'high temperature'>(
        'low',
        'medium',
        'high',
        'high temperature',
      ),
      gap: fc.double({ min: 0, max: 0.25, noNaN: true }),
      roughness: fc.double({ min: 0.1, max: 6, noNaN: true }),
      temperature: fc.double({ min: -55, max: 150, noNaN: true }),
    });
    fc.assert(
      fc.property(input, (bond) => {
        const { low, typical, high } = bondedForce(bond).capacity;
        expect(low).toBeLessThanOrEqual(typical);
        expect(typical).toBeLessThanOrEqual(high);
        expect(low).toBeGreaterThan(0);
      }),
    );
  });

  test('counts no more than 1.5 diameters of length, and says so', () => {
    const long = bondedTorque({ ...joint, length: 40 });
    expect(long.capacity.typical).toBeCloseTo(bondedTorque({ ...joint, length: 18 }).capacity.typical, 9);
    expect(long.findings.map((f) => f.id)).toContain('duty.bond-long');
  });

  test('is stopped when it typically lets go below its duty, cautioned when the reserve is small', () => {
    const ids = (duty: number) => bondedTorque({ ...joint, gap: 0.1 }, duty).findings.map((f) => `${f.level} ${f.id}`);
    expect(ids(80)).toContain('stop duty.bond-too-weak');
    expect(ids(30)).toContain('caution duty.bond-small-reserve');
    expect(ids(53)).toContain('caution duty.bond-unproved');
    expect(ids(2)).toEqual(['note duty.bond-from-memory', 'note duty.bond-unstated']);
  });

  test('always says that its factors are from memory, and to prove it', () => {
    const result = bondedTorque(joint, 10);
    expect(result.standing).toBe('from memory');
    expect(result.advice[0]).toContain('torque test');
    expect(result.advice[0]).toContain('15 N·m');
  });

  test('refuses a gap that no compound fills, and heat for which no factor is known', () => {
    expect(() => bondedTorque({ ...joint, gap: 0.4 })).toThrow('0 to 0.25 mm');
    expect(() => bondedTorque({ ...joint, temperature: 200 })).toThrow('-55 to 150 °C');
  });
});
