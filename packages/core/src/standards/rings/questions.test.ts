import { describe, expect, test } from 'vitest';
import type { Question } from '../../question.ts';
import { sourceKeys } from '../../sources/register.ts';
import { ringQuestions } from './questions.ts';

const questions: readonly Question[] = ringQuestions;
const ask = (name: string, input: unknown): unknown => {
  const question = questions.find((q) => q.name === name);
  return question?.output.parse(question.answer(question.input.parse(input)));
};

describe.each(questions.map((question) => [question.name, question] as const))('%s', (name, question) => {
  test('answers its own example as its source says', () => {
    expect(ask(name, question.example.input)).toMatchObject(Object(question.example.gives));
  });

  test('names registered sources', () => {
    for (const key of question.sources) expect(sourceKeys).toContain(key);
  });
});

test('a stronger part carries more, and a remembered row says so', () => {
  expect(ask('retaining-ring', { place: 'shaft', diameter: 19, yieldStrength: 400 })).toMatchObject({
    grooveLoad: 9687,
  });
  expect(ask('retaining-ring', { place: 'bore', diameter: 30 })).toMatchObject({ standing: 'from memory' });
});
