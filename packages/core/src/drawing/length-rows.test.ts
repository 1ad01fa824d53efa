import { expect, test } from 'vitest';
import { Board } from './board.ts';
import { placeLengths, type RowLength } from './length-rows.ts';

function length(of: string, from: number, to: number, rank = 0): RowLength {
  return { of, text: of, a: { x: from, y: 0 }, b: { x: to, y: 0 }, rank };
}

const settings = { first: 10, outward: 1, left: -50, right: 150, rows: 6 } as const;

/** Height of the row in which a length's text stands. */
function rowOf(board: Board, of: string): number | undefined {
  const text = board.items.find((item) => item.item === 'text' && item.of === of);
  return text?.item === 'text' ? text.at.y : undefined;
}

test('lengths that follow one another make a chain in one row, the length over all stands outside it', () => {
  const board = new Board();
  expect(placeLengths(board, [length('20', 0, 20), length('40', 20, 60), length('(60)', 0, 60, 9)], settings)).toEqual(
    [],
  );
  expect(rowOf(board, '20')).toBe(rowOf(board, '40'));
  expect(rowOf(board, '(60)')).toBeGreaterThan(rowOf(board, '20') ?? Number.NaN);
});

test('above the view the rows go up', () => {
  const board = new Board();
  placeLengths(board, [length('20', 0, 20), length('60', 0, 60, 1)], { ...settings, first: -10, outward: -1 });
  expect(rowOf(board, '60')).toBeLessThan(rowOf(board, '20') ?? Number.NaN);
});

test('a length too short for its text gets its arrows from outside', () => {
  const board = new Board();
  expect(placeLengths(board, [length('1.25 ±0.05', 10, 11)], settings)).toEqual([]);
  const line = board.lines.all.find((l) => l.a.y === l.b.y);
  expect(Math.min(line?.a.x ?? 99, line?.b.x ?? 99)).toBeLessThan(10);
});

test('what finds no row is given back, not dropped', () => {
  const one = length('20', 0, 20);
  const same = { ...length('20 again', 0, 20) };
  expect(placeLengths(new Board(), [one, same], { ...settings, rows: 1 })).toEqual([same]);
});
