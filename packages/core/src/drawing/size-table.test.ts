import { expect, test } from 'vitest';
import { boxWidth } from './box.ts';
import { frameOf, paperOf } from './paper.ts';
import { drawTable } from './size-table.ts';

const row = {
  letter: 'A',
  title: 'not drawn: distance of the very longest groove there ever was from the start of its section',
  text: '123.456 js12 (±0.2345) and more of the same so that it is far too long',
  of: 'x',
};

test('two blocks of the widest table go between the frames of the narrower paper, and long texts are cut to fit', () => {
  const frame = frameOf(paperOf('Letter', 'landscape'));
  const table = drawTable(
    Array.from({ length: 9 }, () => row),
    2,
  );
  expect(boxWidth(table.extent() ?? frame)).toBeLessThan(frame.right - frame.left - 6);
  expect(table.items.some((item) => item.item === 'text' && item.text.endsWith('…'))).toBe(true);
});

test('no rows, no table', () => {
  expect(drawTable([], 2).extent()).toBeUndefined();
});
