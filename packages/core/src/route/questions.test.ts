import { expect, test } from 'vitest';
import { countOutside } from '../../test/reference.ts';
import { DomainError, InputError } from '../errors.ts';
import type { Question } from '../question.ts';
import { routeQuestions } from './questions.ts';

const dial = { division: 0.02, perTurn: 1, reads: 'radius' };

function ask(name: string, input: unknown): unknown {
  const found = routeQuestions.find((q) => q.name === name);
  if (!found) throw new Error(name);
  const question: Question = found;
  return question.output.parse(question.answer(question.input.parse(input)));
}

test('a dial that reads the diameter turns twice as far for the same pass', () => {
  const onDiameter = { division: 0.02, perTurn: 1, reads: 'diameter' };
  expect(ask('dial-passes', { from: 20, to: 19, greatest: 0.5, dial })).toMatchObject({
    passes: [{ turns: 0, divisions: 25, depth: 0.5 }],
  });
  expect(ask('dial-passes', { from: 20, to: 19, greatest: 0.5, dial: onDiameter })).toMatchObject({
    passes: [{ turns: 1, divisions: 0, depth: 0.5 }],
  });
});

test('a bore ends at or below the size wanted, and what the dial cannot set is said', () => {
  expect(ask('dial-passes', { from: 10, to: '10.53', greatest: 0.3, dial })).toMatchObject({
    passes: [{ diameter: 10.52 }],
    left: 0.01,
  });
});

test('passes finer than a division are refused', () => {
  expect(() => ask('dial-passes', { from: 20, to: 19, greatest: 0.01, dial })).toThrow(DomainError);
});

test('the set-over of a Morse 3 taper at 0.60235 in the foot is 1° 26′ 16″', () => {
  const input = { startDiameter: '1.60235 in', endDiameter: '1 in', length: '12 in', tolerance: '0.001 in' };
  expect(ask('cone-setting', input)).toMatchObject({ text: '1° 26′', taper: 0.050196 });
});

test('the steps of a dome of 25.4 mm whole radius leave the corners of the closed form', () => {
  const answer = ask('curve-steps', { radius: 25.4, height: 25.4, steps: 20 });
  // Metrology reference, rows P09 and P11: √(R² + a²/n) − R and a√(k/n).
  const { largestCorner, steps } = Object(answer);
  expect(largestCorner).toBeCloseTo(0.6272549, 5);
  expect(steps[9].radius).toBeCloseTo(17.9605122, 4);
});

test('a dome of 100 mm with corners of 0.05 mm takes 60 steps (metrology reference, row P18)', () => {
  const { steps } = Object(ask('curve-steps', { radius: 100, height: 3, corner: 0.05 }));
  expect(steps).toHaveLength(60);
});

test('in whole divisions no step cuts past the dome', () => {
  const dials = { along: { division: 0.05, perTurn: 2, reads: 'travel' }, across: dial };
  const { steps } = Object(ask('curve-steps', { radius: 32, height: 6, steps: 12, noseRadius: 0.4, dials }));
  // The centre of the nose stays its radius and the dome's away from the dome's centre.
  for (const { depth, radius } of steps) {
    expect(Math.hypot(32 - (depth - 0.4), radius + 0.4)).toBeGreaterThanOrEqual(32.4 - 1e-6);
  }
  expect(steps[0].along.divisions + 40 * steps[0].along.turns).toBeCloseTo(steps[0].depth / 0.05, 9);
});

test('a dome is asked for with steps or corners, and is not higher than its radius', () => {
  expect(() => ask('curve-steps', { radius: 32, height: 6 })).toThrow(InputError);
  expect(() => ask('curve-steps', { radius: 5, height: 6, steps: 3 })).toThrow(DomainError);
});

test('thread passes end at full depth and every pass takes less than the one before', () => {
  const { passes } = Object(ask('thread-passes', { designation: 'M12x1.25-6g', dial }));
  const depths: number[] = passes.map((p: { depth: number }) => p.depth);
  expect(depths.at(-1)).toBe(depths.at(-2));
  // 0.6134 P of ISO 68-1 for the basic form; limits in their middle and whole divisions move it a little.
  expect(Math.abs((depths.at(-1) ?? 0) - 0.6134 * 1.25)).toBeLessThan(0.05);
  expect(depths).toEqual(depths.toSorted((a, b) => a - b));
});

test('a special thread without limits is still cut, without crest limits', () => {
  expect(ask('thread-passes', { designation: '3/8 BSF', side: 'internal', dial })).toHaveProperty('passes');
  expect(() => ask('thread-passes', { designation: 'M', dial })).toThrow();
});

const byHand = { gears: [20, 40, 45, 50, 60, 80], leadscrew: { kind: 'metric', pitch: 3 } };

test('change gears are told for a designation as for its pitch', () => {
  const exact = { drivers: [40], driven: [80], errorPpm: 0, drift: 0 };
  expect(ask('change-gears', { ...byHand, designation: 'M10' })).toMatchObject({ pitch: 1.5, best: exact });
  expect(ask('change-gears', { ...byHand, pitch: 1.5 })).toMatchObject({ halfNuts: 'anywhere', best: exact });
});

test('change gears are asked with a pitch or a designation, not with both or neither', () => {
  expect(() => ask('change-gears', byHand)).toThrow(InputError);
  expect(() => ask('change-gears', { ...byHand, pitch: 1, designation: 'M6' })).toThrow(InputError);
});

test('an inch thread on an inch leadscrew names the lines of the thread dial [LMS-p28: 18 to the inch at 1 and 5]', ({
  task,
}) => {
  const lathe = { leadscrew: { kind: 'inch', threadsPerInch: 16 }, gears: [48, 54] };
  expect(ask('change-gears', { ...lathe, pitch: '1/18 in' })).toMatchObject({ best: { errorPpm: 0 }, lines: [1, 5] });
  countOutside(task, 1);
});

test('fine infeed is asked by the limits or by the infeed, and refuses limits that no top slide serves', () => {
  const topSlide = { division: 0.02, perTurn: 2, reads: 'travel' };
  expect(ask('fine-infeed', { topSlide, tolerance: 0.018, left: 0.1 })).toMatchObject({
    text: '5° 44′',
    onDiameter: 0.004,
    last: { turns: 0, divisions: 25, short: 0 },
  });
  expect(() => ask('fine-infeed', { topSlide, tolerance: 0.001 })).toThrow(DomainError);
  expect(() => ask('fine-infeed', { topSlide })).toThrow(DomainError);
});
