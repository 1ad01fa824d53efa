/** All that stands on a sheet at one scale: main view, its marks, end views, details and the table of what found no place. */
import type { PartResult } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import { Board } from './board.ts';
import { around, type Box, boxAt, grown, moved, within } from './box.ts';
import { drawDetail, markDetail } from './detail-view.ts';
import { drawEndView, endsToShow, sideFor } from './end-view.ts';
import { grooveGroups, grooveNote, groovePlaces, needsDetail } from './groove-marks.ts';
import { placeNote } from './leaders.ts';
import { type MarkRoom, placeMarks, setNote } from './main-marks.ts';
import { drawMainView } from './main-view.ts';
import { type Mark, markText, type TableRow } from './marks.ts';
import { drawNotTurned } from './not-turned-lines.ts';
import { sizeText } from './numbers.ts';
import { findRoom } from './pack.ts';
import { frameOf, type Paper } from './paper.ts';
import { insideMarks, lengthMark, nameOf, outsideMarks } from './section-marks.ts';
import type { DrawingSettings } from './settings.ts';
import type { Zone } from './shelf.ts';
import { drawTable } from './size-table.ts';
import { Sizes } from './sizes.ts';
import { edgeMarks, notTurnedMarks, threadMarks } from './small-marks.ts';
import { drawThreads } from './thread-lines.ts';
import { titleBlockBox } from './title-block.ts';
import { radiusAt, type View } from './view.ts';

export interface Composition {
  readonly board: Board;
  readonly paper: Paper;
  readonly scale: number;
  /** Where the main view lies on the sheet. */
  readonly view: View;
  /** Everything is inside the frame and clear of the title block. */
  readonly fits: boolean;
  /** How many marks went into the table. */
  readonly lost: number;
  /** Details for which this sheet has no room. */
  readonly homeless: readonly Board[];
  /** Rows of the table for which this sheet has no room. */
  readonly overflow: readonly TableRow[];
}

export function composeViews(part: PartResult, settings: DrawingSettings, scale: number, paper: Paper): Composition {
  const frame = frameOf(paper);
  const region = grown(frame, -3);
  const title = titleBlockBox(frame);
  const sizes = new Sizes(part, settings);
  const board = new Board();
  const view: View = { x: 0, y: 0, scale };
  drawMainView(board, part, view);
  drawThreads(board, part, view);
  drawNotTurned(board, part, view);

  const groups = grooveGroups(part, sizes);
  const detailed = groups.filter((g) => needsDetail(g, scale));
  const room = markRoom(part, view, region, title, detailed.length > 0, endsToShow(part).size);
  const letters = new Letters();
  const named = detailed.map((group) => ({ group, letter: letters.next() }));
  for (const { group, letter } of named) markDetail(board, group, letter, view, [room.above, room.below]);

  const marks = [
    ...outsideMarks(part, sizes),
    ...insideMarks(part, sizes),
    ...groups.filter((g) => !needsDetail(g, scale)).flatMap(grooveNote),
    ...groovePlaces(part, sizes),
    ...edgeMarks(part, sizes),
    ...threadMarks(part, sizes),
    ...notTurnedMarks(part, sizes),
    ...overall(part, sizes),
  ];
  const unplaced = placeMarks(board, part, view, marks, room);
  const table = unplaced.map((mark) => tableRow(board, mark, view, room, letters.next()));
  table.push(...placeEndViews(board, part, settings, view, room, region.right - region.left, sizes, letters));

  const details = named.map(({ group, letter }) => drawDetail(part, group, letter, scale, settings));
  table.push(...details.flatMap((d) => d.left));
  const lost = table.length;
  table.push(...notDrawn(sizes), ...curveRows(board, part, settings, view, room, letters));
  return settle(
    board,
    details.map((d) => d.board),
    table,
    { region, title, paper, scale, lost },
  );
}

/** The bracketed length over all: it follows from the others, and is there to cut the bar by. */
function overall(part: PartResult, sizes: Sizes): Mark[] {
  const isKnown = part.complete || part.outside.every((s) => sizes.peek(s.feature.id, 'length'));
  if (!isKnown || part.outside.length < 2) return [];
  const text = `(${sizeText(part.outline.length, sizes.style)})`;
  return [lengthMark('overall', 'length over all', text, 0, part.outline.length, 'below', 9)];
}

function markRoom(part: PartResult, view: View, region: Box, title: Box, details: boolean, ends: number): MarkRoom {
  const { length, largestDiameter } = part.outline;
  const radius = (largestDiameter / 2) * view.scale;
  const width = region.right - region.left - ends * (2 * radius + 24);
  const side = Math.max(6, (width - length * view.scale) / 2 - 2);
  const height = title.top - 4 - region.top - (details ? 10 : 0);
  const free = Math.max(20, (height - 2 * radius) / 2);
  const inside = {
    left: view.x - side,
    right: view.x + length * view.scale + side,
    top: view.y - radius - free * 1.1 + 1,
    bottom: view.y + radius + free * 0.9 - 1,
  };
  const rows = Math.floor(free / 2.1);
  return {
    inside,
    above: { first: view.y - radius - 5, outward: -1, rows, inside },
    below: { first: view.y + radius + 6, outward: 1, rows, inside },
  };
}

/** A mark without room becomes a letter at its feature and a row of the table. */
function tableRow(board: Board, mark: Mark, view: View, room: MarkRoom, letter: string): TableRow {
  const points =
    mark.mark === 'leader'
      ? mark.points
      : [0.5, 0.25, 0.75].map((f) => ({
          z: mark.from + f * (mark.to - mark.from),
          r: mark.mark === 'diameter' ? mark.radius : 0,
        }));
  const touch = points.map((p) => ({ x: view.x + p.z * view.scale, y: view.y - p.r * view.scale }));
  const placed = placeNote(board, { of: mark.of, lines: [letter], touch }, [room.above, room.below]);
  return { letter: placed ? letter : '', title: mark.title, text: markText(mark), of: mark.of };
}

function placeEndViews(
  board: Board,
  part: PartResult,
  settings: DrawingSettings,
  view: View,
  room: MarkRoom,
  width: Mm,
  sizes: Sizes,
  letters: Letters,
): TableRow[] {
  const rows: TableRow[] = [];
  const radius = (part.outline.largestDiameter / 2) * view.scale;
  for (const [end, features] of endsToShow(part)) {
    const side = sideFor(end, settings.projection);
    const extent = board.extent() ?? boxAt(0, 0, 0, 0);
    const x = side === 'left' ? extent.left - 10 - radius : extent.right + 10 + radius;
    const centre = { x, y: view.y };
    const notes = drawEndView(board, part, end, features, centre, view.scale, sizes);
    // Notes may reach over the main view, but must not make the whole wider than the paper.
    const spare = width - (extent.right - extent.left) - 2 * radius - 10;
    const inside = {
      left: side === 'left' ? x - radius - spare : extent.left,
      right: side === 'left' ? extent.right : x + radius + spare,
      top: room.inside.top,
      bottom: room.inside.bottom,
    };
    const zones: Zone[] = [
      { first: view.y - radius - 6, outward: -1, rows: 12, inside },
      { first: view.y + radius + 6, outward: 1, rows: 12, inside },
    ];
    for (const note of notes) {
      if (placeNote(board, note, zones)) continue;
      const letter = letters.next();
      const placed = placeNote(board, { ...note, lines: [letter] }, zones);
      rows.push({ letter: placed ? letter : '', title: note.title, text: note.lines.join(', '), of: note.of });
    }
  }
  return rows;
}

/** Sizes of what the part stage could not make and left out of the outline: they are stated all the same. */
function notDrawn(sizes: Sizes): TableRow[] {
  return sizes.left().map((d) => ({ letter: '', title: `not drawn: ${d.title}`, text: sizes.text(d), of: d.id }));
}

/** A free curve is told by its points, under one letter. */
function curveRows(
  board: Board,
  part: PartResult,
  settings: DrawingSettings,
  view: View,
  room: MarkRoom,
  letters: Letters,
): TableRow[] {
  return part.outside.flatMap(({ feature, from, to }) => {
    if (feature.kind !== 'curve') return [];
    const letter = letters.next();
    const title = nameOf(feature);
    const points = [0.5, 0.3, 0.7].map((f) => {
      const z = from + f * (to - from);
      return { z, r: radiusAt(part.outline.outside, z) ?? 0 };
    });
    setNote(board, view, { mark: 'leader', of: feature.id, title, lines: [letter], points }, room);
    return feature.points.map((point, i) => ({
      letter: i === 0 ? letter : '',
      title: `${title}, point ${i + 1}`,
      text: `${sizeText(point.along, settings)} along, Ø${sizeText(point.diameter, settings)}`,
      of: feature.id,
    }));
  });
}

/** Letters for details and table rows: A to Z without I, O and Q, then A1, B1 … */
class Letters {
  #used = 0;

  next(): string {
    const alphabet = 'ABCDEFGHJKLMNPRSTUVWXYZ';
    const round = Math.floor(this.#used / alphabet.length);
    const letter = alphabet[this.#used % alphabet.length] ?? '?';
    this.#used += 1;
    return round === 0 ? letter : `${letter}${round}`;
  }
}

interface Layout {
  readonly region: Box;
  readonly title: Box;
  readonly paper: Paper;
  readonly scale: number;
  readonly lost: number;
}

/** Puts the main view as near the middle as leaves room for the rest. */
function settle(main: Board, details: readonly Board[], table: readonly TableRow[], layout: Layout): Composition {
  const room = main.boxes();
  let last: Composition | undefined;
  for (const share of [0.5, 0.35, 0.2, 0.1, 0]) {
    last = settleAt(main, room, details, table, layout, share);
    if (last.fits && last.overflow.length === 0 && last.homeless.length === 0) return last;
  }
  return last ?? settleAt(main, room, details, table, layout, 0);
}

/** @param room  what the items of the main view take */
function settleAt(
  main: Board,
  room: readonly Box[],
  details: readonly Board[],
  table: readonly TableRow[],
  layout: Layout,
  share: number,
): Composition {
  const { region, title, paper, scale, lost } = layout;
  const sheet = new Board();
  const extent = around(room) ?? boxAt(0, 0, 0, 0);
  const spare = title.top - 4 - region.top - (extent.bottom - extent.top);
  const across = (region.right - region.left - (extent.right - extent.left)) / 2;
  const down = share * Math.max(0, spare);
  const view = { x: region.left + across - extent.left, y: region.top + down - extent.top, scale };
  sheet.merge(main, view);
  const whole = moved(extent, view);
  const fits = within(whole, grown(region, 0.01)) && whole.bottom <= title.top - 3;
  const taken = [...room.map((box) => moved(box, view)), title];
  const put = (board: Board): boolean => {
    const size = board.extent();
    if (!size) return true;
    const place = findRoom(size, region, taken);
    if (!place) return false;
    sheet.merge(board, { x: place.left - size.left, y: place.top - size.top });
    taken.push(place);
    return true;
  };
  const homeless = details.filter((detail) => !put(detail));
  const onSheet = [1, 2, 3].some((blocks) => put(drawTable(table, blocks)));
  if (!onSheet) put(continuedNote());
  return { board: sheet, paper, scale, view, fits, lost, homeless, overflow: onSheet ? [] : table };
}

function continuedNote(): Board {
  const board = new Board();
  board.text({ x: 0, y: 0 }, 'Further sizes on the next sheet', { weight: 'bold' });
  return board;
}
