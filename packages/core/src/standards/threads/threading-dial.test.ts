import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { dialLines } from './threading-dial.ts';

test('lines of the thread dial are those on the plate of a small lathe [LMS-p28]', ({ task }) => {
  for (const row of referenceRows('threads', 'threading-dial')) {
    const lines = dialLines(Number(row.tpi_to_cut));
    const printed =
      row.published_divisions === 'any'
        ? [1, 2, 3, 4, 5, 6, 7, 8]
        : (row.published_divisions ?? '').split(' ').map(Number);
    expect(lines, row.tpi_to_cut).toEqual(printed);
    countOutside(task, 1);
  }
});

test('the rule of a dial with 4 numbered and 4 plain lines: even any, odd numbered, halves every other numbered, quarters one [ISSUHUB-192]', ({
  task,
}) => {
  // Four inches a turn… of an 8-line dial on which each division is half an inch.
  const dial = { divisions: 8, travelPerTurn: 4 };
  expect(dialLines(12, dial)).toHaveLength(8);
  expect(dialLines(11, dial)).toEqual([1, 3, 5, 7]);
  expect(dialLines(3.5, dial)).toEqual([1, 5]);
  expect(dialLines(3.25, dial)).toEqual([1]);
  countOutside(task, 4);
});

test('refuses what cannot be cut', () => {
  expect(() => dialLines(0)).toThrow('above 0');
  expect(() => dialLines(20, { divisions: 0, travelPerTurn: 1 })).toThrow('divisions');
});
