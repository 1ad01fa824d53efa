import { describe, expect, test } from 'vitest';
import { disagreement, readPrinted } from './printed.ts';

function holds(printed: string, actual: unknown): boolean {
  const read = readPrinted(printed);
  if (!read) throw new Error(`cannot be read: ${printed}`);
  return disagreement(read, actual) === undefined;
}

describe('a printed number holds', () => {
  test.each([
    ['0.00849', 0.008488],
    ['0.00849', 0.008494],
    ['2.50', 2.504],
    ['200_000', 200_000.4],
    ['-0.025', -0.0252],
    ['−0.025', -0.0252],
    ['1.2e-5', 1.24e-5],
    ['0', 0],
    ['7', 7],
  ])('%s for %d', (printed, actual) => expect(holds(printed, actual)).toBe(true));
});

describe('a printed number does not hold', () => {
  test.each([
    ['0.00849', 0.0084],
    ['2.50', 2.506],
    ['25', 25.6],
    ['7', 7.2],
    ['0', 0.3],
    ['0.1', Number.NaN],
    ['0.1', undefined],
    ['0.1', '0.1'],
  ])('%s for %s', (printed, actual) => expect(holds(printed, actual)).toBe(false));
});

test('a record holds when the fields it shows hold, whatever else there is', () => {
  expect(holds("{ lower: -0.025, fit: 'clearance' }", { lower: -0.0251, upper: 0, fit: 'clearance' })).toBe(true);
  expect(holds("{ lower: -0.025, fit: 'clearance' }", { lower: -0.0251, fit: 'press' })).toBe(false);
  expect(holds('{ lower: -0.025 }', { upper: -0.025 })).toBe(false);
  expect(holds('{ a: { b: [1, 2.50] } }', { a: { b: [1, 2.501] } })).toBe(true);
});

test('a list holds only at its full length', () => {
  expect(holds('[1.5, 2.5]', [1.5, 2.5])).toBe(true);
  expect(holds('[1.5, 2.5]', [1.5, 2.5, 3.5])).toBe(false);
  expect(holds('[]', [])).toBe(true);
});

test('words hold exactly', () => {
  expect(holds('true', true)).toBe(true);
  expect(holds('undefined', undefined)).toBe(true);
  expect(holds('null', undefined)).toBe(false);
  expect(holds('"H7"', 'H7')).toBe(true);
});

test('what is no result is not read as one', () => {
  for (const text of ['', '2.5 mm', 'about 2', '{ a: }', '[1, ', '{ a: 1', '1 2'])
    expect(readPrinted(text)).toBeUndefined();
});
