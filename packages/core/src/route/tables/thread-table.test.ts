import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { parseThread } from '../../standards/threads/thread.ts';
import { crestAim } from './thread-aim.ts';
import { planThread } from './thread-plan.ts';
import { threadTable } from './thread-table.ts';

const dial = { division: 0.01, perTurn: 1, reads: 'radius' } as const;

function tableOf(designation: string, side: 'external' | 'internal' = 'external') {
  const thread = parseThread(designation);
  return {
    thread,
    table: threadTable({ id: 'table', operation: 'operation', placed: { thread, side }, crossSlide: dial }),
  };
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

test('no first infeed is deeper than printed for stainless steel, with a sharp cutter neither [INGERSOLL-p1262]', ({
  task,
}) => {
  const rows = referenceRows('threads', 'first-pass-by-material').filter((r) => r.material === 'stainless steel');
  for (const row of rows) {
    for (const noseRadius of [undefined, 0, 0.1]) {
      const { passes } = planThread({
        placed: { thread: parseThread(`M24x${Number(row.pitch_mm)}`), side: 'external' },
        crossSlide: dial,
        cutter: noseRadius === undefined ? undefined : { material: 'high-speed steel', noseRadius },
      });
      expect(passes[0]?.depth).toBeLessThanOrEqual(Number(row.column_a_if_inch_mm) + 0.005);
    }
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
  const crossSlide = { division: 0.1, perTurn: 2, reads: 'diameter' } as const;
  const coarse = threadTable({ id: 'table', operation: 'operation', placed: { thread, side: 'external' }, crossSlide });
  const cut = coarse.rows.slice(0, -2).map((r) => Number(r.depth));
  expect(new Set(cut).size).toBe(cut.length);
});

test('the crest of M12x1.25-6g is turned within its limits [ISO 965: 11.760 to 11.972]', ({ task }) => {
  const crest = crestAim(parseThread('M12x1.25-6g'), 'external');
  expect(crest?.max).toBeCloseTo(11.972, 3);
  expect(crest?.min).toBeCloseTo(11.76, 3);
  countOutside(task, 2);
});

const topSlide = { division: 0.02, perTurn: 1, reads: 'travel' } as const;
const planOf = (designation: string, more: Partial<Parameters<typeof planThread>[0]> = {}) =>
  planThread({
    placed: { thread: parseThread(designation), side: 'external' },
    crossSlide: dial,
    topSlide,
    ...more,
  });

test('along the flank the top slide travels 0.7048 P for 0.6134 P of depth at 29.5° [NEETS-14345]', ({ task }) => {
  const { way, passes } = planOf('M10');
  expect(way.angle).toBeCloseTo((29.5 * Math.PI) / 180, 6);
  for (const { setting, depth } of passes) expect(setting.travel / depth).toBeCloseTo(0.7048 / 0.6134, 3);
  countOutside(task, 2);
});

test('a thread of 55° is set over 27°, half a degree less than half of it', () => {
  expect(planOf('1/2 BSF').way.angle).toBeCloseTo((27 * Math.PI) / 180, 6);
});

test('a fine pitch goes straight in, a coarse one along the flank; several starts and a slide without a dial straight [NEETS-14345: fine threads straight in]', ({
  task,
}) => {
  expect(planOf('M6').way.way).toBe('straight');
  expect(planOf('M8').way.way).toBe('along the flank');
  expect(planOf('M16', { topSlide: undefined }).way.way).toBe('straight');
  countOutside(task, 1);
});

test('a wish goes before the pitch', () => {
  expect(planOf('M20', { infeed: 'straight' }).way.way).toBe('straight');
  expect(planOf('M6', { infeed: 'along the flank' }).way.way).toBe('along the flank');
  // Without a dial nobody can follow it.
  expect(planOf('M6', { infeed: 'along the flank', topSlide: undefined }).way.way).toBe('straight');
});

describe.each(['straight', 'along the flank'] as const)('fed %s', (infeed) => {
  test.each(threads)('%s ends at most a division short of its depth and never past it', (designation) => {
    for (const division of [0.01, 0.02, 0.0254, 0.05]) {
      const slide = { division, perTurn: 50 * division, reads: 'travel' } as const;
      const { full, passes } = planOf(designation, { infeed, crossSlide: slide, topSlide: slide });
      const end = passes.at(-1)?.depth ?? 0;
      expect(Math.max(...passes.map((p) => p.depth))).toBeLessThanOrEqual(full.depth + 1e-9);
      expect(full.depth - end).toBeLessThan(division + 1e-9);
    }
  });
});

test('carbide takes no infeed under 0.05 mm and no pass without infeed [TUNGALOY-p1636]', ({ task }) => {
  const fine = { division: 0.001, perTurn: 1, reads: 'radius' } as const;
  for (const designation of ['M6', 'M10', 'M24x1.5', 'M24x3']) {
    const cutter = { material: 'carbide', noseRadius: 0.1 } as const;
    const { passes, springs } = planOf(designation, { crossSlide: fine, infeed: 'straight', cutter });
    expect(springs).toBe(0);
    passes.forEach((p, i) => {
      expect(p.depth - (passes[i - 1]?.depth ?? 0)).toBeGreaterThanOrEqual(0.05 - 0.0011);
    });
  }
  countOutside(task, 2);
});

test('a sharper cutter goes deeper by what its end lies further forward, r at 60°, and reaches the same pitch diameter', () => {
  const of = (noseRadius: number) => planOf('M20', { cutter: { material: 'high-speed steel', noseRadius } }).full;
  // The end of a round nose lies r (1/sin 30° − 1) = r behind the point of the flanks.
  expect(of(0.1).depth - of(0.3).depth).toBeCloseTo(0.2, 9);
  expect(of(0).depth - of(0.3).depth).toBeCloseTo(0.3, 9);
  expect(of(0.1).own).toBe(true);
});

test('a nose that does not go into the groove gives way to the one of the form, and says so', () => {
  const { full } = planOf('M6', { cutter: { material: 'high-speed steel', noseRadius: 0.8 } });
  expect(full.own).toBe(false);
  expect(full.depth).toBe(planOf('M6').full.depth);
});

test('what the micrometer should read when it is first put over the wires is what is left on the diameter above the target', () => {
  const { table } = tableOf('M14x1.5');
  const [, target] = /reads ([\d.]+) mm when the thread is right/.exec(table.notes.join(' ')) ?? [];
  const [, pass, first] = /after pass (\d+): about ([\d.]+) mm/.exec(table.notes.join(' ')) ?? [];
  const { full } = planOf('M14x1.5', { infeed: 'straight' });
  const at = Number(table.rows.find((r) => r.pass === pass)?.depth);
  expect(Number(first) - Number(target)).toBeCloseTo(2 * (full.depth - at), 2);
  expect(Number(first)).toBeGreaterThan(Number(target));
});

test('the depth is reckoned from the crest that is turned first, where the standard holds no limits too', () => {
  for (const designation of ['M16x4 P2', 'M300x8', '1/4 NPT', 'M10', '3/8 BSF']) {
    const thread = parseThread(designation);
    const crest = crestAim(thread, 'external')?.aim;
    if (crest === undefined) continue;
    expect(planOf(designation).full.crestDiameter, designation).toBe(crest);
  }
  expect(crestAim(parseThread('M16x4 P2'), 'external')?.aim).toBeCloseTo(15.8, 6);
});
