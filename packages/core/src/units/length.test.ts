import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../errors.ts';
import { lengthIssue, parseLength, readLength } from './length.ts';

const mm = (text: string) => readLength(text, 'mm')?.mm;
const inches = (text: string) => readLength(text, 'in')?.mm;

// Every value here follows from 1 in = 25.4 mm exactly [inch-1959] by hand.
describe('a length is read as it is written in the shop', () => {
  test.each([
    ['12', 12],
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['12,5 mm', 12.5],
    ['12.5mm', 12.5],
    ['  12.5  mm ', 12.5],
    ['.5', 0.5],
    [',5 mm', 0.5],
    ['0', 0],
    ['1.2 cm', 12],
    ['0.3 m', 300],
    ['25 µm', 0.025],
    ['25 μm', 0.025],
    ['25 um', 0.025],
    ['25um', 0.025],
    ['⌀12', 12],
    ['Ø 12,5', 12.5],
    ['ø12 mm', 12],
    ['∅12', 12],
    ['-3', -3],
    ['−3', -3],
    ['+3', 3],
    ['- 3', -3],
    ['1 in', 25.4],
    ['1in', 25.4],
    ['1 inch', 25.4],
    ['2 inches', 50.8],
    ['.5"', 12.7],
    ['0.3125"', 7.9375],
    ['0.3125″', 7.9375],
    ["0.3125''", 7.9375],
    ['0.3125”', 7.9375],
    ['5/16 in', 7.9375],
    ['5/16"', 7.9375],
    ['1 1/2"', 38.1],
    ['1-1/2"', 38.1],
    ['1 - 1/2 in', 38.1],
    ['1½"', 38.1],
    ['1 ½ in', 38.1],
    ['½"', 12.7],
    ['¾ in', 19.05],
    ['⅝"', 15.875],
    ['3 thou', 0.0762],
    ['3 mil', 0.0762],
    ['-2 thou', -0.0508],
    ['12 MM', 12],
    ['1 IN', 25.4],
  ])('%s is %d mm', (text, expected) => expect(mm(text)).toBeCloseTo(expected, 12));

  test.each([
    ['1', 25.4],
    ['5/16', 7.9375],
    ['1 1/2', 38.1],
    ['.0005', 0.0127],
    ['12 mm', 12],
  ])('%s is %d mm where inches are understood', (text, expected) => expect(inches(text)).toBeCloseTo(expected, 12));

  test('the unit that was written is kept, and the understood one where none was', () => {
    expect(readLength('1 in', 'mm')?.unit).toBe('in');
    expect(readLength('2 thou', 'mm')?.unit).toBe('in');
    expect(readLength('25 µm', 'in')?.unit).toBe('mm');
    expect(readLength('12', 'mm')?.unit).toBe('mm');
    expect(readLength('12', 'in')?.unit).toBe('in');
  });

  test('a comma with three figures after it is a decimal comma: 1,250 is 1.25 mm', () => {
    expect(mm('1,250')).toBe(1.25);
  });
});

describe('what is no length is not read', () => {
  test.each([
    '',
    ' ',
    'mm',
    '"',
    'abc',
    'NaN',
    'Infinity',
    '-Infinity',
    '1e9',
    '1e-3 mm',
    '0x10',
    '1,250.5',
    '1.250,5',
    '1.2.3',
    '1,2,3',
    '12.',
    '1/0',
    '1 1/0"',
    '0/0',
    '5/16/2',
    '1.5/2',
    '1 1.5/2',
    '1 2',
    '12 kg',
    '12 mmm',
    '12 mm mm',
    '12"mm',
    '5 µ',
    '--3',
    '+-3',
    '12-',
    '-',
    '⌀',
    '12⌀',
    '½½"',
    '1/½',
    '1.½"',
    '½1"',
    '12½3"',
    '1_000',
    '１２',
    '12 constructor',
    '12 toString',
    '12 __proto__',
    '12\n13',
    '9'.repeat(400),
    `1/${'9'.repeat(400)}`,
    `${'9'.repeat(308)} m`,
  ])('%j', (text) => {
    expect(readLength(text, 'mm')).toBeUndefined();
    expect(readLength(text, 'in')).toBeUndefined();
  });

  test('a refusal says where, what was got and what would do', () => {
    expect(() => parseLength('twelve', 'mm', 'part.bore')).toThrow(
      'part.bore: got "twelve", expected a length, for example 12.5, 12,5 mm, 5/16 in or .5"',
    );
    expect(() => parseLength('1/0', 'in')).toThrow(InputError);
    expect(lengthIssue('a', 3)).toMatchObject({ path: 'a', value: 3 });
  });

  test('what is read is handed on', () => expect(parseLength('1 1/2"', 'mm')).toEqual({ mm: 38.1, unit: 'in' }));
});

describe('for all lengths', () => {
  const decimal = fc
    .tuple(fc.nat(99_999), fc.nat(9999))
    .map(([whole, part]) => `${whole}.${String(part).padStart(4, '0')}`);

  test('point and comma mean the same', () => {
    fc.assert(
      fc.property(decimal, (text) => {
        expect(mm(text.replace('.', ','))).toBe(mm(text));
      }),
    );
  });

  test('a plain decimal is the number it spells', () => {
    fc.assert(
      fc.property(decimal, (text) => {
        expect(mm(text)).toBe(Number(text));
      }),
    );
  });

  test('a thousand thou are an inch, and a thousand micrometres a millimetre', () => {
    fc.assert(
      fc.property(fc.nat(9_999_999), (n) => {
        expect(mm(`${n} thou`)).toBeCloseTo((n * 25.4) / 1000, 8);
        expect(mm(`${n} um`)).toBeCloseTo(n / 1000, 9);
      }),
    );
  });

  test('a mixed number is its whole and its fraction together', () => {
    fc.assert(
      fc.property(fc.nat(99), fc.nat(64), fc.integer({ min: 1, max: 64 }), (whole, over, under) => {
        const sum = (mm(`${whole} in`) ?? Number.NaN) + (mm(`${over}/${under} in`) ?? Number.NaN);
        expect(mm(`${whole} ${over}/${under} in`)).toBeCloseTo(sum, 9);
        expect(mm(`${whole}-${over}/${under}"`)).toBeCloseTo(sum, 9);
      }),
    );
  });

  test('the sign turns the length round, and nothing is ever minus nought', () => {
    fc.assert(
      fc.property(decimal, (text) => {
        expect((mm(`-${text}`) ?? Number.NaN) + (mm(text) ?? Number.NaN)).toBe(0);
      }),
    );
    expect(Object.is(mm('-0'), 0)).toBe(true);
    expect(Object.is(mm('-0/4 in'), 0)).toBe(true);
  });

  test('whatever is typed, the answer is a finite number or none', () => {
    const typed = fc.string({ unit: fc.constantFrom(...'0123456789 .,/-+"′″½¼µmincthou⌀eENaN') });
    fc.assert(
      fc.property(typed, fc.constantFrom('mm' as const, 'in' as const), (text, understood) => {
        const length = readLength(text, understood);
        if (length) expect(Number.isFinite(length.mm)).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });
});
