import { describe, expect, test } from 'vitest';
import { countOutside, type Row, referenceRows } from '../../test/reference.ts';
import { lifeAfterChange, speedForLife, taylorThrough, toolLife } from './tool-life.ts';

const rows = referenceRows('cutting', 'taylor-worked-examples');
const row = (id: string): Row => rows.find((r) => r.id === id) ?? {};
const published = (id: string) => Number(row(id).published);

describe('Taylor examples of textbooks', () => {
  test('T001, T008, T009: the law through two worn edges [GRP, GRO]', ({ task }) => {
    expect(taylorThrough({ speed: 180, life: 4.25 }, { speed: 110, life: 35 }).exponent).toBeCloseTo(
      published('T001'),
      2,
    );
    const law = taylorThrough({ speed: 160, life: 5 }, { speed: 100, life: 41 });
    expect(law.exponent).toBeCloseTo(published('T008'), 3);
    expect(law.constant).toBeCloseTo(published('T009'), 0);
    countOutside(task, 3);
  });

  test('T010: the law returns 12.7 min where the third edge wore out in 12 [GRO]', ({ task }) => {
    const life = toolLife({ exponent: 0.223, constant: 229 }, 130);
    expect(Math.abs(life / published('T010') - 1)).toBeLessThan(0.06);
    countOutside(task, 1);
  });

  test('T006, T007: half the speed gives four times the life at n = 0.5, a quarter gives sixteen [KAL]', ({ task }) => {
    const law = { exponent: 0.5, constant: 400 };
    expect(100 * (toolLife(law, 50) / toolLife(law, 100) - 1)).toBeCloseTo(published('T006'), 6);
    expect(100 * (toolLife(law, 25) / toolLife(law, 100) - 1)).toBeCloseTo(published('T007'), 6);
    countOutside(task, 2);
  });

  test('T016, T017, T018: a quarter more speed, feed or depth [RAO]', ({ task }) => {
    const law = { exponent: 0.13, feedExponent: 0.6, depthExponent: 0.3 };
    const known = { speed: 40, feed: 0.25, depth: 2, life: 60 };
    expect(lifeAfterChange(law, known, { ...known, speed: 50 })).toBeCloseTo(published('T016'), 1);
    expect(Math.abs(lifeAfterChange(law, known, { ...known, feed: 0.3125 }) - published('T017'))).toBeLessThan(0.02);
    expect(lifeAfterChange(law, known, { ...known, depth: 2.5 })).toBeCloseTo(published('T018'), 1);
    countOutside(task, 3);
  });

  test('T020: two steels last alike at 26.7 m/min [GATE07]', ({ task }) => {
    const a = { exponent: 0.45, constant: 90 };
    const b = { exponent: 0.3, constant: 60 };
    const speed = published('T020');
    expect(toolLife(a, speed) / toolLife(b, speed)).toBeCloseTo(1, 2);
    countOutside(task, 1);
  });

  test('T021 to T025: the maker’s speed factors are Taylor with n = 0.25 [DOR]', ({ task }) => {
    const law = { exponent: 0.25, constant: 100 };
    for (const [id, life] of [
      ['T021', 10],
      ['T022', 20],
      ['T023', 30],
      ['T024', 45],
      ['T025', 60],
    ] as const) {
      expect(Math.abs(speedForLife(law, life) / speedForLife(law, 15) - published(id))).toBeLessThan(0.025);
    }
    countOutside(task, 5);
  });

  test('rows computed from remembered constants check the code: T026 to T030', () => {
    for (const id of ['T026', 'T028', 'T029', 'T030']) {
      const [n, c, v] = [...(row(id).inputs ?? '').matchAll(/=([\d.]+)/g)].map((m) => Number(m[1]));
      expect(toolLife({ exponent: n ?? 0, constant: c ?? 0 }, v ?? 0) / Number(row(id).recomputed)).toBeCloseTo(1, 4);
    }
  });
});

test('refuses a slower edge that wore out first', () => {
  expect(() => taylorThrough({ speed: 100, life: 5 }, { speed: 160, life: 40 })).toThrow('faster edge');
});
