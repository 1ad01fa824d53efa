import { expect, test } from 'vitest';
import { type Row, referenceRows } from '../../test/reference.ts';
import { findORing } from '../standards/seals/o-ring.ts';
import { glandOverTolerance } from './gland.ts';
import type { GlandInput } from './gland-input.ts';
import type { HeldLimit } from './gland-rule.ts';

const rows = referenceRows('seals', 'gland-limits');

const piston: GlandInput = {
  ring: findORing('20 x 2.65'),
  hardness: 70,
  kind: 'piston',
  motion: 'static',
  grooveDiameter: { min: 20.9, max: 20.95 },
  matingDiameter: { min: 25, max: 25.033 },
  carrierDiameter: { min: 24.95, max: 24.97 },
  grooveWidth: { min: 3.6, max: 3.85 },
  pressure: 5,
};
const rod: GlandInput = {
  ...piston,
  kind: 'rod',
  ring: findORing('15.5 x 2.65'),
  grooveDiameter: { min: 20, max: 20.05 },
  matingDiameter: { min: 15.97, max: 15.98 },
  carrierDiameter: { min: 16, max: 16.03 },
};
const cases: GlandInput[] = [
  piston,
  rod,
  { ...piston, elastomer: 'FFKM' },
  { ...piston, motion: 'moving', medium: 'air' },
  { ...piston, motion: 'moving', ring: findORing('21 x 3.55'), matingDiameter: { min: 27.5, max: 27.53 } },
  { ...rod, motion: 'moving' },
];
const limits: HeldLimit[] = cases.flatMap((input) => glandOverTolerance(input).limits);

/** A bound stands in the row's figures, or in its words: `up to 25 for small cross-sections`. */
const stands = (row: Row, bound: number): boolean =>
  [row.min, row.max].some((cell) => cell !== '' && Number(cell) === bound) ||
  (row.note ?? '').includes(`up to ${bound} `);

const states = (row: Row, limit: HeldLimit): boolean =>
  row.source === limit.source.replace('seals-', '') &&
  [limit.least, limit.most].every((bound) => bound === undefined || stands(row, bound));

test('every general limit that a gland is held against is a row of the reference', () => {
  const elsewhere = /-table|^gap-|^groove-radius|^run-out|^fill-hot|^coldest|^hottest/;
  const general = limits.filter((limit) => !elsewhere.test(limit.id));
  expect(new Set(general.map((limit) => limit.id)).size).toBeGreaterThan(11);
  for (const limit of general)
    expect(
      rows.some((row) => states(row, limit)),
      `${limit.id} ${limit.source}`,
    ).toBe(true);
});

test('the rows that no gland is held against are these, and why', () => {
  const unused = rows.filter((row) => !limits.some((limit) => states(row, limit)));
  const why: Record<string, string> = {
    'squeeze_pct static-face marco': 'seals on a face are not reckoned over tolerance here',
    'squeeze_pct static-face scribd-ring09': 'the same',
    'squeeze_pct rotary marco': 'rotary seals are not offered',
    'stretch_pct_installed any cutler': 'a second voice for the limit of 5 %',
    'stretch_pct_assembly any mem-parker-squeeze': 'temporary 100 %: the level rises to stop there',
    'fill_pct any marco': 'a target, not a limit',
    'fill_pct any parker-fill': 'the ceiling of 95 % where swell is small',
    'stretch_cs_loss any marco': 'a rule of thumb, checked against the exact loss',
    'groove_wall_angle_deg any mem-parker-4-2': 'said with every recommendation',
    'stretch_pct_assembly any cutler': 'a second voice for 50 %',
  };
  const names = unused.map((row) => `${row.quantity} ${row.seal_type} ${row.source}`);
  expect(names.filter((name) => !(name in why))).toEqual([]);
});

test('bounds are in order, and each limit says what being outside it means', () => {
  for (const limit of limits) {
    if (limit.least !== undefined && limit.most !== undefined) expect(limit.least).toBeLessThanOrEqual(limit.most);
    if (limit.least !== undefined) expect(limit.under, limit.id).not.toBe('');
    if (limit.most !== undefined) expect(limit.over, limit.id).not.toBe('');
  }
});

test('brake fluid draws the caution about brakes', () => {
  const ids = glandOverTolerance({ ...piston, elastomer: 'EPDM', medium: 'DOT 4' }).findings.map((f) => f.id);
  expect(ids).toContain('duty.gland-brake');
});
