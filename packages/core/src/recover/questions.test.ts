import { describe, expect, test } from 'vitest';
import type { Question } from '../question.ts';
import { recoverQuestions } from './questions.ts';

const questions: readonly Question[] = recoverQuestions;

/** Asks as the command line does: through the schema of the input, and the answer through its own. */
function ask(name: string, input: unknown): Record<string, unknown> {
  const question = questions.find((q) => q.name === name);
  if (!question) throw new Error(`no question ${name}`);
  const answer = question.output.parse(question.answer(question.input.parse(input)));
  if (typeof answer !== 'object' || answer === null) throw new Error(`${name} answers no record`);
  return { ...answer };
}

describe('each question answers its example', () => {
  for (const { name, example } of questions) {
    test(`${name}: ${example.from}`, () => {
      expect(ask(name, example.input)).toMatchObject(Object(example.gives));
    });
  }
});

test('inches as typed are read, and an English machine of the twenties is one of inches', () => {
  const answer = ask('recover-size', {
    units: 'in',
    role: 'sliding',
    country: 'England',
    decade: 1920,
    readings: [{ value: '.374', gauge: 'outside micrometer', condition: 'protected' }],
  });
  expect(answer).toMatchObject({ nominals: [{ nominal: '3/8 in' }, {}] });
  expect(answer.inches).toBeGreaterThan(0.95);
});

test('no reading at all is refused with an example', () => {
  expect(() => ask('recover-size', { units: 'mm', readings: [] })).toThrow('at least one reading');
});

test('a crest of 9.5 mm and 24 threads an inch on an American machine is 3/8-24 UNF, told from its look-alikes', () => {
  expect(ask('recover-thread', { crest: '9.48', threadsPerInch: 24, country: 'USA' })).toMatchObject({
    likeliest: '3/8-24 UNF',
  });
});

test('without a pitch the next reading is the pitch', () => {
  const { next } = ask('recover-thread', { crest: 9.9 });
  expect(next).toMatchObject([{ says: expect.stringContaining('pitch') }, {}]);
});

test('a length over pitches and threads an inch at once are refused', () => {
  expect(() => ask('recover-thread', { crest: 9.9, over: 10, threadsPerInch: 20 })).toThrow('not both');
});

test('a cylinder is no taper', () => {
  expect(() => ask('recover-taper', { measured: 'diameters', first: 10, second: 10, distance: 20 })).toThrow('no cone');
});
