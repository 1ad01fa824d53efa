import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import type { Question } from '../question.ts';
import { structureQuestions } from './questions.ts';

const questions: readonly Question[] = structureQuestions;

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
      if (typeof example.gives !== 'object' || example.gives === null) throw new Error('gives nothing');
      expect(ask(name, example.input)).toMatchObject(example.gives);
    });
  }
});

const pin = {
  sections: [
    { length: 20, outerDiameter: 12 },
    { length: '1 in', outerDiameter: 8, innerDiameter: 3 },
  ],
  material: '303',
};

test('a stepped, bored pin is answered by material, and a centre holds its end', () => {
  const free = ask('bending', { ...pin, force: 30, at: [45.4] });
  const held = ask('bending', { ...pin, tailstock: { at: 45.4 }, force: 30, at: [45.4] });
  expect(free).toMatchObject({ stations: [{ at: 45.4 }] });
  expect(held).toMatchObject({ stations: [{ at: 45.4, deflection: 0 }] });
});

test('a modulus is given or a material named, not both', () => {
  expect(() => ask('bending', { ...pin, youngsModulus: 200_000, force: 30, at: [10] })).toThrow(
    'either a material or youngsModulus',
  );
});

test('a place off the work is refused with the places on it', () => {
  expect(() => ask('bending', { ...pin, force: 30, at: [60] })).toThrow('0 to 45.4 mm');
});

test('a bar that bends comes out larger at its end, and less so after a spring pass', () => {
  const answer = ask('size-error', {
    work: { sections: [{ length: 40, outerDiameter: 10 }], material: '303' },
    machine: 0.05,
    at: [5, 35],
    startDiameter: 10.6,
    setDiameters: [10, 10],
    forces: [
      { depth: 0.05, radial: 12 },
      { depth: 0.3, radial: 40 },
    ],
  });
  const [first, spring] = z.object({ passes: z.array(z.object({ spread: z.number() })) }).parse(answer).passes;
  expect(first?.spread).toBeGreaterThan(0.005);
  expect(spring?.spread).toBeLessThan(first?.spread ?? 0);
});
