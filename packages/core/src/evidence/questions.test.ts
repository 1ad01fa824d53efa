import { describe, expect, test } from 'vitest';
import type { Question } from '../question.ts';
import { evidenceQuestions } from './questions.ts';

const questions: readonly Question[] = evidenceQuestions;

function ask(name: string, input: unknown): Record<string, unknown> {
  const question = questions.find((q) => q.name === name);
  if (!question) throw new Error(`no question ${name}`);
  return { ...Object(question.output.parse(question.answer(question.input.parse(input)))) };
}

describe('each question answers its example', () => {
  for (const { name, example } of questions)
    test(`${name}: ${example.from}`, () => {
      expect(ask(name, example.input)).toMatchObject(Object(example.gives));
    });
});

test('a calliper’s limits outweigh the rest: the factor for 95 % lies below 2 [EA-4/02 S10]', () => {
  const { factor } = ask('reading-uncertainty', {
    value: 150,
    gauge: 'calliper',
    permissibleError: 0.05,
    resolution: 0.05,
  });
  expect(Number(factor)).toBeGreaterThanOrEqual(1.65);
  expect(Number(factor)).toBeLessThan(2);
});

test('a gauge that stretches reads more too much the longer the part', () => {
  const checks = [25, 50, 75, 100].map((known) => ({ known, shown: known * 1.0002 }));
  expect(ask('gauge-check', { checks, at: 60 })).toMatchObject({ perHundred: 0.02, correction: -0.012 });
});
