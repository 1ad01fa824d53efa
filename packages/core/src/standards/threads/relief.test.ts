import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { standardThreads } from './catalogue.ts';
import { reliefGroove } from './relief.ts';
import { parseThread } from './thread.ts';

/** A metric thread of the pitch, large enough to be worked out. */
const withPitch = (pitch: string | undefined) => parseThread(`M${Math.max(4, Math.ceil(4 * Number(pitch)))}x${pitch}`);

test('undercuts and run-outs are those of DIN 76-1 [from memory]', ({ task }) => {
  for (const row of referenceRows('threads', 'thread-relief')) {
    if (row.standard !== 'DIN 76-1') continue;
    const thread = withPitch(row.pitch_mm);
    const side = row.thread === 'external' ? 'external' : 'internal';
    const groove = reliefGroove(thread, side, /A|C/.test(row.form ?? '') ? 'normal' : 'short');
    expect(groove.form).toBe(row.form?.[0]);
    expect(groove.diameter - thread.majorDiameter).toBeCloseTo(Number(row.groove_dia_dg?.slice(1)), 6);
    expect([groove.leastLength, groove.greatestLength, groove.radius]).toEqual(
      [row.g1_min_mm, row.g2_max_mm, row.radius_r_approx_mm].map(Number),
    );
    countOutside(task, 4);
    if (side === 'external') {
      expect(groove.runOut).toBeCloseTo(Number(row.run_out_x_max_mm), 6);
      expect(groove.shoulderDistance).toBeCloseTo(Number(row.shoulder_distance_a_max_mm), 6);
      countOutside(task, 2);
    }
  }
});

test('inside, the normal groove and run-out are those read in GB/T 3; its short groove follows another rule [GBT3-CADHOME]', ({
  task,
}) => {
  for (const row of referenceRows('threads', 'thread-relief')) {
    if (row.standard !== 'GB/T 3-1997') continue;
    const thread = withPitch(row.pitch_mm);
    const groove = reliefGroove(thread, 'internal', row.form === 'normal' ? 'normal' : 'short');
    expect(groove.diameter - thread.majorDiameter).toBeCloseTo(Number(row.groove_dia_dg?.slice(1)), 6);
    countOutside(task, 1);
    if (row.form !== 'normal') continue;
    expect(groove.leastLength).toBeCloseTo(Number(row.g1_min_mm), 6);
    expect(groove.runOut).toBeCloseTo(Number(row.run_out_x_max_mm), 6);
    expect(Math.abs(groove.radius - Number(row.radius_r_approx_mm))).toBeLessThanOrEqual(0.41);
    countOutside(task, 3);
  }
});

test('outside, run-out and shoulder distance are those of ISO 3508, groove diameter and radius those of ISO 4755 [from memory]', ({
  task,
}) => {
  for (const row of referenceRows('threads', 'thread-relief')) {
    const thread = withPitch(row.pitch_mm);
    if (row.standard === 'ISO 3508') {
      const [normal, short] = (row.run_out_x_max_mm ?? '').split(' / ').map(Number);
      const [a, aShort] = (row.shoulder_distance_a_max_mm ?? '').split(' / ').map(Number);
      expect(reliefGroove(thread, 'external', 'normal').runOut).toBeCloseTo(normal ?? 0, 6);
      expect(reliefGroove(thread, 'external', 'short').runOut).toBeCloseTo(short ?? 0, 6);
      expect(reliefGroove(thread, 'external', 'normal').shoulderDistance).toBeCloseTo(a ?? 0, 6);
      expect(reliefGroove(thread, 'external', 'short').shoulderDistance).toBeCloseTo(aShort ?? 0, 6);
      countOutside(task, 4);
    }
    if (row.standard === 'ISO 4755') {
      const groove = reliefGroove(thread, 'external');
      expect(groove.diameter - thread.majorDiameter).toBeCloseTo(Number(row.groove_dia_dg?.slice(1)), 6);
      expect(groove.radius).toBe(Number(row.radius_r_approx_mm));
      // ISO 4755 is shorter: 3P over all against 3.5P.
      expect(groove.greatestLength).toBeGreaterThanOrEqual(Number(row.g2_max_mm));
      countOutside(task, 2);
    }
  }
});

test('an undercut outside clears the root of its thread, one inside the crest of the bolt', () => {
  for (const t of standardThreads()) {
    if (t.pitch > 6 || t.pitch < 0.2) continue;
    const groove = reliefGroove(t, 'external');
    expect(groove.diameter, t.designation).toBeLessThan(t.rootDiameterExternal);
    expect(groove.diameter, t.designation).toBeGreaterThan(0.4 * t.majorDiameter);
    expect(reliefGroove(t, 'internal').diameter, t.designation).toBeGreaterThan(t.majorDiameter);
  }
});

test('disputed rows and threads that DIN 76-1 does not cover say so', () => {
  expect(reliefGroove(parseThread('M20'), 'external').remark).toContain('d − 3.8');
  expect(reliefGroove(parseThread('3/8 BSF'), 'external').remark).toContain('ISO metric');
  expect(() => reliefGroove(parseThread('2 1/2-4 UNC'), 'external')).toThrow('0.2 to 6 mm');
});
