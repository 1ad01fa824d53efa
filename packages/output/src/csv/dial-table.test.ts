import type { DialTable } from '@sparewright/core/route/dial-table';
import { expect, test } from 'vitest';
import { dialTableCsv } from './dial-table.ts';

const table: DialTable = {
  id: 't',
  kind: 'turning',
  title: 'Turn',
  operation: 'o',
  columns: [
    { key: 'pass', title: 'pass, "cut"', unit: '', decimals: 0 },
    { key: 'diameter', title: 'diameter', unit: 'mm', decimals: 3 },
    { key: 'note', title: 'note', unit: '' },
    { key: 'measured', title: 'measured', unit: 'mm', blank: true },
  ],
  rows: [
    { pass: 1, diameter: 25.4, note: '=1+1' },
    { pass: 2, diameter: -0.5, note: 'a, b' },
  ],
  notes: [],
};

test('millimetres with a point are separated by commas, quoted as RFC 4180 says', () => {
  expect(dialTableCsv(table, { units: 'mm', decimalSign: 'point' })).toBe(
    '"pass, ""cut""",diameter mm,note,measured mm\r\n1,25.400,\'=1+1,\r\n2,-0.500,"a, b",\r\n',
  );
});

test('a decimal comma is separated by semicolons', () => {
  const [, first] = dialTableCsv(table, { units: 'mm', decimalSign: 'comma' }).split('\r\n');
  expect(first).toBe("1;25,400;'=1+1;");
});

test('an inch job has inches: 25.4 mm are one', () => {
  const [head, first] = dialTableCsv(table, { units: 'in', decimalSign: 'point' }).split('\r\n');
  expect(head).toContain('diameter in');
  expect(first).toBe("1,1.0000,'=1+1,");
});
