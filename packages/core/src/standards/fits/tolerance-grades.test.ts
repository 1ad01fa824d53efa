import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { gradeRows, mainRanges, toleranceGrade } from './tolerance-grades.ts';

test('grades stand as in the reference table, range by range', () => {
  const rows = referenceRows('limits-fits', 'it-grades');
  expect(rows.length).toBe(gradeRows.length * mainRanges.length);
  for (const row of rows) {
    for (const nominal of [Number(row.size_over_mm) + 0.01, Number(row.size_to_mm)]) {
      expect(toleranceGrade(nominal, row.grade ?? '') * 1000).toBeCloseTo(Number(row.tolerance_um), 9);
    }
  }
});

test('IT5 to IT10 follow the tolerance unit i = 0.45 ∛D + 0.001 D within the smoothing of the standard [ND-222]', ({
  task,
}) => {
  const multiples: Record<string, number> = { 5: 7, 6: 10, 7: 16, 8: 25, 9: 40, 10: 64 };
  let compared = 0;
  mainRanges.forEach((end, i) => {
    const D = Math.sqrt((i === 0 ? 1 : (mainRanges[i - 1] ?? Number.NaN)) * end);
    const unit = 0.45 * Math.cbrt(D) + 0.001 * D;
    for (const [grade, times] of Object.entries(multiples)) {
      const off = toleranceGrade(end, grade) * 1000 - times * unit;
      // The smallest range is a good deal wider than the formula; elsewhere only rounding separates them.
      const room = Math.max(0.8, (end <= 3 ? 0.16 : 0.04) * times * unit);
      expect({ end, grade, off: Math.abs(off) <= room ? 0 : off }).toEqual({ end, grade, off: 0 });
      compared++;
    }
  });
  countOutside(task, compared);
});

test('every fifth grade from IT6 on is ten times as wide, but for IT11 over 3 to 6 mm', () => {
  for (const end of mainRanges) {
    for (let grade = 6; grade <= 13; grade++) {
      if (end === 6 && grade === 6) continue;
      expect(toleranceGrade(end, grade + 5)).toBeCloseTo(10 * toleranceGrade(end, grade), 9);
    }
  }
});

test('the tolerance grows with the grade and with the size', () => {
  for (const [g, row] of gradeRows.entries()) {
    for (const [i, end] of mainRanges.entries()) {
      const here = toleranceGrade(end, row.grade);
      const coarser = gradeRows[g + 1];
      if (coarser) expect(toleranceGrade(end, coarser.grade)).toBeGreaterThan(here);
      if (i > 0) expect(here).toBeGreaterThanOrEqual(toleranceGrade(mainRanges[i - 1] ?? 1, row.grade));
    }
  }
});

test.each([19, -1, 'IT20', '', 'x', 7.5])('a grade %s is refused', (grade) => {
  expect(() => toleranceGrade(40, grade)).toThrow('IT01, IT0, IT1 … IT18');
});

test('IT0 and IT01 are two grades', () => {
  expect(toleranceGrade(40, 0)).toBe(0.001);
  expect(toleranceGrade(40, '01')).toBe(0.0006);
});
