import { expect, test } from 'vitest';
import { countOutside } from '../../../test/reference.ts';
import type { Question } from '../../question.ts';
import { threadQuestions } from './questions.ts';
import { drillQuestion, infeedQuestion } from './questions-cutting.ts';
import { findQuestion, wiresQuestion } from './questions-measuring.ts';
import { limitsQuestion, threadQuestion } from './questions-sizes.ts';

const questions: readonly Question[] = threadQuestions;

test.each(questions.map((q) => [q.name, q] as const))('%s answers its own example, from outside', (_, q) => {
  const answer = q.answer(q.input.parse(q.example.input));
  expect(q.output.parse(answer)).toEqual(answer);
  const { gives } = q.example;
  if (typeof gives !== 'object' || gives === null) throw new Error('an example gives nothing');
  expect(answer).toMatchObject(gives);
});

const ask = <Q extends Question>(q: Q, input: unknown) => q.answer(q.input.parse(input));

test('what is remembered is marked so in the answer', () => {
  const answer = limitsQuestion.answer(limitsQuestion.input.parse({ designation: '1/4 BSW', side: 'external' }));
  expect(answer.fromMemory.join()).toContain('BS84 (from memory)');
  expect(answer.text).toContain('in)');
});

test('a reading over wires comes back as the pitch diameter it was made from, with a verdict', () => {
  const first = wiresQuestion.answer(wiresQuestion.input.parse({ designation: 'M10', wire: 0.895 }));
  const back = wiresQuestion.answer(
    wiresQuestion.input.parse({ designation: 'M10', wire: 0.895, reading: first.basicReading }),
  );
  expect(back.pitchDiameter).toBeCloseTo(9.026, 3);
  expect(back.verdict).toBe('too large');
  expect(back.uncertainty).toBeGreaterThan(0.003);
  expect(() => ask(wiresQuestion, { designation: 'R 1/4' })).toThrow('parallel thread');
  expect(ask(wiresQuestion, { designation: '3/8-26 BSC', reading: '0.4 in' })).toMatchObject({
    verdict: 'no limits held',
  });
});

test('infeed runs to the middle of the limits unless told otherwise, and a given tool needs its size', ({ task }) => {
  const answer = infeedQuestion.answer(infeedQuestion.input.parse({ designation: 'M10', passes: 8 }));
  expect(answer.crestDiameter).toBe(9.85); // SHOP-blank
  countOutside(task, 1);
  expect(answer.passes).toHaveLength(8);
  expect(answer.passes.at(-1)?.cumulative).toBe(answer.depth);
  expect(() => ask(infeedQuestion, { designation: 'M10', tip: 'radius' })).toThrow('radius of the nose');
  expect(ask(infeedQuestion, { designation: 'R 1/4', aim: 'basic', passes: 5 })).toMatchObject({ side: 'external' });
});

test('a thread is found by threads an inch or pitch, not by both or neither', () => {
  expect(ask(findQuestion, { crestDiameter: '0.373 in', threadsPerInch: 16, flankAngle: 55 })).toMatchObject({
    best: '3/8 BSW',
  });
  expect(() => ask(findQuestion, { crestDiameter: 10 })).toThrow('one of them');
  expect(ask(findQuestion, { crestDiameter: 47.1, pitch: 0.33 })).toMatchObject({ matches: [] });
});

test('half-remembered designations are refused with what lies nearest', () => {
  expect(() => ask(threadQuestion, { designation: 'M10x9' })).toThrow('M10x1.25');
  expect(ask(drillQuestion, { designation: 'M10', engagement: 0.7 })).toMatchObject({
    engagement: 0.7,
    withinLimits: false,
  });
});
