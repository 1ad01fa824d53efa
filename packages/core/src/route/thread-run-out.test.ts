import { describe, expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { type WorkshopDocument, workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { type PartDocument, partSchema } from '../part/schema.ts';
import { planRoute } from './plan-route.ts';
import type { RouteWishes } from './schema.ts';

/** A shoulder of Ø24 at the chuck, a threaded stem that stands out of it; both invented. */
const stem = (length: number, more: Partial<PartDocument> = {}): PartDocument => ({
  name: 'stem',
  material: '303',
  outside: [
    { id: 'head', kind: 'cylinder', diameter: 24, length: 12 },
    { id: 'stem', kind: 'cylinder', diameter: 12, length: 30 },
  ],
  threads: [{ id: 'screw', on: 'stem', designation: 'M12x1.5', length, from: 'end' }],
  ...more,
});

function plan(document: PartDocument, bench: Partial<WorkshopDocument> = {}, wishes?: RouteWishes) {
  const part = definePart(partSchema('mm').parse(document));
  const route = planRoute(part, workshopSchema('mm').parse({ ...fullWorkshop, ...bench }), wishes);
  if (!route) throw new Error('no route');
  const thread = route.operations.find((o) => o.kind === 'thread');
  return {
    route,
    thread,
    notes: route.tables.find((t) => t.kind === 'thread')?.notes.join(' ') ?? '',
    found: route.findings.filter((f) => f.at === thread?.id),
  };
}

const ids = (found: readonly { id: string }[]) => found.map((f) => f.id);

describe('a thread that runs out in front of a shoulder', () => {
  const rows = referenceRows('threads', 'thread-relief').filter(
    (r) => r.standard === 'DIN 76-1' && r.thread === 'external' && r.pitch_mm === '1.5',
  );
  const least = Math.min(...rows.map((r) => Number(r.shoulder_distance_a_max_mm)));

  test('is warned of when the last full turn is nearer to it than the short distance of DIN 76-1, a = 3 mm for 1.5 mm of pitch [from memory]', ({
    task,
  }) => {
    expect(least).toBe(3);
    // The stem is 30 mm long: what the thread leaves of it is the way to the shoulder.
    for (const room of [0.5, 1, 2, 2.9]) {
      const { found } = plan(stem(30 - room));
      const finding = found.find((f) => f.id === 'route.thread-no-room');
      expect(finding?.because[0]?.limit).toBe(least);
      expect(Math.abs((finding?.because[0]?.value ?? 0) - room)).toBeLessThan(0.06);
    }
    for (const room of [3.1, 4, 10]) expect(ids(plan(stem(30 - room)).found)).not.toContain('route.thread-no-room');
    countOutside(task, 1);
  });

  test('names the relief of the standard: Ø9.7, 1.8 mm wide at least, 3.2 mm where there is room [DIN 76-1, from memory]', ({
    task,
  }) => {
    const says = plan(stem(30)).found.find((f) => f.id === 'route.thread-no-room');
    expect(says?.remedies.join(' ')).toMatch(/Ø9\.7 mm, 1\.8 mm .* 3\.2 mm/);
    countOutside(task, 3);
  });

  test('is drawn out by hand over 3.75 mm, 1.9 mm when short [DIN 76-1 x, from memory]', ({ task }) => {
    expect(plan(stem(20)).notes).toContain('over at most 3.8 mm, 1.9 mm where it must be short');
    countOutside(task, 2);
  });

  test('says how long the way takes: 10 mm at 1.5 mm a turn and 125 rpm is 3.2 s', () => {
    expect(plan(stem(20)).notes).toMatch(/through the 10\.0 mm before a shoulder .* in 3\.2 s at 125 rpm/);
  });

  test('is warned of when that is faster than a hand: 4 mm at 600 rpm is 0.27 s', () => {
    const quick = { lathe: { ...fullWorkshop.lathe, speeds: { kind: 'steps' as const, rpm: [600] } } };
    const finding = plan(stem(26), quick).found.find((f) => f.id === 'route.thread-quick');
    expect(finding?.because[0]?.value).toBeCloseTo(4 / 15, 2);
    expect(ids(plan(stem(26)).found)).not.toContain('route.thread-quick');
  });
});

test('a relief is seen, and one that is too narrow is said to be', () => {
  const relieved = (width: number) =>
    plan(
      stem(30, {
        grooves: [{ id: 'relief', on: 'stem', along: 0, width, floorDiameter: 9.7, purpose: 'thread relief' }],
      }),
    );
  expect(relieved(3.2).notes).toContain('Stop once the cutter is clear of the last turn');
  expect(ids(relieved(3.2).found)).not.toContain('route.thread-no-room');
  const narrow = relieved(1.5).found.find((f) => f.id === 'route.thread-no-room');
  // Short undercut of DIN 76-1 for 1.5 mm of pitch: 1.8 mm at its floor.
  expect(narrow?.because[0]).toMatchObject({ limit: 1.8 });
});

test('beside a thinner section nothing stands in the way', () => {
  const { notes, found } = plan({
    ...stem(0),
    outside: [
      { id: 'head', kind: 'cylinder', diameter: 24, length: 12 },
      { id: 'neck', kind: 'cylinder', diameter: 9, length: 20 },
      { id: 'stem', kind: 'cylinder', diameter: 12, length: 20 },
    ],
    threads: [{ id: 'screw', on: 'stem', designation: 'M12x1.5', from: 'end' }],
  });
  // Roughing leaves 0.2 mm on the shoulder of the head.
  expect(notes).toContain('through the 19.8 mm before a shoulder');
  expect(ids(found)).toEqual(['route.no-change-gears']);
});

test('a thread whose far side only comes off in the other setup gets a run-out there, clear of the finished part and of the jaws', () => {
  const part: PartDocument = {
    ...stem(0),
    outside: [
      { id: 'tail', kind: 'cylinder', diameter: 8, length: 40 },
      { id: 'stem', kind: 'cylinder', diameter: 12, length: 20 },
      { id: 'neck', kind: 'cylinder', diameter: 9, length: 10 },
    ],
    threads: [{ id: 'screw', on: 'stem', designation: 'M12x1.5', from: 'end' }],
  };
  const { route, thread, found, notes } = plan(part, {}, { firstEndOut: 'right' });
  const groove = route.operations.find((o) => o.id === 'groove-run-out-screw');
  expect(groove && groove.number < (thread?.number ?? 0)).toBe(true);
  expect(groove?.to).toBeCloseTo(40, 9);
  const setup = route.setups.find((s) => s.id === groove?.setup);
  const jaws = Math.max(setup?.gripFrom ?? 0, setup?.gripTo ?? 0);
  expect(groove && groove.from - jaws).toBeGreaterThanOrEqual(1 - 1e-9);
  const floor = Number(/to Ø([\d.]+)/.exec(groove?.title ?? '')?.[1]);
  // Above the tail with what is left for finishing it, below the root of the thread, basic 10.16 (ISO 68-1, d − 1.22687 P).
  expect(floor).toBeGreaterThanOrEqual(8.6);
  expect(floor).toBeLessThanOrEqual(10.16);
  expect(ids(found)).not.toContain('route.thread-no-room');
  expect(notes).toContain('Stop once the cutter is clear');
});

test('a left-hand thread that begins at a shoulder has no place to begin; with a relief it has', () => {
  const left = { threads: [{ id: 'screw', on: 'stem', designation: 'M12x1.5-LH', from: 'end' as const }] };
  expect(ids(plan(stem(0, left)).found)).toContain('route.thread-no-start');
  const relief = {
    id: 'relief',
    on: 'stem',
    along: 0,
    width: 3.2,
    floorDiameter: 9.7,
    purpose: 'thread relief' as const,
  };
  expect(ids(plan(stem(0, { ...left, grooves: [relief] })).found)).not.toContain('route.thread-no-start');
});

describe('inside', () => {
  const nut = (depth: number, length: number): PartDocument => ({
    name: 'blind nut',
    material: '303',
    outside: [{ id: 'body', kind: 'cylinder', diameter: 30, length: 40 }],
    inside: { right: [{ id: 'hole', kind: 'bored', diameter: 14.5, depth }] },
    threads: [{ id: 'screw', on: 'hole', designation: 'M16x1.5', length }],
  });

  test('a thread that ends nearer to the bottom than the short run-out of 2.5 pitches is warned of [DIN 76-1, from memory]', ({
    task,
  }) => {
    const near = plan(nut(20, 17.5)).found.find((f) => f.id === 'route.thread-no-room');
    expect(near?.because[0]).toMatchObject({ limit: 3.75 });
    expect(ids(plan(nut(20, 15)).found)).not.toContain('route.thread-no-room');
    countOutside(task, 1);
  });

  test('its mouth is chamfered to past the major diameter before it, though none is drawn', () => {
    const { route, thread } = plan(nut(20, 15));
    const mouth = route.operations.find((o) => o.id === 'chamfer-thread-screw');
    expect(mouth && mouth.number < (thread?.number ?? 0)).toBe(true);
    expect(Number(/Ø([\d.]+)/.exec(mouth?.title ?? '')?.[1])).toBeGreaterThan(16);
  });
});

describe('the chamfers of a thread', () => {
  const chamfer = (size: number | undefined) =>
    plan({
      ...stem(0),
      outside: [
        { id: 'head', kind: 'cylinder', diameter: 24, length: 12 },
        {
          id: 'stem',
          kind: 'cylinder',
          diameter: 12,
          length: 30,
          ...(size === undefined ? {} : { endEdge: { kind: 'chamfer' as const, size } }),
        },
      ],
      threads: [{ id: 'screw', on: 'stem', designation: 'M12x1.5', length: 20, from: 'end' }],
    }).route.operations.find((o) => o.id === 'chamfer-thread-stem');

  test('as drawn where that goes below the root', () => {
    expect(chamfer(1.5)?.title).toContain('1.5 mm × 45°');
    expect(chamfer(1.5)?.why.join(' ')).not.toContain('thin edge');
  });

  test('deeper than drawn where that stops above it, with the reason', () => {
    expect(chamfer(0.5)?.title).toMatch(/45° to Ø(9\.\d|10)/);
    expect(chamfer(0.5)?.why.join(' ')).toContain('Ø11 only, above the root');
  });

  test('and where none is drawn; only at the open end where the other is a shoulder', () => {
    expect(chamfer(undefined)?.title).toContain('Chamfer the open end');
    expect(chamfer(undefined)?.why.join(' ')).toContain('None is drawn');
  });
});

test('a wish for the way of infeed changes the table, and is told with the operation', () => {
  const way = (infeed: 'straight' | 'along the flank') =>
    plan(stem(20), {}, { changes: [{ operation: 'thread-screw', infeed }] });
  const title = (w: ReturnType<typeof way>) => w.route.tables.find((t) => t.kind === 'thread')?.title;
  expect(title(way('straight'))).toBe('Thread M12x1.5');
  expect(title(way('along the flank'))).toBe('Thread M12x1.5, by the top slide');
  expect(way('straight').thread?.wish?.infeed).toBe('straight');
  const other = plan(stem(20), {}, { changes: [{ operation: 'finish-turn-head', infeed: 'straight' }] });
  expect(ids(other.route.findings)).toContain('route.infeed-of-no-thread');
  expect(ids(way('straight').route.findings)).not.toContain('route.infeed-of-no-thread');
});

test('a taper thread is said to want more than the saddle', () => {
  const pipe: PartDocument = {
    name: 'plug',
    material: '303',
    outside: [
      { id: 'head', kind: 'cylinder', diameter: 24, length: 12 },
      { id: 'screw-cone', kind: 'cone', startDiameter: 13.7, endDiameter: 12.7, length: 16 },
    ],
    threads: [{ id: 'screw', on: 'screw-cone', designation: '1/4 NPT', from: 'end' }],
  };
  expect(ids(plan(pipe).found)).toContain('route.thread-taper');
  expect(ids(plan(stem(20)).found)).not.toContain('route.thread-taper');
});
