import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatLength, formatSigned } from './format.ts';
import { readLength } from './length.ts';

describe('millimetres are written to the micrometre, trailing noughts left off', () => {
  test.each([
    [12, '12'],
    [12.5, '12.5'],
    [100, '100'],
    [0.025, '0.025'],
    [12.34567, '12.346'],
    [1.0005, '1.001'],
    [0.1 + 0.2, '0.3'],
    [-0.0254, '−0.025'],
    [0, '0'],
    [-0, '0'],
    [-0.0004, '0'],
    [1234.5, '1234.5'],
  ])('%d is %s', (mm, text) => expect(formatLength(mm, 'mm')).toBe(text));
});

describe('inches are written to a tenth of a thou', () => {
  test.each([
    [25.4, '1'],
    [7.9375, '0.3125'],
    [12.7, '0.5'],
    [0.0254, '0.001'],
    [10, '0.3937'],
    [-0.001, '0'],
    [-0.00254, '−0.0001'],
  ])('%d mm is %s in', (mm, text) => expect(formatLength(mm, 'in')).toBe(text));
});

test('decimals that are asked for are all written', () => {
  expect(formatLength(12, 'mm', { decimals: 2 })).toBe('12.00');
  expect(formatLength(12.345, 'mm', { decimals: 0 })).toBe('12');
  expect(formatLength(25.4, 'in', { decimals: 3 })).toBe('1.000');
  expect(formatLength(-0.001, 'mm', { decimals: 2 })).toBe('0.00');
  expect(formatLength(120, 'mm', { decimals: 0 })).toBe('120');
});

test('the decimal sign is the reader’s', () => {
  expect(formatLength(12.5, 'mm', { decimalSign: ',' })).toBe('12,5');
  expect(formatSigned(-0.0254, 'in', { decimalSign: ',' })).toBe('−0,001');
});

test('a deviation carries its sign, nought carries none', () => {
  expect(formatSigned(0.021, 'mm')).toBe('+0.021');
  expect(formatSigned(-0.013, 'mm')).toBe('−0.013');
  expect(formatSigned(0, 'mm')).toBe('0');
  expect(formatSigned(-0, 'mm', { decimals: 3 })).toBe('0.000');
  expect(formatSigned(-0.0001, 'mm')).toBe('0');
});

describe('for all lengths', () => {
  const length = fc.double({ min: -1e5, max: 1e5, noNaN: true });
  const unit = fc.constantFrom('mm' as const, 'in' as const);
  const sign = fc.constantFrom('.' as const, ',' as const);

  test('what is written is read back to half of its last place', () => {
    fc.assert(
      fc.property(length, unit, sign, (mm, written, decimalSign) => {
        const half = written === 'mm' ? 0.0005 : 0.00005 * 25.4;
        for (const text of [formatLength(mm, written, { decimalSign }), formatSigned(mm, written, { decimalSign })]) {
          const back = readLength(text, written)?.mm ?? Number.NaN;
          expect(Math.abs(back - mm)).toBeLessThanOrEqual(half * 1.000001 + Math.abs(mm) * 1e-12);
        }
      }),
    );
  });

  test('nothing is written as minus nought', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.01, max: 0.01, noNaN: true }), unit, (mm, written) => {
        expect(formatLength(mm, written)).not.toMatch(/^[−-]0([.,]0*)?$/);
        expect(formatSigned(mm, written)).not.toMatch(/^[+−-]0([.,]0*)?$/);
      }),
    );
  });
});
