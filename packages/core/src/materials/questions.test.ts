import { describe, expect, test } from 'vitest';
import { sourceKeys } from '../sources/register.ts';
import { allMaterials } from './material.ts';
import { materialQuestions } from './questions.ts';

describe.each(materialQuestions.map((q) => [q.name, q] as const))('%s', (_, question) => {
  test('answers its own example', () => {
    const input = question.input.parse(question.example.input);
    // Each question is called with its own parsed input; the array's element type is their union, so the call is made through unknown.
    const answer: unknown = Reflect.apply(question.answer, question, [input]);
    expect(question.output.parse(answer)).toMatchObject(Object(question.example.gives));
  });
});

test('every material is answered in the promised shape, with sources that are in the register', () => {
  const [material, cutting] = materialQuestions;
  for (const { id } of allMaterials()) {
    const answer = material.output.parse(material.answer({ name: id }));
    const cut = cutting.output.parse(cutting.answer({ name: id, drill: 6 }));
    for (const key of [...answer.sources, ...cut.sources]) expect(sourceKeys, `${id}: ${key}`).toContain(key);
  }
});

test('a material from memory says so in its answer', () => {
  const [material, cutting, pair] = materialQuestions;
  expect(material.answer({ name: '304' }).status).toBe('from memory');
  expect(cutting.answer({ name: '17-4PH' }).status).toContain('from memory');
  expect(pair.answer({ first: '304', second: '304', surroundings: 'normal' }).galling.status).toContain('from memory');
});

test('a name that means several materials is answered with all of them, each by a name of its own', () => {
  const [material] = materialQuestions;
  const answer = (name: string) => material.answer({ name });
  expect(answer('EN 58')).toMatchObject({
    candidates: expect.arrayContaining([expect.objectContaining({ name: 'EN58M' })]),
  });
  expect(answer('brass')).toMatchObject({
    candidates: expect.arrayContaining([expect.objectContaining({ name: 'CuZn39Pb3' })]),
  });
  expect(answer('EN58M')).toMatchObject({ grade: '303' });
});
