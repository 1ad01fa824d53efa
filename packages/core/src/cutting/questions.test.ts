import { expect, test } from 'vitest';
import type { Question } from '../question.ts';
import { drillingQuestion } from './drilling-questions.ts';
import { powerQuestion, speedQuestion } from './drive-questions.ts';
import { cuttingQuestions } from './questions.ts';

const questions: readonly Question[] = cuttingQuestions;

/** Asks as the command line does: through the schema of the input, and the answer through its own. */
function ask(name: string, input: unknown): Record<string, unknown> {
  const question = questions.find((q) => q.name === name);
  if (!question) throw new Error(`no question ${name}`);
  const answer = question.output.parse(question.answer(question.input.parse(input)));
  if (typeof answer !== 'object' || answer === null) throw new Error(`${name} answers no record`);
  return { ...answer };
}

const cut = { material: '303', depth: '0.2', feed: 0.05, noseRadius: '1/64 in', approachAngle: 93, edge: 'sharp' };

test('the force is found for a material by name, in the sizes as typed', () => {
  const answer = ask('cutting-force', cut);
  expect(answer).toMatchObject({ rubbing: 'cuts' });
  expect(Number(answer.radial)).toBeGreaterThan(10);
  expect(Number(answer.radial)).toBeLessThan(60);
  expect(Number(answer.low)).toBeLessThan(1);
  expect(Number(answer.high)).toBeGreaterThan(1);
  expect(JSON.stringify(answer.remarks)).toContain('printed for');
  expect(JSON.stringify(answer.sources)).toContain('WKZ');
});

test('a material is named or its figures are given, not both and not neither', () => {
  expect(() => ask('cutting-force', { ...cut, specificForce: 2000 })).toThrow('nothing when a material is named');
  expect(() => ask('cutting-force', { ...cut, material: undefined })).toThrow(
    'a material, or specificForce with exponent',
  );
  expect(() => ask('cutting-force', { ...cut, material: 'unobtainium' })).toThrow('known material');
});

test('a plastic without a known cutting force is refused, not guessed at', () => {
  expect(() => ask('cutting-force', { ...cut, material: 'POM-C' })).toThrow('none guessed');
});

test('a light cut with a moulded edge in stainless is stopped, in brass it is not', () => {
  const light = { depth: 0.05, feed: 0.03, noseRadius: 0.8, approachAngle: 95, edge: 'moulded' };
  expect(ask('minimum-chip', { ...light, material: '304' })).toMatchObject({ rubbing: 'rubs', level: 'stop' });
  expect(ask('minimum-chip', { ...light, workHardens: false })).toMatchObject({ rubbing: 'rubs', level: 'caution' });
});

test('a hole in stainless is pecked, and fed no slower than the skin allows', () => {
  const answer = ask('drilling', { material: '304', diameter: 5, feed: 0.03, depth: 22, speed: 400 });
  expect(answer).toMatchObject({ pecks: [10, 15, 20, 22], leastFeed: 0.05, speedShare: 0.8 });
  expect(JSON.stringify(answer.remarks)).toContain('never dwell');
});

test('speed is asked one way or the other', () => {
  expect(() => ask('cutting-speed', { diameter: 10 })).toThrow('either a spindle speed or a cuttingSpeed');
  expect(() => ask('cutting-speed', { diameter: 10, speed: 100, cuttingSpeed: 10 })).toThrow('either');
  expect(ask('cutting-speed', { diameter: '1/2 in', cuttingSpeed: 15.96 })).toMatchObject({ speed: 400 });
});

test('the motor gives what the drive loses', () => {
  expect(ask('cutting-power', { force: 200, diameter: 20, speed: 500 })).toMatchObject({
    torque: 2,
    power: 104.7,
    motor: 116.4,
  });
  expect(ask('cutting-power', { force: 200, diameter: 20, speed: 500, efficiency: 0.5 })).toMatchObject({
    motor: 209.4,
  });
});

test('questions have names of their own', () => {
  const names = cuttingQuestions.map((q) => q.name);
  expect(new Set(names).size).toBe(names.length);
  expect([speedQuestion.name, powerQuestion.name, drillingQuestion.name]).toEqual([
    'cutting-speed',
    'cutting-power',
    'drilling',
  ]);
});

test('between two worn edges the life is asked by speed and the speed by life, and both agree', () => {
  const edges = { first: { speed: 160, life: 5 }, second: { speed: 100, life: 41 } };
  const { life } = ask('tool-life', { ...edges, speed: 130 });
  expect(Number(ask('tool-life', { ...edges, life }).speed)).toBeCloseTo(130, 9);
  expect(ask('tool-life', { ...edges, speed: 200 })).toMatchObject({ within: false });
  expect(() => ask('tool-life', edges)).toThrow('a speed, or a life');
});
