import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { DomainError, InputError } from '../errors.ts';
import { defineQuestion, type Question } from '../question.ts';
import { sourceKeys } from '../sources/register.ts';
import { answerTo, ask, questionNamed } from './ask.ts';
import { nearestName } from './nearest-name.ts';
import { nonFiniteAt } from './non-finite.ts';
import { documents, questions } from './registry.ts';

/** Places where an answer lacks what the example gives; numbers are compared to the digits given. */
function differences(answer: unknown, gives: unknown, at = 'answer'): string[] {
  if (typeof gives === 'number') {
    const decimals = /e/i.test(String(gives)) ? undefined : (String(gives).split('.')[1]?.length ?? 0);
    const slack = decimals === undefined ? Math.abs(gives) * 1e-9 : 0.5 * 10 ** -decimals * (1 + 1e-9) + 1e-12;
    const near = typeof answer === 'number' && Math.abs(answer - gives) <= slack;
    return near ? [] : [`${at} is ${String(answer)}, not ${gives}`];
  }
  if (typeof gives !== 'object' || gives === null) {
    return Object.is(answer, gives) ? [] : [`${at} is ${String(answer)}, not ${String(gives)}`];
  }
  if (typeof answer !== 'object' || answer === null) return [`${at} is ${String(answer)}, not a record`];
  return Object.entries(gives).flatMap(([key, value]) => differences(Reflect.get(answer, key), value, `${at}.${key}`));
}

/** Every object schema's fields without a meaning, as a reader of the JSON Schema sees them. */
function undescribed(shape: unknown, at: string): string[] {
  if (typeof shape !== 'object' || shape === null) return [];
  const properties: object = 'properties' in shape && shape.properties ? shape.properties : {};
  const own = Object.entries(properties).flatMap(([name, field]) => {
    const known = typeof field === 'object' && field !== null;
    const named = known && ('description' in field || '$ref' in field || 'const' in field);
    return [...(named ? [] : [`${at}.${name}`]), ...undescribed(field, `${at}.${name}`)];
  });
  const inner = ['items', 'anyOf', 'oneOf', 'allOf', 'additionalProperties'].flatMap((key) => {
    const value: unknown = Reflect.get(shape, key);
    return Array.isArray(value) ? value.flatMap((v) => undescribed(v, at)) : undescribed(value, at);
  });
  return [...own, ...inner];
}

test('the comparison with an example sees a digit that differs, and a field that is missing', () => {
  expect(differences({ a: 1.234 }, { a: 1.23 })).toEqual([]);
  expect(differences({ a: 1.236 }, { a: 1.23 })).toEqual(['answer.a is 1.236, not 1.23']);
  expect(differences({ a: [{ b: 'x' }] }, { a: [{ b: 'y' }] })).toEqual(['answer.a.0.b is x, not y']);
  expect(differences({}, { a: null })).toEqual(['answer.a is undefined, not null']);
});

test('names are kebab-case and there is only one of each', () => {
  const names = questions.map((q) => q.name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
  expect(names.length).toBeGreaterThan(30);
});

describe.each(questions.map((q): [string, Question] => [q.name, q]))('%s', (_, question) => {
  test('answers its own example with what is known from outside', () => {
    const { answer } = answerTo(question, question.example.input);
    expect(differences(answer, question.example.gives)).toEqual([]);
    expect(question.example.from.length).toBeGreaterThan(3);
  });

  test('gives only sources that the register knows', () => {
    const { answer, sources } = answerTo(question, question.example.input);
    for (const { key } of sources) expect(sourceKeys).toContain(key);
    const named = typeof answer === 'object' && answer !== null && 'sources' in answer ? answer.sources : [];
    expect(new Set(sources.map((s) => s.key)), 'keys of the answer').toEqual(
      'sources' in Object(answer) ? new Set(Array.isArray(named) ? named : []) : new Set(question.sources),
    );
  });

  test('explains every field', () => {
    const input = z.toJSONSchema(question.input, { io: 'input', unrepresentable: 'any' });
    const output = z.toJSONSchema(question.output, { io: 'output', unrepresentable: 'any' });
    expect([...undescribed(input, 'input'), ...undescribed(output, 'output')]).toEqual([]);
  });

  test('takes no field named ask, which names the question in a request', () => {
    const shape = z.toJSONSchema(question.input, { io: 'input', unrepresentable: 'any' });
    expect(Object.keys(shape.properties ?? {})).not.toContain('ask');
  });

  test('refuses what is no input at all', () => {
    for (const input of [null, 7, 'text', [], { 'no such field': 1 }]) {
      expect(() => answerTo(question, input)).toThrow(InputError);
    }
  });
});

test('a name that does not exist is refused with the nearest', () => {
  expect(() => ask('limit', {})).toThrow('ask: got "limit", expected the name of a question, for example limits');
  expect(questionNamed('limits').name).toBe('limits');
  expect(() => ask('constructor', {})).toThrow(InputError);
});

test('a missing field is refused with what the example of the question has there', () => {
  expect(() => ask('limits', {})).toThrow(
    'size: got nothing, expected text in quotes or a number, for example "50 f7"',
  );
});

test('a wrong field is refused with its place', () => {
  expect(() => ask('limits', { size: '40 f7', sise: 1 })).toThrow(InputError);
});

test('of names the one with the fewest letters to change is nearest', () => {
  expect(nearestName('threads', ['limits', 'thread', 'bar'])).toBe('thread');
  expect(nearestName('x', [])).toBeUndefined();
  expect(nearestName('y'.repeat(1e6), ['limits', 'bar'])).toBeDefined();
});

const broken = (output: z.ZodType, answer: unknown): Question =>
  defineQuestion({
    name: 'broken',
    asks: 'What does a faulty formula answer?',
    input: z.strictObject({}),
    output,
    sources: [],
    example: { input: {}, gives: {}, from: 'nowhere' },
    answer: () => answer,
  });

test('an answer that is no number is a fault of the program, wherever it stands', () => {
  const anything = broken(z.unknown(), { rows: [{ force: 1 }, { force: Number.NaN }] });
  expect(() => answerTo(anything, {})).toThrow('answered no number at rows[1].force');
  expect(() => answerTo(broken(z.unknown(), { a: Number.POSITIVE_INFINITY }), {})).toThrow(Error);
  expect(() => answerTo(anything, {})).not.toThrow(InputError);
  expect(() => answerTo(anything, {})).not.toThrow(DomainError);
});

test('an answer that breaks its own schema is a fault of the program', () => {
  const wrong = broken(z.strictObject({ force: z.number() }), { force: 'much' });
  expect(() => answerTo(wrong, {})).toThrow('answered otherwise than promised at force');
});

test('numbers that are none are found in lists and records', () => {
  expect(nonFiniteAt({ a: [1, { b: Number.NaN }] })).toBe('a[1].b');
  expect(nonFiniteAt(Number.NEGATIVE_INFINITY)).toBe('');
  expect(nonFiniteAt({ a: [0, null, 'NaN', undefined, -1e300] })).toBeUndefined();
});

test('job and workshop have a schema to print', () => {
  expect(Object.keys(documents)).toEqual(['job', 'workshop']);
  for (const schema of Object.values(documents)) {
    expect(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' })).toHaveProperty('properties');
  }
});
