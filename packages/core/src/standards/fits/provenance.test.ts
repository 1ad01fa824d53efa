import { expect, test } from 'vitest';
import { referenceRows } from '../../../test/reference.ts';
import { sourceKeys } from '../../sources/register.ts';
import { classProvenance } from './provenance.ts';

const files = ['fundamental-deviations-shafts', 'fundamental-deviations-holes'];

test('each value names a source in which the reference says it was read, and says so when it was not simply read', () => {
  let weak = 0;
  for (const row of files.flatMap((file) => referenceRows('limits-fits', file))) {
    const grade = {
      all: '6',
      '5-6': '5',
      '4-7': '6',
      '<=3 and >=8': '9',
      '<=8': '6',
      '>8': '9',
      '<=7': '6',
      '>7': '8',
    }[row.grades ?? ''];
    const toleranceClass = `${row.letter}${grade ?? row.grades}`;
    const { sources, standing } = classProvenance(Number(row.size_to_mm), toleranceClass);
    const at = `${toleranceClass} to ${row.size_to_mm}`;
    const listed = (row.source ?? '').split(';');
    if (row.status !== 'from memory') expect([at, sources.some((s) => listed.includes(s))]).toEqual([at, true]);
    // A value read without its delta, or with a doubt noted, may still be settled once delta is added.
    const plain =
      row.status === 'read' && row.add_delta !== 'yes' && !/MG-shaft prints|formula|Delta/.test(row.note ?? '');
    if (plain) expect([at, standing]).toEqual([at, 'read']);
    if (row.status === 'from memory') expect([at, standing]).toEqual([at, 'from memory']);
    if (/mirror|settled/.test(row.status ?? '')) expect([at, standing]).toEqual([at, 'settled']);
    if (standing !== 'read') weak++;
  }
  expect(weak).toBeGreaterThan(100);
});

test('IT18 and j8 are marked as remembered, K to ZC with a computed delta as settled, h7 as read', () => {
  expect(classProvenance(40, 'h18')).toMatchObject({
    standing: 'from memory',
    remarks: [expect.stringContaining('IT18')],
  });
  expect(classProvenance(2, 'j8').standing).toBe('from memory');
  expect(classProvenance(40, 'P7').standing).toBe('settled');
  expect(classProvenance(400, 'X9').remarks).toEqual([expect.stringContaining('660')]);
  expect(classProvenance(40, 'h7')).toMatchObject({ standing: 'read', remarks: [] });
  expect(classProvenance(20, 'js7').remarks).toEqual([expect.stringContaining('±10 µm')]);
});

test('every source named is in the register', () => {
  for (const toleranceClass of ['h18', 'a9', 'm6', 'M7', 'U7', 'J7', 'js17', 'zc9', 'N9', 'K7', 'x8']) {
    for (const nominal of [2.5, 60, 210, 390]) {
      for (const key of classProvenance(nominal, toleranceClass).sources) expect(sourceKeys).toContain(key);
    }
  }
});
