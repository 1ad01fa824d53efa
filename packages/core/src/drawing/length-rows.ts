/**
 * Lengths in rows beside the view. A length goes into the nearest row where its text is crossed by nothing: neither by what stands there
 * nor by the extension lines of lengths that are still to come and will pass through the row on their way out.
 */
import type { Mm } from '../units/quantities.ts';
import type { Board } from './board.ts';
import { textBox, textHeight } from './board.ts';
import { type Box, boxAt, grown, overlap, passesThrough, type Stretch } from './box.ts';
import type { At } from './scene.ts';
import { arrowhead, arrowLength } from './shapes.ts';
import { boxOf } from './stretches.ts';
import { textWidth } from './text-width.ts';

export interface RowLength {
  readonly of: string;
  readonly text: string;
  /** The two ends: where their extension lines begin. */
  readonly a: At;
  readonly b: At;
  readonly rank: number;
}

export interface RowSettings {
  /** Height of the first row. */
  readonly first: Mm;
  /** Rows go down the sheet, or up. */
  readonly outward: 1 | -1;
  /** No text or line beyond these. */
  readonly left: Mm;
  readonly right: Mm;
  readonly rows: number;
}

const rowPitch: Mm = 6.5;
const gapAtPart: Mm = 0.8;
const beyondLine: Mm = 1.5;
const textGap: Mm = 0.8;
/** A dimension line with both arrows inside is at least so long. */
const innerRoom: Mm = 2 * arrowLength + 1;

interface Choice {
  readonly at: At;
  readonly from: Mm;
  readonly to: Mm;
  readonly arrows: 'inside' | 'outside';
}

/** Draws what it can and gives back what found no place. */
export function placeLengths(board: Board, lengths: readonly RowLength[], settings: RowSettings): RowLength[] {
  let waiting = lengths.toSorted((p, q) => p.rank - q.rank || span(p) - span(q) || p.a.x - q.a.x);
  for (let row = 0; row < settings.rows && waiting.length > 0; row++) {
    const y = settings.first + settings.outward * rowPitch * row;
    const stay: RowLength[] = [];
    waiting.forEach((length, i) => {
      const others = [...stay, ...waiting.slice(i + 1)];
      const choice = choices(length, y, settings).find((c) => fits(board, length, c, y, others, settings));
      if (choice) draw(board, length, choice, y, settings);
      else stay.push(length);
    });
    waiting = stay;
  }
  return waiting;
}

function span(length: RowLength): Mm {
  return Math.abs(length.b.x - length.a.x);
}

/** Ways to set one length in a row, the most natural first. */
function choices(length: RowLength, y: Mm, settings: RowSettings): Choice[] {
  const [from, to] = [Math.min(length.a.x, length.b.x), Math.max(length.a.x, length.b.x)];
  const width = textWidth(length.text, textHeight.dimension);
  const base = y - textGap;
  const tail = arrowLength + 2;
  const list: Choice[] = [];
  const middle = (from + to) / 2 - width / 2;
  const room = to - from;
  if (room >= innerRoom && room >= width + 1) list.push({ at: { x: middle, y: base }, from, to, arrows: 'inside' });
  if (room < innerRoom && room >= width + 0.6) {
    list.push({ at: { x: middle, y: base }, from: from - tail, to: to + tail, arrows: 'outside' });
  }
  const arrows = room >= innerRoom ? 'inside' : 'outside';
  const pad = arrows === 'inside' ? 1.2 : tail;
  for (let away = 0; away <= 60; away += 4) {
    const right = to + pad + away;
    list.push({ at: { x: right, y: base }, from: arrows === 'inside' ? from : from - tail, to: right + width, arrows });
    const left = from - pad - away - width;
    list.push({ at: { x: left, y: base }, from: left, to: arrows === 'inside' ? to : to + tail, arrows });
  }
  return list.filter((c) => c.from >= settings.left && c.to <= settings.right);
}

function fits(
  board: Board,
  length: RowLength,
  choice: Choice,
  y: Mm,
  waiting: readonly RowLength[],
  settings: RowSettings,
): boolean {
  const box = textBox(choice.at, length.text);
  if (!board.isFree(box)) return false;
  // Dimension lines in one row do not run into one another; they may meet end to end.
  const own = boxAt(choice.from + 0.1, y - 0.4, choice.to - choice.from - 0.2, 0.8);
  if (rowLines(board, own).some((line) => overlap(line, own)) || !board.isClearOfText(asLine(choice, y))) return false;
  const ends = extensions(length, y, settings);
  if (!ends.every((line) => board.isClearOfText(line))) return false;
  if (ends.some((line) => passesThrough(line, grown(box, 0.4)))) return false;
  const far = settings.first + settings.outward * rowPitch * settings.rows;
  return !waiting.some((w) => extensions(w, far, settings).some((line) => passesThrough(line, grown(box, 0.6))));
}

function rowLines(board: Board, own: Box): Box[] {
  return board.lines
    .near(own)
    .filter((l) => Math.abs(l.a.y - l.b.y) < 0.1)
    .map((l) => {
      const { left, right, top, bottom } = boxOf(l);
      return { left, right, top: top - 0.4, bottom: bottom + 0.4 };
    });
}

function asLine(choice: Choice, y: Mm): Stretch {
  return { a: { x: choice.from, y }, b: { x: choice.to, y } };
}

function extensions(length: RowLength, y: Mm, settings: RowSettings): Stretch[] {
  return [length.a, length.b].map((p) => ({
    a: { x: p.x, y: p.y + settings.outward * gapAtPart },
    b: { x: p.x, y: y + settings.outward * beyondLine },
  }));
}

function draw(board: Board, length: RowLength, choice: Choice, y: Mm, settings: RowSettings): void {
  for (const line of extensions(length, y, settings)) drawExtension(board, line, length.of);
  board.line({ x: choice.from, y }, { x: choice.to, y }, 'dimension', length.of);
  const [from, to] = [Math.min(length.a.x, length.b.x), Math.max(length.a.x, length.b.x)];
  const inward = choice.arrows === 'outside';
  board.items.push(arrowhead({ x: from, y }, inward ? 0 : Math.PI, length.of));
  board.items.push(arrowhead({ x: to, y }, inward ? Math.PI : 0, length.of));
  board.text(choice.at, length.text, { of: length.of });
}

/** Neighbours share an extension line: only what is not there yet is drawn, or it would look twice as thick. */
function drawExtension(board: Board, line: Stretch, of: string): void {
  const there = board.lines
    .near(boxOf(line))
    .filter((l) => Math.abs(l.a.x - line.a.x) < 0.01 && Math.abs(l.b.x - line.a.x) < 0.01);
  const way = Math.sign(line.b.y - line.a.y);
  const reached = there.map((l) => way * l.b.y).filter((end) => end > way * line.a.y);
  const from = Math.max(way * line.a.y, ...reached);
  if (from < way * line.b.y - 0.01) board.line({ x: line.a.x, y: way * from }, line.b, 'dimension', of);
}
