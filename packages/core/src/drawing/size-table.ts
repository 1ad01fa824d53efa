/** The table of sizes that found no place on the views. */
import type { Mm } from '../units/quantities.ts';
import { Board, textHeight } from './board.ts';
import { fitText } from './fit-text.ts';
import type { TableRow } from './marks.ts';
import { lineThrough, rectangle } from './shapes.ts';
import { textWidth } from './text-width.ts';

export const rowHeight: Mm = 4.6;
const gap: Mm = 3;
const pad: Mm = 1.2;
const letterColumn: Mm = 7;

/** The table about its own top left corner, in so many blocks side by side. */
export function drawTable(rows: readonly TableRow[], blocks: number, heading = 'Further sizes'): Board {
  const board = new Board();
  if (rows.length === 0) return board;
  const perBlock = Math.ceil(rows.length / blocks);
  const titles = Math.min(54, Math.max(20, ...rows.map((r) => textWidth(r.title, textHeight.dimension) + 2 * pad)));
  const values = Math.min(56, Math.max(20, ...rows.map((r) => textWidth(r.text, textHeight.dimension) + 2 * pad)));
  const width = letterColumn + titles + values;
  for (let block = 0; block * perBlock < rows.length; block++) {
    const left = block * (width + gap);
    const part = rows.slice(block * perBlock, (block + 1) * perBlock);
    board.text({ x: left + pad, y: rowHeight - 1.2 }, block === 0 ? heading : `${heading}, continued`, {
      weight: 'bold',
    });
    part.forEach((row, i) => {
      const y = (i + 2) * rowHeight - 1.2;
      const title = fitText(row.title, titles - 2 * pad, textHeight.dimension);
      const value = fitText(row.text, values - 2 * pad, textHeight.dimension);
      board.text({ x: left + pad, y }, row.letter, { weight: 'bold', of: row.of });
      board.text({ x: left + letterColumn + pad, y }, title.text, { height: title.height, of: row.of });
      board.text({ x: left + letterColumn + titles + pad, y }, value.text, { height: value.height, of: row.of });
      const under = (i + 1) * rowHeight;
      board.items.push(
        lineThrough(
          [
            { x: left, y: under },
            { x: left + width, y: under },
          ],
          'thin',
        ),
      );
    });
    board.items.push(rectangle(left, 0, width, (part.length + 1) * rowHeight, 'thin'));
  }
  return board;
}
