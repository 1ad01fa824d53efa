import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { mmPerInch } from '../../units/quantities.ts';
import { gearTrains } from './change-gears.ts';
import { halfNuts, inStepAfter } from './half-nuts.ts';

const inch = (tpi: number) => ({ pitch: mmPerInch / tpi, kind: 'inch' as const });
const metric = (pitch: number) => ({ pitch, kind: 'metric' as const });
const exactTrain = (lead: number) => ({ meshes: [], lead, error: 0 });

test('the lines of the thread dial are those on the plate of a small lathe [LMS-p28]', ({ task }) => {
  const rows = referenceRows('threads', 'threading-dial');
  for (const row of rows) {
    const lead = mmPerInch / Number(row.tpi_to_cut);
    const { keep, lines } = halfNuts(exactTrain(lead), lead, inch(16));
    if (row.published_divisions === 'any') expect(keep === 'anywhere' || lines?.length === 8).toBe(true);
    else expect(lines?.join(' ')).toBe(row.published_divisions);
    countOutside(task, 1);
  }
});

test('a thread of which the leadscrew holds a whole number may be picked up anywhere', () => {
  expect(halfNuts(exactTrain(0.5), 0.5, metric(1.5)).keep).toBe('anywhere');
  expect(halfNuts(exactTrain(mmPerInch / 24), mmPerInch / 24, inch(8)).keep).toBe('anywhere');
});

test('metric threads on an inch leadscrew, and the other way about, keep the half nuts closed [threading practice]', ({
  task,
}) => {
  expect(halfNuts(exactTrain(1), 1, inch(8)).keep).toBe('closed');
  expect(halfNuts(exactTrain(mmPerInch / 20), mmPerInch / 20, metric(3)).keep).toBe('closed');
  countOutside(task, 2);
});

test('a train that is not exact keeps them closed', () => {
  const [train] = gearTrains(1.27, 1.5, [55, 65, 40, 60]);
  if (!train) throw new Error('no train');
  expect(halfNuts(train, 1.27, metric(1.5)).keep).toBe('closed');
});

test('1 mm on a leadscrew of 1.5 mm is in step again after 3 mm; 1.25 on 3 after 15 [by hand]', () => {
  expect(halfNuts(exactTrain(1), 1, metric(1.5))).toMatchObject({ keep: 'at steps', every: 3 });
  expect(inStepAfter(1.25, 3)).toBeCloseTo(15, 9);
});

test('where they are in step again, both have gone whole turns and no shorter travel does it', () => {
  const whole = (x: number) => Math.abs(x - Math.round(x)) < 1e-6;
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40 }), fc.constantFrom(1, 1.5, 2, 3, 4, 6), (twentieths, screw) => {
      const lead = twentieths / 20;
      const every = inStepAfter(lead, screw);
      if (every === undefined) return;
      expect(whole(every / lead) && whole(every / screw)).toBe(true);
      for (let n = 1; n * screw < every - 1e-9; n++) expect(whole((n * screw) / lead)).toBe(false);
    }),
  );
});

test('a dial of its own is followed', () => {
  const lead = mmPerInch / 11;
  expect(halfNuts(exactTrain(lead), lead, inch(8), { divisions: 8, travelPerTurn: 4 }).lines).toEqual([1, 3, 5, 7]);
});
