/** Sheets after the first: details and rows of the table that it could not hold. */
import { Board } from './board.ts';
import { type Box, grown } from './box.ts';
import type { TableRow } from './marks.ts';
import { findRoom } from './pack.ts';
import { frameOf, type Paper, paperOf } from './paper.ts';
import type { DrawingSettings } from './settings.ts';
import { drawTable, rowHeight } from './size-table.ts';
import { titleBlockBox, titleBlockSize } from './title-block.ts';

export interface FurtherSheet {
  readonly board: Board;
  readonly paper: Paper;
}

const blocks = 2;

export function furtherSheets(
  details: readonly Board[],
  rows: readonly TableRow[],
  settings: DrawingSettings,
): FurtherSheet[] {
  const paper = paperOf(settings.paper, 'landscape');
  const frame = frameOf(paper);
  const perSheet = blocks * (Math.floor((frame.bottom - frame.top - titleBlockSize.height - 14) / rowHeight) - 1);
  const tables = Array.from({ length: Math.ceil(rows.length / perSheet) }, (_, i) =>
    drawTable(rows.slice(i * perSheet, (i + 1) * perSheet), blocks),
  );
  const sheets: FurtherSheet[] = [];
  let waiting: readonly Board[] = [...details, ...tables];
  while (waiting.length > 0) {
    const { board, left } = fill(waiting, frame);
    sheets.push({ board, paper });
    waiting = left;
  }
  return sheets;
}

/** Puts what fits on one sheet; the first always goes on it. */
function fill(waiting: readonly Board[], frame: Box): { board: Board; left: Board[] } {
  const board = new Board();
  const taken = [titleBlockBox(frame)];
  const region = grown(frame, -3);
  const left = waiting.filter((each, i) => {
    const size = each.extent();
    if (!size) return false;
    const room = findRoom(size, region, taken);
    if (!room && i > 0) return true;
    const at = room ?? region;
    board.merge(each, { x: at.left - size.left, y: at.top - size.top });
    if (room) taken.push(room);
    return false;
  });
  return { board, left };
}
