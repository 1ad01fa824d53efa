/** Sheets of paper with their frame (ISO 5457, from memory: wide filing margin at the left, centring marks). */
import type { Mm } from '../units/quantities.ts';
import type { Board } from './board.ts';
import type { Box } from './box.ts';
import { lineThrough, rectangle } from './shapes.ts';

export interface Paper {
  readonly width: Mm;
  readonly height: Mm;
}

const upright: Readonly<Record<'A4' | 'Letter', Paper>> = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
};

export function paperOf(name: 'A4' | 'Letter', orientation: 'landscape' | 'portrait'): Paper {
  const { width, height } = upright[name];
  return orientation === 'portrait' ? { width, height } : { width: height, height: width };
}

const filing: Mm = 20;
const margin: Mm = 10;
const centring: Mm = 5;

export function frameOf(paper: Paper): Box {
  return { left: filing, top: margin, right: paper.width - margin, bottom: paper.height - margin };
}

export function drawFrame(board: Board, paper: Paper): void {
  const frame = frameOf(paper);
  board.items.push(rectangle(frame.left, frame.top, frame.right - frame.left, frame.bottom - frame.top, 'frame'));
  const [x, y] = [(frame.left + frame.right) / 2, (frame.top + frame.bottom) / 2];
  const marks = [
    [
      { x: frame.left - centring, y },
      { x: frame.left, y },
    ],
    [
      { x: frame.right, y },
      { x: frame.right + centring, y },
    ],
    [
      { x, y: frame.top - centring },
      { x, y: frame.top },
    ],
    [
      { x, y: frame.bottom },
      { x, y: frame.bottom + centring },
    ],
  ];
  for (const mark of marks) board.items.push(lineThrough(mark, 'frame'));
}
