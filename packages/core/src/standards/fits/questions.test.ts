import { describe, expect, test } from 'vitest';
import { DomainError, InputError } from '../../errors.ts';
import type { Question } from '../../question.ts';
import { sourceKeys } from '../../sources/register.ts';
import { stockQuestions } from '../stock/questions.ts';
import { fitsQuestions } from './questions.ts';

const ask = (question: Question, input: unknown): unknown =>
  question.output.parse(question.answer(question.input.parse(input)));
const named = (name: string): Question => {
  const found = [...fitsQuestions, ...stockQuestions].find((q) => q.name === name);
  if (!found) throw new Error(name);
  return found;
};
const all = [...fitsQuestions, ...stockQuestions].map((q) => q.name);

describe.each(all)('%s', (name) => {
  test('answers its own example as the source says', () => {
    const { example } = named(name);
    expect(ask(named(name), example.input)).toMatchObject(example.gives as object);
  });

  test('names registered sources', () => {
    for (const key of named(name).sources) expect(sourceKeys).toContain(key);
  });
});

test('limits in inches are given in inches too', () => {
  expect(ask(named('limits'), { size: '5/16 h9', units: 'in' })).toMatchObject({
    nominal: 7.9375,
    text: '0.31108 to 0.3125 in',
    size: '0.3125 in h9',
  });
});

test('a remembered value is marked in the answer', () => {
  expect(ask(named('limits'), { size: '40 h18' })).toMatchObject({
    standing: 'from memory',
    remarks: ['h18: the width of IT18 is from memory'],
  });
  expect(ask(named('fit'), { size: '40 P7/h6' })).toMatchObject({ standing: 'settled' });
});

test('a size without tolerance takes the general tolerance asked for, or says that none is stated', () => {
  expect(ask(named('limits'), { size: 40, general: 'c' })).toMatchObject({ max: 40.8, basis: 'ISO 2768-c' });
  expect(ask(named('limits'), { size: 40 })).toMatchObject({ basis: 'no tolerance stated', sources: [] });
});

test('general tolerances of edges and angles', () => {
  expect(ask(named('general-tolerance'), { size: 1, of: 'edge', class: 'c' })).toMatchObject({ plusMinus: 0.4 });
  expect(ask(named('general-tolerance'), { size: 30, of: 'angle' })).toEqual({
    plusMinus: 0.5,
    unit: 'degrees',
    text: '±30′, ISO 2768-m (medium)',
    remarks: [],
  });
  expect(ask(named('limits'), { size: 5, general: 'c' })).toMatchObject({ max: 5.3, standing: 'settled' });
});

test('nothing found is said, not hidden', () => {
  expect(ask(named('fit-for-clearance'), { size: 50, least: 0.01, most: 0.011 })).toMatchObject({
    best: null,
    others: [],
    says: expect.stringContaining('widen the range'),
  });
  expect(ask(named('bar'), { diameter: 300 })).toMatchObject({
    smallest: null,
    says: expect.stringContaining('large enough'),
  });
});

test.each([
  ['limits', { size: '40 Q7' }, 'nearest P7 or R7'],
  ['limits', { size: '600 h7' }, '500 mm'],
  ['limits', { size: '12 h25' }, 'h18'],
  ['limits', { size: 0 }, 'greater than 0'],
  ['limits', { size: -3 }, 'greater than 0'],
  ['fit', { size: '40 H8/q7' }, 'nearest p7 or r7'],
  ['general-tolerance', { size: 0.2 }, 'state the tolerance'],
  ['general-tolerance', { size: 'x' }, 'a length'],
  ['suggest-fit', { role: 'running', size: 600 }, '500 mm'],
  ['fit-for-clearance', { size: 40, least: 0.05, most: 0.02 }, 'above the smallest'],
  ['fit-for-clearance', { size: 40, least: 'tight', most: 0.02 }, 'a clearance'],
  ['class-for-limits', { size: 40, max: 39, min: 40, feature: 'hole' }, 'not below'],
  ['bar', { diameter: 0 }, 'greater than 0'],
  ['bar', { diameter: 10, allowance: -1 }, 'not below 0'],
  ['preferred-number', { value: -1 }, 'over 0'],
])('%s refuses %j: %s', (name, input, expected) => {
  let error: unknown;
  try {
    ask(named(name), input);
  } catch (caught) {
    error = caught;
  }
  expect(error instanceof InputError || error instanceof DomainError).toBe(true);
  expect(String(error)).toContain(expected);
});

test.each([
  ['limits', { size: Number.NaN }],
  ['limits', { size: '40 f7', general: 'x' }],
  ['suggest-fit', { role: 'wobbly', size: 10 }],
  ['bar', { diameter: 10, density: 0 }],
])('the schema of %s refuses %j', (name, input) => {
  expect(() => named(name).input.parse(input)).toThrow();
});
