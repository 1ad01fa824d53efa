import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { parseTolerancedSize, sizeLimits } from '../standards/fits/toleranced-size.ts';
import { deviationText, fractionText, limitedText, numberText, sizeText } from './numbers.ts';

const mm = { units: 'mm', decimalSign: 'point' } as const;
const comma = { units: 'mm', decimalSign: 'comma' } as const;
const inch = { units: 'in', decimalSign: 'point' } as const;

function dimension(text: string, style: typeof mm | typeof comma | typeof inch = mm, sign = '') {
  const size = parseTolerancedSize(text, style.units);
  return limitedText({ nominal: size.nominal, ...sizeLimits(size, undefined) }, style, sign);
}

test('a class is followed by its deviations in brackets, upper first', () => {
  expect(dimension('12 f7', mm, 'Ø')).toBe('Ø12 f7 (−0.016/−0.034)');
  expect(dimension('12 f7', comma, 'Ø')).toBe('Ø12 f7 (−0,016/−0,034)');
});

test('a zero deviation has no sign, and even ones are joined', () => {
  expect(dimension('8 h9', mm, 'Ø')).toBe('Ø8 h9 (0/−0.036)');
  expect(dimension('12 ±0.1')).toBe('12 ±0.1');
  expect(dimension('30 js12')).toBe('30 js12 (±0.105)');
  expect(dimension('12 +0.1/0')).toBe('12 +0.1/0');
});

test('a size without limits of its own stands bare', () => {
  expect(dimension('12')).toBe('12');
});

test('an inch size typed as a fraction is written as one, in its lowest terms, unless it has limits of its own', () => {
  const typed = (text: string, style: typeof mm | typeof inch = inch) => {
    const size = parseTolerancedSize(text, style.units);
    return limitedText({ nominal: size.nominal, ...sizeLimits(size, undefined), text }, style, 'Ø');
  };
  expect(typed('5/8')).toBe('Ø5/8');
  expect(typed('1 6/8')).toBe('Ø1 3/4');
  expect(typed('1½')).toBe('Ø1 1/2');
  expect(typed('.625')).toBe('Ø.625');
  expect(typed('5/16 -.001/-.004')).toBe('Ø.3125 −.001/−.004');
  expect(typed('5/8 in', mm)).toBe('Ø15.875');
});

test('a fraction is found in exact 64ths only, and means what it says', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1000 }), (n) => {
      const text = fractionText((n * 25.4) / 64, inch);
      const [, whole = '0', over = '0', under = '1'] = /^(?:(\d+)(?: |$))?(?:(\d+)\/(\d+))?$/.exec(text) ?? [];
      expect(64 * (Number(whole) + Number(over) / Number(under))).toBe(n);
    }),
  );
  expect(fractionText(5.5, inch)).toBe(sizeText(5.5, inch));
  expect(fractionText(12.7, mm)).toBe('12.7');
});

test('inches drop the nought before the point', () => {
  expect(dimension('5/16', inch)).toBe('.3125');
  expect(dimension('1 1/4', inch)).toBe('1.25');
});

test('deviations read back as those of the published worked examples [limits-fits/fits-worked-examples]', ({
  task,
}) => {
  let compared = 0;
  for (const row of referenceRows('limits-fits', 'fits-worked-examples')) {
    const nominal = Number(row.nominal_mm);
    for (const side of ['hole', 'shaft'] as const) {
      const written = dimension(`${nominal} ${row[`${side}_class`]}`);
      const plain = written.replaceAll('−', '-').replace(/±([\d.]+)/, '+$1/-$1');
      const pair = /\(([^/]+)\/([^)]+)\)/.exec(plain);
      expect(nominal + Number(pair?.[1])).toBeCloseTo(Number(row[`${side}_max_mm`]), 4);
      expect(nominal + Number(pair?.[2])).toBeCloseTo(Number(row[`${side}_min_mm`]), 4);
      compared += 2;
    }
  }
  expect(compared).toBeGreaterThan(20);
  countOutside(task, compared);
});

test('a size on the sheet is never a tenth of a micrometre off what is meant', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 3000, noNaN: true }), (value) => {
      expect(Math.abs(Number(sizeText(value, mm)) - value)).toBeLessThanOrEqual(0.00005 + 1e-9);
    }),
  );
});

test('no size is written as minus nought', () => {
  expect(deviationText(-0.000001, mm)).toBe('0');
  expect(sizeText(-0, mm)).toBe('0');
  expect(numberText(45, 2, mm)).toBe('45');
  expect(numberText(100, 2, mm)).toBe('100');
});
