/** Cones, caps and circles against worked examples from outside. */
import { describe, expect, test } from 'vitest';
import { countOutside, type Row, referenceRows } from '../../test/reference.ts';
import {
  boreByJaws,
  boreByTwoBalls,
  capRadius,
  footCircle,
  leverTrue,
  radiusBetweenRollers,
  tiltError,
  veeWidth,
} from '../evidence/gauging.ts';
import { degrees, radians } from '../units/quantities.ts';
import { algebraicCircle, geometricCircle, type Point } from './circle.ts';
import { roundTrace, touchingCircle } from './enclosing-circles.ts';
import { matchTapers, standardTapers, taperByBalls, taperHalfAngle, taperOverRollers } from './tapers.ts';

const examples = new Map(referenceRows('metrology', 'cone-sphere-measuring-examples').map((row) => [row.id, row]));

/** The source's own figure where it printed one, else the one recomputed for the table. */
function figure(row: Row | undefined): { value: number; tolerance: number } {
  const text = row?.published || row?.recomputed || '';
  const decimals = text.split('.')[1]?.length ?? 0;
  return { value: Number(text), tolerance: row?.published ? 0.51 * 10 ** -decimals : 2e-5 };
}

const cases: [string, number][] = [
  ['S02', degrees(Math.asin(0.0504))],
  ['S08', capRadius(28, 14.5)],
  ['S09', capRadius(28, 12)],
  ['S11', capRadius(14, 3.225011)],
  ['S12', capRadius(20, 4.174243)],
  ['S13', capRadius(6, 1.506698)],
  ['S15', capRadius(footCircle(50), 3.52397)],
  ['S16', capRadius(15, 2.73507, 2.5)],
  ['S17', capRadius(20, 3.25889, 3)],
  ['S18', capRadius(15, 3.13068, -2.5)],
  ['S22', degrees(taperOverRollers(56.30104, 65.11739, 25, 12).halfAngle)],
  ['S23', taperOverRollers(56.30104, 65.11739, 25, 12).diameter],
  ['S24', degrees(taperOverRollers(52.81999, 56.81998, 40, 16).halfAngle)],
  ['S25', taperOverRollers(52.81999, 56.81998, 40, 16).diameter],
  ['S05', 2 * degrees(taperByBalls(16, 76, 20, -8).halfAngle)],
  ['S26', degrees(taperByBalls(6, 70.88822, 9, 46.33233).halfAngle)],
  ['S28', degrees(taperByBalls(5, 95.68148, 10, 71.36297).halfAngle)],
  ['S29', taperByBalls(5, 95.68148, 10, 71.36297).diameter],
  ['S30', boreByTwoBalls(24, 41.88854)],
  ['S32', radiusBetweenRollers(77.72671, 12)],
  ['S33', radiusBetweenRollers(51.8178, 8)],
  ['S35', veeWidth(radians(90), 6, 2.24264)],
  ['S40', 1000 * tiltError(60, radians(0.5))],
  ['S44', 1000 * leverTrue(0.1, radians(30))],
];

describe('measuring cones and caps', () => {
  test.each(cases)('%s of cone-sphere-measuring-examples comes out as printed or recomputed there', (id, ours) => {
    const { value, tolerance } = figure(examples.get(id));
    // S02 is printed as degrees, minutes and seconds, good to a second.
    expect(Math.abs(ours - value)).toBeLessThan(
      id === 'S02' ? 1 / 3600 : tolerance * Math.max(1, Math.abs(value) / 40),
    );
  });

  test('the worked examples of the table were counted', ({ task }) => {
    expect(cases.every(([id]) => examples.has(id))).toBe(true);
    countOutside(task, cases.length + 3);
  });

  test.each([
    ['S36', 6, 1.2],
    ['S37', 10, 2],
    ['S38', 4, 0.8],
  ])('%s: jaws with flats read small, and the bore comes back', (id, bore, flats) => {
    expect(boreByJaws(Number(examples.get(id)?.recomputed), flats)).toBeCloseTo(bore, 6);
  });

  test('Morse 3 measured on a sine bar (2° 53 min 20 s [GROFF]) is told to be a Morse taper, not a 1:10', () => {
    const matches = matchTapers(radians(2.88889 / 2), radians(0.01));
    expect(matches[0]?.name).toMatch(/Morse/);
  });

  test('every standard taper, measured exactly, is the first of its matches or one closer than 1 in 1000', () => {
    for (const t of standardTapers) {
      const half = Math.atan(t.ratio / 2);
      const [first] = matchTapers(half, 2e-6);
      expect(Math.abs((first?.ratio ?? 0) / t.ratio - 1)).toBeLessThan(1e-3);
    }
  });

  test('a taper of its own has no likely match', () => {
    const matches = matchTapers(taperHalfAngle(20, 27.3, 30), 1e-4);
    expect(matches[0]?.probability ?? 0).toBeLessThan(0.5);
  });
});

describe('circles through points', () => {
  const data = new Map<string, Point[]>();
  for (const row of referenceRows('metrology', 'circle-fit-data')) {
    const [name, , x, y] = Object.values(row);
    const key = name ?? '';
    data.set(key, [...(data.get(key) ?? []), { x: Number(x), y: Number(y) }]);
  }
  const rows = referenceRows('metrology', 'circle-fit-results').filter((r) => data.has(r.dataset ?? ''));
  const fits = {
    Kasa: (p: Point[]) => algebraicCircle(p, 'Kåsa'),
    Pratt: (p: Point[]) => algebraicCircle(p, 'Pratt'),
    Taubin: (p: Point[]) => algebraicCircle(p, 'Taubin'),
    geometric: geometricCircle,
  };

  test.each(Object.entries(fits))('%s fits agree with the table to 10⁻⁶ of the radius', (method, fit) => {
    const mine = rows.filter((r) => r.method === method);
    expect(mine.length).toBeGreaterThan(3);
    for (const row of mine) {
      const circle = fit(data.get(row.dataset ?? '') ?? []);
      const radius = Number(row.recomputed_r);
      expect(Math.abs(circle.radius - radius), row.id ?? '').toBeLessThan(1e-6 * radius);
      expect(Math.abs(circle.x - Number(row.recomputed_xc)), row.id ?? '').toBeLessThan(2e-6 * radius);
      expect(Math.abs(circle.y - Number(row.recomputed_yc)), row.id ?? '').toBeLessThan(2e-6 * radius);
    }
  });

  test.each(['minimum zone', 'minimum circumscribed', 'maximum inscribed'] as const)(
    '%s circles agree with the table to 10⁻⁸ of the radius',
    (method) => {
      const mine = rows.filter((r) => r.method === method);
      expect(mine.length).toBeGreaterThan(0);
      for (const row of mine) {
        const circle = touchingCircle(data.get(row.dataset ?? '') ?? [], method);
        const radius = Number(row.recomputed_r);
        expect(Math.abs(circle.radius - radius), row.id ?? '').toBeLessThan(2e-8 * radius);
        expect(Math.abs(circle.x - Number(row.recomputed_xc)), row.id ?? '').toBeLessThan(1e-7 * radius);
        expect(Math.abs(circle.y - Number(row.recomputed_yc)), row.id ?? '').toBeLessThan(1e-7 * radius);
        expect(Math.abs(circle.roundness - Number(row.max_minus_min_distance)), row.id ?? '').toBeLessThan(5e-7);
      }
    },
  );

  test('an enclosing circle of an arc is refused', () => {
    const arc = [0, 0.3, 0.6, 0.9].map((t) => ({ x: 10 * Math.cos(t), y: 10 * Math.sin(t) }));
    expect(() => touchingCircle(arc, 'minimum zone')).toThrow('half of the circle');
  });

  test('centre, mean, residual and lobes of a spindle trace [roundness-trace-results]', ({ task }) => {
    const readings = referenceRows('metrology', 'roundness-trace').map((r) => Number(r.radial_reading_um));
    const found = roundTrace(readings);
    const results = referenceRows('metrology', 'roundness-trace-results');
    const value = (start: string) => Number(results.find((r) => r.quantity?.startsWith(start))?.value);
    expect(found.x).toBeCloseTo(value('eccentricity a'), 6);
    expect(found.y).toBeCloseTo(value('eccentricity b'), 6);
    expect(found.mean).toBeCloseTo(value('mean radius'), 6);
    expect(found.deviation).toBeCloseTo(value('rms residual'), 6);
    const harmonics = results.filter((r) => r.quantity?.startsWith('harmonic amplitude'));
    for (const row of harmonics) {
      const count = Number(row.quantity?.split(' ').at(-1));
      expect(found.lobes.find((l) => l.count === count)?.amplitude, row.quantity ?? '').toBeCloseTo(
        Number(row.value),
        6,
      );
    }
    countOutside(task, 4 + harmonics.length);
  });

  test('the circles of the table were counted', ({ task }) => {
    countOutside(
      task,
      3 * rows.filter((r) => r.method !== undefined && (r.method in fits || /^m(in|ax)imum/.test(r.method))).length,
    );
  });

  test('points in one line, and two points, are refused', () => {
    const line = [0, 1, 2, 3].map((v) => ({ x: v, y: 2 * v }));
    expect(() => geometricCircle(line)).toThrow('one line');
    expect(() => geometricCircle(line.slice(0, 2))).toThrow('three');
  });
});
