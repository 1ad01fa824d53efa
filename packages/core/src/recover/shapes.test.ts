import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import type { Gauge } from '../evidence/schema.ts';
import { definePart } from '../part/define-part.ts';
import { partSchema } from '../part/schema.ts';
import { recover } from './recover.ts';
import { matchRings } from './rings.ts';

const sure = (value: number) => ({ value, uncertainty: 0.02 });

describe('grooves', () => {
  test('a groove cut to DIN 471 or 472 is told to be for that ring, size after size [reference/parts]', ({ task }) => {
    const rows = referenceRows('parts', 'retaining-rings').filter((r) => /471|472/.test(r.kind ?? ''));
    expect(rows.length).toBeGreaterThan(50);
    let [right, asked] = [0, 0];
    for (const row of rows) {
      const place = /471/.test(row.kind ?? '') ? ('outside' as const) : ('inside' as const);
      const nominal = Number(row.nominal_dia_mm);
      const matches = matchRings({
        place,
        width: sure(Number(row.groove_width_min_mm)),
        floor: sure(Number(row.groove_dia_mm)),
        surface: sure(nominal),
      });
      asked++;
      if (matches[0]?.ring.includes(` ${nominal} mm`)) right++;
    }
    expect(right / asked).toBeGreaterThan(0.9);
    countOutside(task, asked);
  });

  test('a plain wide groove is for no ring', () => {
    const matches = matchRings({ place: 'outside', width: sure(14), floor: sure(20), surface: sure(31) });
    expect(matches).toEqual([]);
  });

  test('a piston groove for a 3.53 mm section, floor 2 % over a ring, is for an AS568-2xx ring [AS568: 214 is 24.99 × 3.53]', () => {
    const floor = 24.99 * 1.02;
    const matches = matchRings({
      place: 'outside',
      width: sure(4.75),
      floor: sure(floor),
      surface: sure(floor + 2 * 3.05),
    });
    const seal = matches.find((m) => m.ring.startsWith('AS568'));
    expect(seal?.ring).toBe('AS568-214');
  });
});

describe('a part with a cone, a crown, a groove and a hexagon', () => {
  const part = definePart(
    partSchema('mm').parse({
      name: 'Plug',
      outside: [
        { id: 'nose', kind: 'crown', diameter: 20, length: 4 },
        { id: 'body', kind: 'cylinder', diameter: 20, length: 20 },
        { id: 'seat', kind: 'cone', startDiameter: 20, endDiameter: 24, length: 40 },
        { id: 'head', kind: 'cylinder', diameter: 30, length: 10 },
      ],
      grooves: [{ id: 'ring', on: 'body', along: 5, width: 1.3, floorDiameter: 19, purpose: 'retaining ring' }],
      notTurned: [{ id: 'hex', kind: 'hexagon', on: 'head', acrossFlats: 24 }],
    }),
  );
  const gauges: Gauge[] = [{ id: 'm', name: 'micrometer', kind: 'outside micrometer', resolution: 0.01 }];
  const values: [string, number][] = [
    ['nose.diameter', 20],
    ['nose.length', 4.01],
    ['body.diameter', 19.98],
    ['seat.startDiameter', 20.01],
    ['seat.endDiameter', 24.01],
    ['seat.length', 40],
    ['ring.width', 1.32],
    ['ring.floorDiameter', 18.95],
    ['hex.acrossFlats', 23.9],
  ];
  const result = recover({
    evidence: {
      readings: values.map(([of, value], i) => ({
        id: `r${i}`,
        of,
        value,
        gauge: 'm',
        condition: 'protected' as const,
      })),
    },
    gauges,
    part,
    machine: { country: 'Germany' },
  });

  test('the cone of 4 mm on 40 is a taper of 1:10', () => {
    expect(result.tapers[0]?.matches[0]?.name).toBe('1:10');
    expect(result.tapers[0]?.ratio).toBeCloseTo(0.1, 3);
  });

  test('the crown has the radius of its cap, a²/2h + h/2 [by hand: 100/8 + 2 = 14.5]', () => {
    const [crown] = result.crowns;
    expect(Math.abs((crown?.radius ?? 0) - 14.5)).toBeLessThan(3 * (crown?.uncertainty ?? 0));
  });

  test('the groove is for the retaining ring of 20 mm [DIN 471: floor 19, width 1.3]', () => {
    expect(result.rings[0]).toMatchObject({ of: 'ring', ring: 'retaining ring for a shaft of 20 mm (DIN 471)' });
  });

  test('worn flats of 23.9 mm take a spanner of 24', () => {
    expect(result.drives[0]?.written).toBe('24 mm across flats');
  });
});
