import { expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { workshopSchema } from '../lathe/schema.ts';
import { parseThread } from '../standards/threads/thread.ts';
import { gearsForThread } from './thread-gears.ts';

function gearsFor(
  designation: string,
  leadscrew: number | { tpi: number },
  changeGears: number[],
  length = 15,
  slideFree = true,
) {
  const screw =
    typeof leadscrew === 'number'
      ? { kind: 'metric' as const, pitch: leadscrew }
      : { kind: 'inch' as const, threadsPerInch: leadscrew.tpi };
  const { lathe } = workshopSchema('mm').parse({
    ...fullWorkshop,
    lathe: { ...fullWorkshop.lathe, leadscrew: screw, changeGears },
  });
  const thread = parseThread(designation);
  return gearsForThread(
    'op',
    lathe,
    {
      id: 't',
      on: 's',
      thread,
      side: 'external',
      from: 0,
      to: length,
      entersAt: 'right',
    },
    slideFree,
  );
}

const ids = (g: ReturnType<typeof gearsFor>) => g.findings.map((f) => `${f.level} ${f.id}`);

test('an exact train is named in the table and in what is laid out, without a finding', () => {
  const gears = gearsFor('M12x1.25', 1.5, [20, 24, 36, 50, 60]);
  expect(ids(gears)).toEqual([]);
  expect(gears.needed).toContain('50 : 60');
  expect(gears.notes.join(' ')).toContain('50 turns with the spindle, 60 sits on the leadscrew');
});

test('20 threads an inch on 1.5 mm with the wheels of the book is off by 606 in a million: told, and let pass [TM-LIB, G13]', ({
  task,
}) => {
  const row = referenceRows('threads', 'change-gears-examples').find((r) => r.id === 'G13');
  const gears = gearsFor('1/4-20 UNC', 1.5, [55, 40, 65]);
  expect(ids(gears)).toEqual(['note route.gear-train-not-exact']);
  expect(gears.notes.join(' ')).toContain(`−${Math.abs(Math.round(Number(row?.error_ppm)))} in a million`);
  // 606 in a million of 15 mm is 9 µm of pitch, 16 µm on the diameter of a 60° thread.
  expect(gears.findings[0]?.because[0]?.value).toBeCloseTo(0.0157, 3);
  countOutside(task, 1);
});

test('the same train over a long engagement uses up the tolerance and is refused, with the nearest and its error', () => {
  const gears = gearsFor('1/4-20 UNC', 1.5, [55, 40, 65], 120);
  expect(ids(gears)).toEqual(['stop route.no-gear-train']);
  expect(gears.findings[0]?.says).toContain('55 : 65');
  expect(gears.findings[0]?.because[0]?.value).toBeCloseTo(1.26923, 5);
  expect(gears.notes.join(' ')).toContain('will not screw on');
});

test('wheels that come nowhere near, or one wheel alone, stop the thread', () => {
  expect(ids(gearsFor('M6', 1.5, [20, 80]))).toEqual(['stop route.no-gear-train']);
  expect(ids(gearsFor('M6', 1.5, [20]))).toEqual(['stop route.no-gear-train']);
});

test('wheels that are not entered are asked for, and stop nothing', () => {
  expect(ids(gearsFor('M6', 1.5, []))).toEqual(['note route.no-change-gears']);
});

test('two starts of 1 mm are geared for 2 mm, and a left-hand thread runs away from the chuck', () => {
  const gears = gearsFor('M16xPh2P1', { tpi: 8 }, [40, 50, 80, 127]);
  expect(gears.needed).toContain('80 : 127');
  expect(gears.notes.join(' ')).toContain('Leave the half nuts closed');
  expect(gearsFor('M6-LH', 1, [40, 40]).notes.join(' ')).toContain('away from the chuck');
});

test('an inch thread on an inch leadscrew is picked up on the lines of the thread dial', () => {
  expect(gearsFor('1/2-13 UNC', { tpi: 8 }, [40, 65]).notes.join(' ')).toContain('line 1');
});

test('several starts are set on with the top slide only where it is not wanted for the depth', () => {
  const notes = (slideFree: boolean, wheels: number[]) =>
    gearsFor('M16xPh4P2', 1.5, wheels, 15, slideFree).notes.join(' ');
  for (const wheels of [[40, 80, 60, 20], []]) {
    expect(notes(true, wheels)).toContain('2 starts, one after the other');
    expect(notes(true, wheels)).toContain('top slide, parallel to the work, on by 2 mm');
    expect(notes(false, wheels)).not.toContain('parallel to the work');
    expect(notes(false, wheels)).toContain('by 1/2 turn');
  }
  // Without wheels the plate is read for the lead.
  expect(notes(true, [])).toContain('a feed of 4 mm a turn');
});

test('the lines are those of the lathe’s own thread dial, where it is entered [LMS-p28: 18 to the inch on lines 1 and 5]', ({
  task,
}) => {
  const { lathe } = workshopSchema('mm').parse({
    ...fullWorkshop,
    lathe: {
      ...fullWorkshop.lathe,
      leadscrew: { kind: 'inch', threadsPerInch: 16 },
      changeGears: [40, 45],
      threadDial: { divisions: 4, travelPerTurn: 1 },
    },
  });
  const thread = parseThread('5/16-18 UNC');
  const placed = { id: 't', on: 's', thread, side: 'external', from: 0, to: 15, entersAt: 'right' } as const;
  const notes = (own: typeof lathe) => gearsForThread('op', own, placed, true).notes.join(' ');
  const { threadDial: _, ...without } = lathe;
  expect(notes(without)).toContain('close the half nuts at line 1, 5');
  // Of four lines an inch apart by quarters, 18 threads are in step at every half inch.
  expect(notes(lathe)).toContain(
    'a thread dial of 4 lines that turns once in 1 in of travel, close the half nuts at line 1, 3',
  );
  countOutside(task, 1);
});
