/** A groove too small to dimension where it is: a circle with a letter there, and the same drawn larger elsewhere. */
import { closedLoop } from '../part/outline-queries.ts';
import type { Segment } from '../part/outline-types.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { Groove } from '../part/schema.ts';
import { isVertical } from '../part/segment.ts';
import type { Mm } from '../units/quantities.ts';
import { Board, textHeight } from './board.ts';
import { boxAt } from './box.ts';
import { insideCircle } from './clip-circle.ts';
import { isOpen, openings } from './cut-open.ts';
import { addRing } from './end-view.ts';
import type { GrooveGroup } from './groove-marks.ts';
import { type Bound, hatchParts } from './hatch.ts';
import { placeNote } from './leaders.ts';
import { placeLengths } from './length-rows.ts';
import { curves, hatchSpacing, seenEdges } from './main-view.ts';
import type { TableRow } from './marks.ts';
import { type NumberStyle, numberText } from './numbers.ts';
import { scaleText } from './scales.ts';
import { nameOf } from './section-marks.ts';
import { circle, lineThrough } from './shapes.ts';
import type { Zone } from './shelf.ts';
import { chords, place, runParts, runsOf, type View } from './view.ts';

const enlargements = [2, 5, 10, 20, 50];
/** A groove is drawn at least this wide in its detail. */
const wanted: Mm = 8;
const largestRadius: Mm = 20;

/** The circle drawn round a groove. */
export function detailBound(groove: Placed<Groove>): Bound {
  const width = groove.to - groove.from;
  const depth = (groove.largest - groove.smallest) / 2;
  const z = (groove.from + groove.to) / 2;
  if (isDeep(groove)) {
    const floor = groove.side === 'outside' ? groove.smallest / 2 : groove.largest / 2;
    return { z, r: floor + (groove.side === 'outside' ? 0.7 : -0.7) * width, radius: 1.4 * width };
  }
  const r = (groove.largest + groove.smallest) / 4;
  return {
    z,
    r,
    radius: Math.max(0.85 * width, 0.95 * depth, Math.hypot(width, depth) * 0.62),
  };
}

/** So much deeper than wide that only its floor is shown. */
function isDeep(groove: Placed<Groove>): boolean {
  return (groove.largest - groove.smallest) / 2 > 2.2 * (groove.to - groove.from);
}

/** The circle and its letter on the main view. */
export function markDetail(board: Board, group: GrooveGroup, letter: string, view: View, zones: readonly Zone[]): void {
  group.grooves.forEach((groove, i) => {
    const bound = detailBound(groove);
    const centre = place(view, bound);
    const radius = Math.max(bound.radius * view.scale, 2);
    board.items.push(circle(centre, radius, 'thin', groove.feature.id));
    addRing(board, centre, radius);
    if (i > 0) return;
    const touch = [60, 120, 75, 105, 45, 135].map((a) => ({
      x: centre.x + radius * Math.cos((a * Math.PI) / 180),
      y: centre.y - radius * Math.sin((a * Math.PI) / 180),
    }));
    placeNote(board, { of: groove.feature.id, lines: [letter], touch, bare: true }, zones);
  });
}

export interface Detail {
  readonly board: Board;
  readonly left: readonly TableRow[];
}

/** The enlarged view about its own origin. */
export function drawDetail(
  part: PartResult,
  group: GrooveGroup,
  letter: string,
  mainScale: number,
  style: NumberStyle,
): Detail {
  const board = new Board();
  const groove = group.grooves[0];
  if (!groove) return { board, left: [] };
  const bound = detailBound(groove);
  const scale = enlargement(groove, bound, mainScale);
  const view: View = { x: -bound.z * scale, y: bound.r * scale, scale };
  const radius = bound.radius * scale;
  drawOutline(board, part, groove, bound, view);
  board.items.push(circle({ x: 0, y: 0 }, radius, 'thin', groove.feature.id));
  addRing(board, { x: 0, y: 0 }, radius);
  const count = group.grooves.length > 1 ? `, ${group.grooves.length} grooves` : '';
  board.text({ x: 0, y: radius + 5.5 }, `${letter} (${scaleText(scale)})${count}`, {
    height: textHeight.title,
    anchor: 'middle',
    weight: 'bold',
    of: groove.feature.id,
  });
  return { board, left: dimensionDetail(board, group, groove, view, radius, letter, style) };
}

function enlargement(groove: Placed<Groove>, bound: Bound, mainScale: number): number {
  const fitting = enlargements.filter((s) => s > mainScale && bound.radius * s <= largestRadius);
  const enough = fitting.find((s) => (groove.to - groove.from) * s >= wanted);
  return enough ?? fitting.at(-1) ?? enlargements.find((s) => s > mainScale) ?? mainScale;
}

function drawOutline(board: Board, part: PartResult, groove: Placed<Groove>, bound: Bound, view: View): void {
  const { outside, insideLeft, insideRight } = part.outline;
  const isCut = isOpen(openings(part), bound.z);
  if (isCut) board.path(hatchParts(closedLoop(part.outline), view, hatchSpacing, bound), 'hatch');
  for (const chain of [outside, insideLeft, insideRight]) {
    const inside = insideCircle(chain, bound);
    for (const run of runsOf(inside)) {
      for (const piece of run)
        board.path(runParts([piece], view), piece.assumed ? 'assumed' : 'outline', groove.feature.id);
    }
    board.edges.push(...chords(inside, view));
    if (!isCut) drawRoundEdges(board, inside, curves(part), bound, view);
  }
}

/** Outside view: each corner and face is an edge running round the part, seen as a line towards the axis. */
function drawRoundEdges(
  board: Board,
  inside: readonly Segment[],
  curved: ReadonlySet<string>,
  bound: Bound,
  view: View,
): void {
  const joined = inside.filter((s, i) => i === 0 || isJoined(inside[i - 1], s) || isVertical(s));
  for (const { z, r } of seenEdges(joined, curved)) {
    const low = bound.r - Math.sqrt(Math.max(0, bound.radius ** 2 - (z - bound.z) ** 2));
    const [a, b] = [place(view, { z, r }), place(view, { z, r: low })];
    board.items.push(lineThrough([a, b], 'outline'));
    board.edges.push({ a, b });
  }
}

function isJoined(before: Segment | undefined, after: Segment): boolean {
  return before !== undefined && Math.hypot(before.to.z - after.from.z, before.to.r - after.from.r) < 1e-6;
}

function dimensionDetail(
  board: Board,
  group: GrooveGroup,
  groove: Placed<Groove>,
  view: View,
  radius: Mm,
  letter: string,
  style: NumberStyle,
): TableRow[] {
  const { id } = groove.feature;
  const left: TableRow[] = [];
  const name = nameOf(groove.feature);
  const outside = groove.side === 'outside';
  const floor = (outside ? groove.smallest : groove.largest) / 2;
  const brink = (outside ? groove.largest : groove.smallest) / 2;
  if (group.width !== undefined) {
    const a = place(view, { z: groove.from, r: brink });
    const b = place(view, { z: groove.to, r: brink });
    const row = {
      of: `${id}.width`,
      text: group.width,
      a: { ...a, y: -radius + 1 },
      b: { ...b, y: -radius + 1 },
      rank: 0,
    };
    const rows = { first: -radius - 4, outward: -1, left: -60, right: 60, rows: 3 } as const;
    for (const lost of placeLengths(board, [row], rows)) {
      left.push({ letter, title: `${name}, width`, text: lost.text, of: lost.of });
    }
  }
  const span = boxAt(-70, -60, 140, 120);
  const zones: Zone[] = [
    { first: -2, outward: -1, rows: 18, inside: span },
    { first: 2, outward: 1, rows: 12, inside: span },
  ];
  const at = (z: Mm, r: Mm) => place(view, { z, r });
  const middle = (f: number) => groove.from + f * (groove.to - groove.from);
  const corner = groove.feature.floorRadius ?? 0;
  const away = outside ? 1 : -1;
  const notes = [
    { text: group.floor, field: 'floorDiameter', touch: [0.5, 0.3, 0.7].map((f) => at(middle(f), floor)) },
    {
      text: group.floorRadius,
      field: 'floorRadius',
      touch: [
        at(groove.to - corner * 0.29, floor + away * corner * 0.29),
        at(groove.from + corner * 0.29, floor + away * corner * 0.29),
      ],
    },
    {
      text: group.edgeRadius,
      field: 'edgeRadius',
      touch: isDeep(groove) ? [] : [at(groove.to, brink), at(groove.from, brink)],
    },
    {
      text: group.finish === undefined ? undefined : `Ra ${numberText(group.finish, 3, style)}`,
      field: 'finish',
      touch: [0.6, 0.4].map((f) => at(middle(f), floor)),
    },
  ];
  for (const { text, field, touch } of notes) {
    if (text === undefined) continue;
    const of = `${id}.${field}`;
    if (!placeDetailNote(board, of, text, touch, radius, zones)) {
      left.push({ letter, title: `${name}, ${field.replace(/([A-Z])/g, ' $1').toLowerCase()}`, text, of });
    }
  }
  return left;
}

function placeDetailNote(
  board: Board,
  of: string,
  text: string,
  touch: readonly { x: Mm; y: Mm }[],
  radius: Mm,
  zones: readonly Zone[],
): boolean {
  board.taken.push(boxAt(-radius, -radius, 2 * radius, 2 * radius));
  const placed = placeNote(board, { of, lines: [text], touch }, zones);
  board.taken.pop();
  return placed;
}
