import fc from 'fast-check';
import { expect, test } from 'vitest';
import { InputError } from '../../errors.ts';
import { shaftLetters } from './fundamental-deviations.ts';
import { classMicrometres } from './limit-deviations.ts';
import { gradeRows } from './tolerance-grades.ts';
import { parseTolerancedSize, printTolerancedSize, sizeLimits, type TolerancedSize } from './toleranced-size.ts';

const limits = (text: string | number, unit: 'mm' | 'in' = 'mm') => {
  const { max, min } = sizeLimits(parseTolerancedSize(text, unit), undefined);
  return [max, min];
};

/** How the same size is written on drawings, with the limits worked out by hand. */
test.each([
  ['40 f7', 39.975, 39.95],
  ['40f7', 39.975, 39.95],
  ['⌀12 f7', 11.984, 11.966],
  ['Ø 12 js6', 12.0055, 11.9945],
  ['12mm h9', 12, 11.957],
  ['12 ±0.1', 12.1, 11.9],
  ['12 +/-0.1', 12.1, 11.9],
  ['12 +0.02/-0.05', 12.02, 11.95],
  ['12+0.02-0.05', 12.02, 11.95],
  ['12 +0,02 -0,05', 12.02, 11.95],
  ['12 -0.05/+0.02', 12.02, 11.95],
  ['12 0/-0.05', 12, 11.95],
  ['12 -0.05', 12, 11.95],
  ['12 +0.1', 12.1, 12],
  ['10 0 -0.1', 10, 9.9],
  ['12 (−0.02/−0.05)', 11.98, 11.95],
  ['12 +20/-50 µm', 12.02, 11.95],
  ['11.95..11.98', 11.98, 11.95],
  ['11.98/11.95', 11.98, 11.95],
  ['11,95…11,98 mm', 11.98, 11.95],
  ['0.3125" ±.001', 7.9629, 7.9121],
  ['5/16 in h9', 7.9375, 7.9015],
  ['1-1/2 in H7', 38.125, 38.1],
  ['1 1/2" +.001/-0', 38.1254, 38.1],
  ['½" h9', 12.7, 12.657],
  ['1/2 in ±1/64', 13.096875, 12.303125],
  ['1/2 in +1/64/-0', 13.096875, 12.7],
  ['.312 in ±2 thou', 7.9756, 7.874],
] as const)('%s lies between %s and %s mm', (text, max, min) => {
  expect(limits(text)).toEqual([expect.closeTo(max, 9), expect.closeTo(min, 9)]);
});

test('a bare number is in the unit of the job, a unit once written holds for the whole', () => {
  expect(limits('.312 ±.001', 'in')).toEqual([expect.closeTo(7.9502, 9), expect.closeTo(7.8994, 9)]);
  expect(limits('12 ±0.1 mm', 'in')).toEqual([12.1, 11.9]);
  expect(parseTolerancedSize(12.5, 'mm')).toEqual({
    nominal: 12.5,
    tolerance: { kind: 'none' },
    unit: 'mm',
    text: '12.5',
  });
  expect(parseTolerancedSize('5/16', 'in').nominal).toBe(7.9375);
});

test.each([
  ['40 Q7', 'nearest P7 or R7'],
  ['12 h25', 'nearest h18'],
  ['600 h7', 'up to 500 mm'],
  ['0', 'greater than 0'],
  ['0 h9', 'greater than 0'],
  ['-3', 'greater than 0'],
  [Number.NaN, 'a size'],
  [Number.POSITIVE_INFINITY, 'a size'],
  ['12 +15/-20', 'smaller than the size'],
  ['12 H7/f7', 'a size'],
  ['1,250.5 h7', 'a size'],
  ['', 'a size'],
  ['abc', 'a size'],
  ['12 ±0.1 ±0.2', 'a size'],
  [`${'1'.repeat(70)} h7`, 'a size'],
])('%s is refused with its place and what would do: %s', (text, expected) => {
  let issue: unknown;
  try {
    parseTolerancedSize(text, 'mm', 'part.pin.diameter');
  } catch (error) {
    if (error instanceof InputError) issue = error.issues[0];
  }
  expect(issue).toMatchObject({
    path: 'part.pin.diameter',
    value: text,
    expected: expect.stringContaining(expected),
    example: expect.any(String),
  });
});

const unit = fc.constantFrom('mm' as const, 'in' as const);
const decimal = (min: number, max: number) => fc.integer({ min: min * 1e4, max: max * 1e4 }).map((n) => n / 1e4);
const written = fc.oneof(
  decimal(0.5, 19).map(String),
  fc.tuple(decimal(0.5, 19), decimal(0, 0.4)).map(([n, d]) => `${n} ±${d}`),
  fc.tuple(decimal(0.5, 19), decimal(-0.4, 0.4), decimal(-0.4, 0.4)).map(([n, a, b]) => `${n} ${sign(a)}/${sign(b)}`),
  fc
    .tuple(decimal(0.5, 19), decimal(0.5, 19))
    .filter(([a, b]) => a !== b)
    .map(([a, b]) => `${a}..${b}`),
  fc
    .tuple(decimal(0.5, 19), fc.constantFrom(...shaftLetters), fc.boolean(), fc.constantFrom(...gradeRows.keys()))
    .map(([n, l, hole, grade]) => ({ n, letters: hole ? l.toUpperCase() : l, grade }))
    .filter(({ n, letters, grade }) => [n, n * 25.4].every((mm) => classMicrometres(mm, letters, grade)))
    .map(({ n, letters, grade }) => `${n} ${letters}${gradeRows[grade]?.grade}`),
);
function sign(n: number): string {
  return n === 0 ? '0' : n > 0 ? `+${n}` : String(n);
}

test('what is printed reads back as the same size', () => {
  fc.assert(
    fc.property(written, unit, (text, understood) => {
      const size = parseTolerancedSize(text, understood);
      const printed = printTolerancedSize(size);
      expect(same(parseTolerancedSize(printed, size.unit))).toEqual(same(size));
      expect(printTolerancedSize(parseTolerancedSize(printed, size.unit))).toBe(printed);
    }),
  );
});

/** All but the text, to a millionth of a micrometre. */
function same({ nominal, tolerance, unit: of }: TolerancedSize) {
  const near = (n: number) => Number(n.toFixed(8));
  return tolerance.kind === 'deviations'
    ? { nominal: near(nominal), upper: near(tolerance.upper), lower: near(tolerance.lower), of }
    : { nominal: near(nominal), tolerance, of };
}

test('a size in inches has the limits of the same size in millimetres', () => {
  fc.assert(
    fc.property(decimal(0.1, 19), fc.constantFrom('h9', 'f7', 'H8', 'P7', 'js6'), (inches, toleranceClass) => {
      const one = sizeLimits(parseTolerancedSize(`${inches} in ${toleranceClass}`, 'mm'), undefined);
      const other = sizeLimits(parseTolerancedSize(`${(inches * 25.4).toFixed(9)} ${toleranceClass}`, 'mm'), undefined);
      expect(one.max).toBeCloseTo(other.max, 8);
      expect(one.min).toBeCloseTo(other.min, 8);
    }),
  );
});

test('any text is either read into numbers or refused with an InputError', () => {
  const characters = fc.constantFrom(...'0123456789.,+-±/ ()hHfjs"in…µ⌀¼'.split(''));
  fc.assert(
    fc.property(fc.string({ unit: characters, maxLength: 16 }), (text) => {
      try {
        const { max, min } = sizeLimits(parseTolerancedSize(text, 'mm'), 'm');
        expect(max).toBeGreaterThanOrEqual(min);
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
      }
    }),
    { numRuns: 2000 },
  );
});

test('without a tolerance the general tolerance of the drawing holds, and the basis says so', () => {
  const size = parseTolerancedSize('40', 'mm');
  expect(sizeLimits(size, 'm')).toEqual({ upper: 0.3, lower: -0.3, max: 40.3, min: 39.7, basis: 'ISO 2768-m' });
  expect(sizeLimits(size, undefined)).toMatchObject({ max: 40, min: 40, basis: 'no tolerance stated' });
  expect(sizeLimits(parseTolerancedSize('0.3', 'mm'), 'm').basis).toBe(
    'no tolerance stated, and ISO 2768-m gives none at this size',
  );
  expect(sizeLimits(parseTolerancedSize('40 ±0.1', 'mm'), 'm').basis).toBe('stated');
});
