import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { parseThread } from '../../standards/threads/thread.ts';
import { crestAim, threadTable } from './thread-table.ts';

const dial = { division: 0.01, perTurn: 1, reads: 'radius' } as const;

function tableOf(designation: string, side: 'external' | 'internal' = 'external') {
  const thread = parseThread(designation);
  const placed = { id: 't', on: 's', thread, side, from: 0, to: 10, entersAt: 'right' } as const;
  return { thread, table: threadTable('table', 'operation', placed, dial) };
}

const threads = [
  'M6',
  'M10',
  'M12x1.25-6g',
  'M20x1.5',
  'M30',
  '1/4-20 UNC',
  '1/2 BSF',
  '3/8 BSW',
  'G1/4 A',
  '0 BA',
  'M3',
];

describe.each(threads)('the table of %s', (designation) => {
  const { table, thread } = tableOf(designation);
  const depths = table.rows.map((r) => Number(r.depth));
  const cut = depths.slice(0, -2);

  test('goes deeper with every pass, each no deeper than the one before by more than a division', () => {
    cut.slice(1).forEach((depth, i) => {
      expect(depth).toBeGreaterThan(cut[i] ?? 0);
    });
    const infeeds = cut.map((depth, i) => depth - (cut[i - 1] ?? 0));
    infeeds.slice(1).forEach((infeed, i) => {
      expect(infeed).toBeLessThanOrEqual((infeeds[i] ?? 0) + dial.division + 1e-9);
    });
  });

  test('ends at full depth and stays there for the spring passes', () => {
    expect(depths.at(-1)).toBe(depths.at(-2));
    expect(depths.at(-2)).toBe(depths.at(-3));
  });

  test('leaves a crest wider than nothing and narrower than the pitch, shrinking from pass to pass', () => {
    const crests = table.rows.map((r) => Number(r.crest));
    expect(Math.min(...crests)).toBeGreaterThan(0);
    expect(Math.max(...crests)).toBeLessThan(thread.pitch);
    expect(crests).toEqual(crests.toSorted((a, b) => b - a));
  });
});

test('the depth of M10 from its greatest crest with the form’s own tip is 0.6134 pitches [NEETS-14345, depth along the slide 0.7048 P at 29.5°]', ({
  task,
}) => {
  // Crest and pitch diameter are aimed at the middle of 6g: the depth differs from the basic one by half the difference of the two tolerances.
  const { table } = tableOf('M10');
  expect(Math.abs(Number(table.rows.at(-1)?.depth) - 0.6134 * 1.5)).toBeLessThan(0.06);
  countOutside(task, 1);
});

test('no first infeed is deeper than printed for stainless steel [INGERSOLL-p1262]', ({ task }) => {
  const rows = referenceRows('threads', 'first-pass-by-material').filter((r) => r.material === 'stainless steel');
  for (const row of rows) {
    const { table } = tableOf(`M24x${Number(row.pitch_mm)}`);
    expect(Number(table.rows[0]?.depth)).toBeLessThanOrEqual(Number(row.column_a_if_inch_mm) + 0.005);
  }
  countOutside(task, rows.length);
  expect(rows.length).toBeGreaterThan(5);
});

test('there are at least as many passes as makers of threading tools print [TUNGALOY-p1636, INGERSOLL-p1262]', ({
  task,
}) => {
  const rows = referenceRows('threads', 'pass-counts').filter((r) => r.pitch_mm !== '' && Number(r.pitch_mm) <= 3);
  for (const row of rows) {
    const { table } = tableOf(`M24x${Number(row.pitch_mm)}`);
    // Passes that the dial cannot tell apart are left out: count them by a dial of a thousandth.
    expect(table.rows.length).toBeGreaterThanOrEqual(Number(row.passes_min));
  }
  countOutside(task, rows.length);
});

test('the depth reached after a share of the passes is within 0.08 mm of the one printed after the same share [SUMI-p404]', ({
  task,
}) => {
  const rows = referenceRows('threads', 'infeed-passes').filter(
    (r) => r.source === 'SUMI-p404' && r.form === 'metric 60 external full-profile' && Number(r.pitch_mm) <= 2,
  );
  let checked = 0;
  for (const row of rows) {
    const { table } = tableOf(`M24x${Number(row.pitch_mm)}`);
    const cut = table.rows.slice(0, -2).map((r) => Number(r.depth));
    const share = Number(row.pass_no) / Number(row.passes);
    const [whole, rest] = [Math.floor(share * cut.length), (share * cut.length) % 1];
    const before = cut[whole - 1] ?? 0;
    const reached = before + rest * ((cut[whole] ?? before) - before);
    const full = cut.at(-1) ?? 1;
    expect(Math.abs(reached / full - Number(row.cumulative_mm) / Number(row.total_depth_mm)) * full).toBeLessThan(0.08);
    checked++;
  }
  countOutside(task, checked);
  expect(checked).toBeGreaterThan(40);
});

test('an inside thread shows no crest, and is tried with its mate', () => {
  const { table } = tableOf('M20x1.5', 'internal');
  expect(table.rows.every((r) => r.crest === '')).toBe(true);
  expect(table.notes.join(' ')).toContain('Try the mate');
});

test('a coarse dial leaves no pass that does nothing', () => {
  const thread = parseThread('M6');
  const placed = { id: 't', on: 's', thread, side: 'external', from: 0, to: 10, entersAt: 'right' } as const;
  const coarse = threadTable('table', 'operation', placed, { division: 0.1, perTurn: 2, reads: 'diameter' });
  const cut = coarse.rows.slice(0, -2).map((r) => Number(r.depth));
  expect(new Set(cut).size).toBe(cut.length);
});

test('the crest of M12x1.25-6g is turned within its limits [ISO 965: 11.760 to 11.972]', ({ task }) => {
  const crest = crestAim(parseThread('M12x1.25-6g'), 'external');
  expect(crest?.max).toBeCloseTo(11.972, 3);
  expect(crest?.min).toBeCloseTo(11.76, 3);
  countOutside(task, 2);
});
