import { describe, expect, test } from 'vitest';
import type { Question } from '../../question.ts';
import { sourceKeys } from '../../sources/register.ts';
import { driveQuestions } from './questions.ts';

const questions: readonly Question[] = driveQuestions;
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

test('torques are answered where a load is given, and doubtful sockets say so', () => {
  expect(
    ask('hexagon-drive', { acrossFlats: 6, torque: 10, depth: 6, pressure: 600, tensileStrength: 1800 }),
  ).toMatchObject({
    flankTorque: 21.6,
    keyTorque: 77.76,
  });
  expect(ask('hexagon-drive', { acrossFlats: 1.3 })).toMatchObject({
    socket: { standing: 'doubtful' },
    standing: 'doubtful',
  });
});

test('a blade and a pin spanner are answered with the slot', () => {
  const pins = { circle: 20, pin: 3, depth: 4, pressure: 100, shear: 1000 };
  expect(ask('slot', { thread: 'm5', blade: { length: 8, depth: 1.6, pressure: 300 }, pins })).toMatchObject({
    bladeTorque: 5.12,
    pinTorque: 24,
  });
});
