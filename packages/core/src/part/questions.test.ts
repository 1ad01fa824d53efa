import { expect, test } from 'vitest';
import { InputError } from '../errors.ts';
import { partQuestions } from './questions.ts';

const ask = (name: string, input: unknown): unknown => {
  const question = partQuestions.find((q) => q.name === name);
  if (!question) throw new Error(name);
  return question.output.parse(question.answer(question.input.parse(input)));
};

test('a cone frustum: volume and centre of mass are those of the closed form', () => {
  const cone = { kind: 'cone', id: 'cone', startDiameter: 20, endDiameter: 10, length: 30 };
  const answer = ask('mass-properties', { units: 'mm', part: { name: 'cone', outside: [cone] } });
  expect(answer).toMatchObject({ volume: expect.closeTo(1750 * Math.PI, 6), centroid: expect.closeTo(165 / 14, 9) });
});

test('the outline of a chamfered half-inch pin has four pieces', () => {
  const pin = { kind: 'cylinder', id: 'pin', diameter: '1/2', length: 2, endEdge: { kind: 'chamfer', size: '1/16' } };
  expect(ask('outline', { units: 'in', part: { name: 'pin', outside: [pin] } })).toMatchObject({
    length: 50.8,
    largestDiameter: 12.7,
    outside: [{}, {}, { feature: 'pin.endEdge', to: { z: 50.8, r: expect.closeTo(6.35 - 1.5875, 9) } }, {}],
  });
});

test('an impossible part is refused, with what is wrong', () => {
  const part = {
    name: 'bush',
    outside: [{ kind: 'cylinder', id: 'body', diameter: 20, length: 30 }],
    inside: { left: [{ kind: 'bored', id: 'bore', diameter: 22, depth: 10 }] },
  };
  expect(() => ask('mass-properties', { units: 'mm', part })).toThrow(InputError);
  expect(() => ask('outline', { units: 'mm', part: { name: 'nothing', outside: [] } })).toThrow('at least one section');
});
