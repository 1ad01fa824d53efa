import { describe, expect, test } from 'vitest';
import type { Question } from '../../question.ts';
import { sourceKeys } from '../../sources/register.ts';
import { sealQuestions } from './questions.ts';

const questions: readonly Question[] = sealQuestions;
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

test('a measured ring is answered with the nearest listed, and with what to be wary of', () => {
  const answer = ask('o-ring', { insideDiameter: 18.4, section: '3,5' });
  expect(answer).toMatchObject({ designation: 'AS568-210', standing: 'from memory' });
  expect(JSON.stringify(answer)).toContain('flattened, swollen or shrunk');
  expect(() => ask('o-ring', { section: 3.5 })).toThrow('the name of a ring, or its inside diameter and cross-section');
  expect(JSON.stringify(ask('o-ring', { ring: '21 x 2.5' }))).toContain('no table lists this size');
});

test('a recommendation for a bore gives the groove, its lead-in and where the tables differ', () => {
  const answer = ask('gland-recommendation', { ring: 'AS568-219', kind: 'piston', mating: { min: 40, max: 40.039 } });
  // By hand: 40.039 − 2 × 2.870 = 34.299; 40 − 2 × 2.819 = 34.362.
  expect(answer).toMatchObject({ grooveDiameter: { min: 34.299, max: 34.362 }, mouthMin: 41.42 });
  expect(JSON.stringify(answer)).toContain('apple-gland');
});

test('silicone may bridge half the gap, and an unknown rubber is said', () => {
  const plain = { hardness: 70, pressure: 5, section: 3.53 };
  expect(ask('extrusion-gap', plain)).toMatchObject({ radial: 0.08, standing: 'from memory' });
  expect(ask('extrusion-gap', { ...plain, elastomer: 'silicone' })).toMatchObject({ radial: 0.04 });
  expect(JSON.stringify(ask('extrusion-gap', { ...plain, elastomer: 'cork' }))).toContain('not in the table');
});

test('a rubber outside its temperatures does not suit, and brake fluid draws the caution', () => {
  expect(ask('elastomer', { medium: 'mineral oil', elastomer: 'NBR', hottest: 130 })).toMatchObject({
    rubbers: [
      {
        suits: 'no',
        because: ['130 °C is hotter than 100', 'sources disagree: A to B', 'excellent [oringsupply-nbr-epdm]'],
      },
    ],
  });
  expect(JSON.stringify(ask('elastomer', { medium: 'DOT 4' }))).toContain('brake is a safety part');
});
