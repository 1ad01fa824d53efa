/**
 * The dimensioned sheet of a turned part. Lines, views, sections, dimensions, threads and roughness follow the habits laid down in ISO 128,
 * 129-1, 5456-2, 6410 and 21920-1, from memory; none of these was looked up.
 */
import type { PartResult } from '../part/part-result.ts';
import { type Composition, composeViews } from './compose.ts';
import { describePart } from './description.ts';
import { furtherSheets } from './further-sheets.ts';
import { drawFrame, frameOf, paperOf } from './paper.ts';
import { preferredScales } from './scales.ts';
import type { Item, Scene } from './scene.ts';
import type { DrawingSettings } from './settings.ts';
import { drawTitleBlock, titleBlockSize } from './title-block.ts';

/** The sheet of a part: the largest preferred scale at which the view and all that is said about it fit the paper. */
export function drawPart(part: PartResult, settings: DrawingSettings): Scene {
  const [first] = drawPartSheets(part, settings);
  return first;
}

/** The same, followed by sheets for what the first could not hold; there hardly ever are any. */
export function drawPartSheets(part: PartResult, settings: DrawingSettings): [Scene, ...Scene[]] {
  const { composition, scaleRefused } = choose(part, settings);
  const { scale, paper, board } = composition;
  const more = furtherSheets(composition.homeless, composition.overflow, settings);
  const sheets = 1 + more.length;
  drawFrame(board, paper);
  drawTitleBlock(board, frameOf(paper), part, settings, { scale, sheet: 1, sheets, scaleRefused });
  more.forEach((further, i) => {
    drawFrame(further.board, further.paper);
    drawTitleBlock(further.board, frameOf(further.paper), part, settings, { scale, sheet: i + 2, sheets });
  });
  const text = { title: settings.title, description: describePart(part, settings) };
  return [
    { ...paper, ...text, items: inPencil(board.items, part), view: composition.view },
    ...more.map((further, i) => ({
      ...further.paper,
      title: `${settings.title}, sheet ${i + 2}`,
      description: `Further details and sizes of ${settings.title}.`,
      items: inPencil(further.board.items, part),
    })),
  ];
}

/** Figures of sizes that are left open are written in pencil, as their lines are drawn. */
function inPencil(items: readonly Item[], part: PartResult): readonly Item[] {
  const open = new Set(part.dimensions.filter((d) => d.open).map((d) => d.id));
  if (open.size === 0) return items;
  return items.map((item) =>
    item.item === 'text' && item.of !== undefined && open.has(item.of) ? { ...item, tone: 'pencil' } : item,
  );
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

/** Of the two largest scales that fit, the one that leaves least for the table and for further sheets. */
function best(part: PartResult, settings: DrawingSettings, scales: readonly number[]): Composition {
  let found: Composition | undefined;
  let last: Composition | undefined;
  let fitting = 0;
  for (const scale of scales) {
    const tried = composeAt(part, settings, scale);
    if (!tried) continue;
    last ??= tried;
    if (!tried.fits) continue;
    fitting += 1;
    if (!found || leftOver(tried) < leftOver(found)) found = tried;
    if (leftOver(found) === 0 || fitting === 2) break;
  }
  const least = scales.at(-1) ?? preferredScales.at(-1) ?? 1;
  return found ?? last ?? composeViews(part, settings, least, paperOf(settings.paper, 'landscape'));
}

function leftOver(composition: Composition): number {
  return composition.lost + 2 * composition.homeless.length + composition.overflow.length;
}

function composeAt(part: PartResult, settings: DrawingSettings, scale: number): Composition | undefined {
  const length = part.outline.length * scale;
  const diameter = part.outline.largestDiameter * scale;
  const tried: Composition[] = [];
  for (const orientation of ['landscape', 'portrait'] as const) {
    const paper = paperOf(settings.paper, orientation);
    if (length > paper.width - 50 || diameter > paper.height - titleBlockSize.height - 60) continue;
    const composition = composeViews(part, settings, scale, paper);
    if (composition.fits && leftOver(composition) === 0) return composition;
    tried.push(composition);
  }
  return tried.toSorted((a, b) => Number(b.fits) - Number(a.fits) || leftOver(a) - leftOver(b))[0];
}
