/** The title block (fields of ISO 7200, 180 mm wide, from memory) with what holds for the whole sheet. */
import type { PartResult } from '../part/part-result.ts';
import { generalClassNames } from '../standards/fits/general-tolerances.ts';
import type { Mm } from '../units/quantities.ts';
import { type Board, textHeight } from './board.ts';
import { type Box, boxAt } from './box.ts';
import { tickParts } from './finish-marks.ts';
import { fitText } from './fit-text.ts';
import { numberText, sizeText } from './numbers.ts';
import { scaleText } from './scales.ts';
import type { DrawingSettings } from './settings.ts';
import { circle, lineThrough, rectangle } from './shapes.ts';
import { textWidth, type Weight } from './text-width.ts';

export const titleBlockSize = { width: 180, height: 37 } as const;

export interface SheetFacts {
  readonly scale: number;
  readonly sheet: number;
  readonly sheets: number;
  /** A scale was asked for that the paper does not hold. */
  readonly scaleRefused?: boolean | undefined;
}

interface Cell {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
  readonly label: string;
  readonly value: string;
  readonly size?: Mm;
  readonly weight?: Weight;
}

export function titleBlockBox(frame: Box): Box {
  const { width, height } = titleBlockSize;
  return boxAt(frame.right - width, frame.bottom - height, width, height);
}

export function drawTitleBlock(
  board: Board,
  frame: Box,
  part: PartResult,
  settings: DrawingSettings,
  facts: SheetFacts,
): void {
  const box = titleBlockBox(frame);
  for (const cell of cells(part, settings, facts)) drawCell(board, box, cell);
  drawTitle(board, boxAt(box.left, box.top + 16, 102, 13), settings.title);
  drawGeneralFinish(board, box.left + 102, box.top, settings);
  drawProjection(board, { x: box.left + 168, y: box.top + 6.4 }, settings.projection);
  board.items.push(rectangle(box.left, box.top, titleBlockSize.width, titleBlockSize.height, 'frame'));
}

function cells(part: PartResult, settings: DrawingSettings, facts: SheetFacts): Cell[] {
  const { generalTolerance, hazard, invented } = settings;
  const tolerance = generalTolerance
    ? `ISO 2768-${generalTolerance} (${generalClassNames[generalTolerance]})`
    : 'none stated';
  const edges = settings.edgeBreak === undefined ? 'not stated' : `broken ${sizeText(settings.edgeBreak, settings)}`;
  const mass = part.mass?.mass === undefined ? '–' : massText(part.mass.mass, settings);
  const scale = facts.scaleRefused
    ? `${scaleText(facts.scale)} (${scaleText(settings.scale ?? 1)} does not fit)`
    : scaleText(facts.scale);
  const marks = [
    ...(hazard !== undefined && hazard !== 'ordinary' ? [`HAZARD CLASS: ${hazard}`] : []),
    ...(invented ? ['FIGURES INVENTED'] : []),
    ...(part.complete ? [] : ['NOT COMPLETE: dashed sizes are assumed']),
  ];
  const row = (x: Mm, y: Mm, width: Mm, label: string, value: string): Cell => ({
    x,
    y,
    width,
    height: 8,
    label,
    value,
  });
  return [
    row(0, 0, 56, 'Sizes without limits', tolerance),
    row(56, 0, 46, 'Sharp edges', edges),
    row(102, 0, 44, 'Surfaces without a mark', settings.finish === undefined ? 'not stated' : ''),
    row(146, 0, 34, 'Projection', ''),
    row(0, 8, 56, 'Material', settings.material ?? 'not stated'),
    row(56, 8, 46, 'Mass', mass),
    row(102, 8, 44, 'Scale', scale),
    row(146, 8, 34, 'Sizes in', settings.units === 'in' ? 'inches' : 'millimetres'),
    { x: 0, y: 16, width: 102, height: 13, label: 'Title', value: '' },
    { x: 102, y: 16, width: 78, height: 6.5, label: 'Machine', value: settings.machine ?? '' },
    { x: 102, y: 22.5, width: 78, height: 6.5, label: 'Part number', value: settings.partNumber ?? '' },
    row(0, 29, 34, 'Drawn by', settings.drawnBy ?? ''),
    row(34, 29, 22, 'Date', settings.date ?? ''),
    { ...row(56, 29, 106, 'Notes', marks.join(' · ')), weight: 'bold' },
    row(162, 29, 18, 'Sheet', `${facts.sheet}/${facts.sheets}`),
  ];
}

function drawCell(board: Board, box: Box, cell: Cell): void {
  const [left, top] = [box.left + cell.x, box.top + cell.y];
  board.items.push(rectangle(left, top, cell.width, cell.height, 'thin'));
  board.text({ x: left + 1, y: top + 2.6 }, cell.label, { height: 1.6, tone: 'pencil' });
  if (cell.value === '') return;
  const { text, height } = fitText(cell.value, cell.width - 3, cell.size ?? textHeight.dimension, cell.weight);
  const beside = cell.height < 8;
  const at = beside
    ? { x: left + 16, y: top + cell.height / 2 + height / 2 }
    : { x: left + 1.5, y: top + cell.height - 1.5 - 0.3 * height };
  const fitted = beside ? fitText(cell.value, cell.width - 18, textHeight.dimension) : { text, height };
  board.text(at, fitted.text, { height: fitted.height, weight: cell.weight });
}

/** Large on one line, or smaller on two. */
function drawTitle(board: Board, cell: Box, title: string): void {
  const room = cell.right - cell.left - 3;
  const x = cell.left + 1.5;
  const whole = fitText(title, room, 5, 'bold');
  if (whole.height >= 3.2) {
    board.text({ x, y: cell.bottom - 3 }, whole.text, { height: whole.height, weight: 'bold' });
    return;
  }
  const words = title.split(' ');
  const first: string[] = [];
  while (words.length > 1 && textWidth([...first, words[0] ?? ''].join(' '), 3, 'bold') <= room)
    first.push(words.shift() ?? '');
  [first.join(' '), words.join(' ')].forEach((line, i) => {
    const { text, height } = fitText(line, room, 3, 'bold');
    if (text !== '') board.text({ x, y: cell.bottom - 6.2 + 4.6 * i }, text, { height, weight: 'bold' });
  });
}

function drawGeneralFinish(board: Board, left: Mm, top: Mm, settings: DrawingSettings): void {
  if (settings.finish === undefined) return;
  board.path(tickParts({ x: left + 4, y: top + 7.4 }, 0, 0.65), 'thin');
  board.text({ x: left + 7.5, y: top + 7.4 - 0.5 }, `Ra ${numberText(settings.finish, 3, settings)}`);
}

/** The frustum in two views: its end at the right in third angle's mirror, first angle. */
function drawProjection(board: Board, at: { x: Mm; y: Mm }, projection: DrawingSettings['projection']): void {
  const y = at.y - 2.4;
  const [side, end] = projection === 'first angle' ? [at.x - 4.5, at.x + 6] : [at.x + 4.5, at.x - 6];
  // The narrow end points away from the end view in first angle and towards it in third.
  const [narrow, wide] = [side - 3.5, side + 3.5];
  const outline = [
    { x: narrow, y: y - 1.4 },
    { x: wide, y: y - 2.8 },
    { x: wide, y: y + 2.8 },
    { x: narrow, y: y + 1.4 },
    { x: narrow, y: y - 1.4 },
  ];
  board.items.push(
    lineThrough(outline, 'thin'),
    circle({ x: end, y }, 2.8, 'thin'),
    circle({ x: end, y }, 1.4, 'thin'),
    lineThrough(
      [
        { x: side - 4.5, y },
        { x: side + 4.5, y },
      ],
      'centre',
    ),
    lineThrough(
      [
        { x: end - 3.8, y },
        { x: end + 3.8, y },
      ],
      'centre',
    ),
    lineThrough(
      [
        { x: end, y: y - 3.6 },
        { x: end, y: y + 3.6 },
      ],
      'centre',
    ),
  );
}

function massText(kilograms: number, settings: DrawingSettings): string {
  if (settings.units === 'in') return `${numberText(kilograms / 0.45359237, 3, settings)} lb`;
  return kilograms < 1 ? `${numberText(kilograms * 1000, 1, settings)} g` : `${numberText(kilograms, 3, settings)} kg`;
}
