/** Diameters that can be carried out past an end of the view: bores always, steps when their text fits between the arrows. */
import type { Mm } from '../units/quantities.ts';
import { type Board, textBox, textHeight } from './board.ts';
import { type Box, grown, passesThrough, type Stretch, within } from './box.ts';
import type { At } from './scene.ts';
import { arrowhead } from './shapes.ts';
import { textWidth } from './text-width.ts';

export interface Column {
  readonly of: string;
  readonly text: string;
  /** Where the extension line leaves the part, above the axis. */
  readonly start: At;
  readonly axis: Mm;
  /** Past the left end of the view or the right one. */
  readonly side: -1 | 1;
  /** x of that end on the sheet. */
  readonly end: Mm;
  /** Only the half above the axis is in section: one arrow, and the line runs a little past the axis. */
  readonly half: boolean;
}

const firstColumn: Mm = 9;
const columnStep: Mm = 1.5;
const columns = 24;
const textGap: Mm = 0.8;
const beyondLine: Mm = 1.5;

export function placeColumn(board: Board, column: Column, inside: Box): boolean {
  for (let k = 0; k < columns; k++) {
    const x = column.end + column.side * (firstColumn + columnStep * k);
    const layout = layoutAt(column, x);
    if (!isPossible(board, layout, inside)) continue;
    for (const line of layout.lines) board.line(line.a, line.b, 'dimension', column.of);
    const top = column.start.y;
    board.items.push(arrowhead({ x, y: top }, -Math.PI / 2, column.of));
    if (!column.half) board.items.push(arrowhead({ x, y: 2 * column.axis - top }, Math.PI / 2, column.of));
    board.text(layout.at, column.text, { upright: true, anchor: 'middle', of: column.of });
    return true;
  }
  return false;
}

interface Layout {
  readonly lines: readonly Stretch[];
  readonly at: At;
  readonly text: Box;
}

function layoutAt(column: Column, x: Mm): Layout {
  const { start, axis, side, half, text } = column;
  const width = textWidth(text, textHeight.dimension);
  const reach = x + side * beyondLine;
  const out = (y: Mm): Stretch => ({ a: { x: start.x + side * 0.8, y }, b: { x: reach, y } });
  const bottom = half ? axis + Math.max(4, width - (axis - start.y) + 6) : 2 * axis - start.y;
  const middle = half ? (start.y + 3.5 + bottom) / 2 : axis;
  const at = { x: x - textGap, y: middle };
  const lines = [out(start.y), { a: { x, y: start.y }, b: { x, y: bottom } }];
  if (!half) lines.push(out(bottom));
  return { lines, at, text: textBox(at, text, { upright: true, anchor: 'middle' }) };
}

/** Whether the text of a step fits between its own arrows. */
export function fitsBetweenArrows(text: string, diameterOnPaper: Mm): boolean {
  return diameterOnPaper >= textWidth(text, textHeight.dimension) + 6.5;
}

function isPossible(board: Board, layout: Layout, inside: Box): boolean {
  const [first] = layout.lines;
  return (
    first !== undefined &&
    within(layout.text, inside) &&
    isColumnFree(board, layout) &&
    layout.lines.every((line) => board.isClearOfText(line))
  );
}

/** The text must be free, but for the centre line and shorter extension lines it would be moved out for ever. */
function isColumnFree(board: Board, layout: Layout): boolean {
  return board.isFree(layout.text) && !layout.lines.some((line) => passesThrough(line, grown(layout.text, -0.3)));
}
