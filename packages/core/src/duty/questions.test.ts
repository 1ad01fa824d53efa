import { describe, expect, test } from 'vitest';
import type { Question } from '../question.ts';
import { sourceKeys } from '../sources/register.ts';
import { dutyQuestions } from './questions.ts';

const questions: readonly Question[] = dutyQuestions;
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

test('lengths may be typed in inches, with the ring by its dash', () => {
  const inch = (min: string, max: string) => ({ min, max });
  const answer = ask('gland', {
    ring: '-210',
    kind: 'piston',
    motion: 'moving',
    grooveDiameter: inch('.758 in', '.760 in'),
    matingDiameter: inch('1 in', '1.001 in'),
    carrierDiameter: inch('.997 in', '.998 in'),
    grooveWidth: inch('.187 in', '.192 in'),
    pressure: 3,
  });
  // The gland C06 of the reference, worked by another hand.
  expect(answer).toMatchObject({ squeeze: { min: 10.03, max: 16.03 }, standing: 'from memory' });
});

test('a torque and a force together are refused, one of them is judged', () => {
  const joint = { diameter: 12, length: 12, strength: 25 };
  expect(() => ask('bonded-joint', { ...joint, torque: 10, force: 100 })).toThrow('either a torque or a force');
  expect(ask('bonded-joint', { ...joint, force: 10_000 })).toMatchObject({
    safetyForce: { typical: 1.131 },
    findings: [{ id: 'duty.bond-small-reserve' }, { id: 'duty.bond-from-memory' }, { id: 'duty.bond-unstated' }],
  });
});
