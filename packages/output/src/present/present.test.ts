import type { Finding } from '@sparewright/core/finding';
import { describe, expect, test } from 'vitest';
import { presentFinding } from './finding.ts';
import { presentDeviation, presentLength, presentLimits, presentUncertainty } from './length.ts';
import { presentNumber, presentShare } from './number.ts';
import { presentProse } from './prose.ts';
import { presentQuantity } from './quantity.ts';
import type { PresentSettings } from './settings.ts';
import { presentCell, presentUnit } from './table.ts';
import { presentTime, presentTimes } from './time.ts';

const mm: PresentSettings = { units: 'mm', decimalSign: 'point' };
const comma: PresentSettings = { units: 'mm', decimalSign: 'comma' };
const inch: PresentSettings = { units: 'in', decimalSign: 'point' };

describe('lengths', () => {
  test('are written in the unit with the decimal sign of the job', () => {
    expect(presentLength(12.5, 'mm', 'point')).toBe('12.5');
    expect(presentLength(12.5, 'mm', 'comma')).toBe('12,5');
    expect(presentLength(12.7, 'in', 'point')).toBe('0.5');
    expect(presentLength(12.7, 'in', 'point', 4)).toBe('0.5000');
  });

  test('deviations carry a sign, limits the larger first', () => {
    expect(presentDeviation(-0.013, comma)).toBe('−0,013');
    expect(presentDeviation(0.0254, inch)).toBe('+0.001');
    expect(presentLimits({ max: 11.984, min: 11.966 }, mm)).toBe('11.984 to 11.966');
    expect(presentLimits({ max: 25.4, min: 12.7 }, inch)).toBe('1.0000 to 0.5000');
  });

  test('an uncertainty has two figures that count, and no more decimals than a gauge could show', () => {
    expect(presentUncertainty(0.0316, mm)).toBe('0.032');
    expect(presentUncertainty(0.00412, comma)).toBe('0,0041');
    expect(presentUncertainty(0.0254, inch)).toBe('0.0010');
    expect(presentUncertainty(0, mm)).toBe('0.0000');
  });
});

describe('numbers', () => {
  test('have as many decimals as a glance takes in', () => {
    expect([0, 0.00841, 0.756, 4.49, 16.97, 106.04, 5432.1].map((n) => presentNumber(n, 'point'))).toEqual([
      '0',
      '0.00841',
      '0.756',
      '4.49',
      '16.97',
      '106',
      '5432',
    ]);
  });

  test('a minus is a minus and not a hyphen', () => {
    expect(presentNumber(-13.3, 'comma')).toBe('−13,3');
  });

  test('shares are whole per cent unless they are less than one', () => {
    expect([0, 0.004, 0.856, 1.2].map((s) => presentShare(s, 'point'))).toEqual(['0 %', '0.4 %', '86 %', '120 %']);
  });

  test('an inch job has feeds in inches and speeds in feet: 100 ft are 30.48 m', () => {
    expect(presentQuantity(30.48, 'm/min', inch)).toBe('100 ft/min');
    expect(presentQuantity(0.127, 'mm/rev', inch)).toBe('0.0050 in/rev');
    expect(presentQuantity(30, 'N', inch)).toBe('30 N');
    expect(presentQuantity(0.756, '', mm)).toBe('0.756');
  });

  test('what four decimals of an inch would show as nought is still a number', () => {
    expect(presentQuantity(0.0005, 'mm', inch)).toBe('0.00002 in');
  });
});

describe('cells', () => {
  const size = { key: 'd', title: 'diameter', unit: 'mm', decimals: 3 };

  test('of millimetres become inches to four decimals in an inch job', () => {
    expect(presentCell(size, 25.4, inch)).toBe('1.0000');
    expect(presentUnit(size, inch)).toBe('in');
    expect(presentCell(size, 25.4, comma)).toBe('25,400');
  });

  test('words stay words, blanks and gaps stay empty', () => {
    const words = { key: 'p', title: 'plunge', unit: '' };
    expect(presentCell(words, 'floor, from', inch)).toBe('floor, from');
    expect(presentCell({ ...size, blank: true }, 3, mm)).toBe('');
    expect(presentCell(size, undefined, mm)).toBe('');
  });
});

test('times are said as one says them', () => {
  expect([45, 59.6, 720, 3600, 8400].map(presentTime)).toEqual(['45 s', '1 min', '12 min', '1 h', '2 h 20 min']);
  expect(presentTimes({ low: 480, likely: 720, high: 1320 })).toBe('12 min (8 to 22 min)');
  expect(presentTimes({ low: 45, likely: 90, high: 600 })).toBe('2 min (45 s to 10 min)');
});

describe('sentences made in core', () => {
  test('keep their millimetres in a millimetre job', () => {
    expect(presentProse('Rough the guide to Ø12.6', mm)).toBe('Rough the guide to Ø12.6');
  });

  test('take the decimal comma at figures and leave names alone', () => {
    expect(presentProse('1.4305: M10x1.25 on Ø12.6, 0.35 mm deep, Ra 0.8', comma)).toBe(
      '1.4305: M10x1.25 on Ø12,6, 0,35 mm deep, Ra 0,8',
    );
  });

  test('are brought into inches in an inch job, millimetres kept beside where a metric dial may need them', () => {
    expect(presentProse('Cut the groove, 2.54 wide, to Ø12.7', inch)).toBe(
      'Cut the groove, 0.1000 in wide, to Ø0.5000 in',
    );
    expect(presentProse('Zero at Ø25.40 mm.', inch)).toBe('Zero at Ø1.0000 in (25.40 mm).');
    expect(presentProse('Bar Ø1/2, 3 mm² and 0.1 mm/rev stay', inch)).toBe('Bar Ø1/2, 3 mm² and 0.1 mm/rev stay');
  });

  test('a hyphen before a figure becomes a minus; a range or a name does not', () => {
    expect(presentProse('is -13.3 %; 240-600, AS568-112', mm)).toBe('is −13.3 %; 240-600, AS568-112');
  });
});

test('a finding is its sentence, then its numbers with limit and source, then what helps', () => {
  const finding: Finding = {
    id: 'x',
    level: 'caution',
    stage: 'route',
    at: 'setup-1',
    says: 'The jaws hold on less than half the diameter in length.',
    because: [{ what: 'length of grip', value: 25.4, unit: 'mm', limit: 50.8, source: 'common-practice' }],
    remedies: ['Light cuts only'],
  };
  expect(presentFinding(finding, inch)).toMatchObject({
    level: 'caution',
    headline: finding.says,
    lines: [
      'length of grip: 1.0000 in; limit 2.0000 in (Workshop habit, not traced to a publication [common practice])',
      'What helps: Light cuts only',
    ],
  });
});
