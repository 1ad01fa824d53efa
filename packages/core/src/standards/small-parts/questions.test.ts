import { describe, expect, test } from 'vitest';
import type { Question } from '../../question.ts';
import { sourceKeys } from '../../sources/register.ts';
import { smallPartQuestions } from './questions.ts';

const questions: readonly Question[] = smallPartQuestions;
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

test('the load that shears a dowel is as printed, or by the strength given', () => {
  expect(ask('dowel', { kind: 'ASME B18.8.5M', diameter: 6 })).toMatchObject({
    singleShear: 29700,
    hole: { min: 5.987, max: 6 },
  });
  expect(ask('dowel', { kind: 'DIN 6325', diameter: 6, shearStrength: 1050 })).toMatchObject({ singleShear: 29688 });
});

test('a centre hole wants the work or the pilot, and heavy work takes the next size', () => {
  expect(ask('centre-hole', { work: 12, heavy: true })).toMatchObject({ pilot: 2.5 });
  expect(ask('centre-hole', { pilot: 3.15, form: 'R' })).toMatchObject({
    body: 8,
    angle: 'curved flank for a 60° centre',
  });
  expect(() => ask('centre-hole', {})).toThrow('the diameter of the work, or the pilot');
});

test('a chamfer and a grease nipple are answered as habit and memory', () => {
  expect(ask('general-chamfer', { diameter: 25 })).toMatchObject({ standing: 'common practice' });
  expect(JSON.stringify(ask('grease-nipple', {}))).toContain('from memory');
});
