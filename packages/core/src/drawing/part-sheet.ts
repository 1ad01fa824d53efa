/** The dimensioned sheet of a turned part. */
import type { PartResult } from '../part/part-result.ts';
import { Board } from './board.ts';
import { type Composition, composeViews } from './compose.ts';
import { describePart } from './description.ts';
import type { TableRow } from './marks.ts';
import { drawFrame, frameOf, paperOf } from './paper.ts';
import { preferredScales } from './scales.ts';
import type { Scene } from './scene.ts';
import type { DrawingSettings } from './settings.ts';
import { drawTable, rowHeight } from './size-table.ts';
import { drawTitleBlock, titleBlockSize } from './title-block.ts';

/** The sheet of a part: the largest preferred scale at which the view and all that is said about it fit the paper. */
export function drawPart(part: PartResult, settings: DrawingSettings): Scene {
  const [first] = drawPartSheets(part, settings);
  return first;
}

/** The same, followed by sheets for the sizes that the first could not hold; there hardly ever are any. */
export function drawPartSheets(part: PartResult, settings: DrawingSettings): [Scene, ...Scene[]] {
  const { composition, scaleRefused } = choose(part, settings);
  const perSheet = rowsPerSheet(settings);
  const more = Array.from({ length: Math.ceil(composition.overflow.length / perSheet) }, (_, i) =>
    composition.overflow.slice(i * perSheet, (i + 1) * perSheet),
  );
  const { scale, paper, board } = composition;
  const sheets = 1 + more.length;
  drawFrame(board, paper);
  drawTitleBlock(board, frameOf(paper), part, settings, { scale, sheet: 1, sheets, scaleRefused });
  const text = { title: settings.title, description: describePart(part, settings) };
  return [
    { ...paper, ...text, items: board.items },
    ...more.map((rows, i) => tableSheet(part, settings, rows, scale, i + 2, sheets)),
  ];
}

interface Choice {
  readonly composition: Composition;
  readonly scaleRefused: boolean;
}

function choose(part: PartResult, settings: DrawingSettings): Choice {
  if (settings.scale !== undefined) {
    const asked = composeAt(part, settings, settings.scale);
    if (asked?.fits) return { composition: asked, scaleRefused: false };
    const smaller = preferredScales.filter((s) => s < (settings.scale ?? 1));
    return { composition: best(part, settings, smaller), scaleRefused: true };
  }
  return { composition: best(part, settings, preferredScales), scaleRefused: false };
}

/** Of the two largest scales that fit, the one that leaves least for the table. */
function best(part: PartResult, settings: DrawingSettings, scales: readonly number[]): Composition {
  let found: Composition | undefined;
  let last: Composition | undefined;
  let fitting = 0;
  for (const scale of scales) {
    const tried = composeAt(part, settings, scale);
    if (!tried) continue;
    last = tried;
    if (!tried.fits) continue;
    fitting += 1;
    if (!found || tried.lost < found.lost) found = tried;
    if (found.lost === 0 || fitting === 2) break;
  }
  const least = scales.at(-1) ?? preferredScales.at(-1) ?? 1;
  return found ?? last ?? composeViews(part, settings, least, paperOf(settings.paper, 'landscape'));
}

function composeAt(part: PartResult, settings: DrawingSettings, scale: number): Composition | undefined {
  const length = part.outline.length * scale;
  const diameter = part.outline.largestDiameter * scale;
  const tried: Composition[] = [];
  for (const orientation of ['landscape', 'portrait'] as const) {
    const paper = paperOf(settings.paper, orientation);
    if (length > paper.width - 50 || diameter > paper.height - titleBlockSize.height - 60) continue;
    const composition = composeViews(part, settings, scale, paper);
    if (composition.fits && composition.lost === 0) return composition;
    tried.push(composition);
  }
  return tried.toSorted((a, b) => Number(b.fits) - Number(a.fits) || a.lost - b.lost)[0];
}

const blocks = 2;

function rowsPerSheet(settings: DrawingSettings): number {
  const frame = frameOf(paperOf(settings.paper, 'landscape'));
  return blocks * (Math.floor((frame.bottom - frame.top - titleBlockSize.height - 12) / rowHeight) - 1);
}

function tableSheet(
  part: PartResult,
  settings: DrawingSettings,
  rows: readonly TableRow[],
  scale: number,
  sheet: number,
  sheets: number,
): Scene {
  const paper = paperOf(settings.paper, 'landscape');
  const frame = frameOf(paper);
  const board = new Board();
  board.merge(drawTable(rows, blocks), { x: frame.left + 5, y: frame.top + 5 });
  drawFrame(board, paper);
  drawTitleBlock(board, frame, part, settings, { scale, sheet, sheets });
  const description = `Further sizes of ${settings.title}.`;
  return { ...paper, title: `${settings.title}, sheet ${sheet}`, description, items: board.items };
}
