/** Notes on leaders and diameters across the view, each set where it is crossed by nothing and its line is shortest. */
import type { Mm, Radian } from '../units/quantities.ts';
import { type Board, textBox, textHeight } from './board.ts';
import { around, type Box, grown, passesThrough, type Stretch, within } from './box.ts';
import type { At } from './scene.ts';
import { arrowhead, arrowLength, bearing } from './shapes.ts';
import { textWidth } from './text-width.ts';

/** A note that is looking for a place. */
export interface Note {
  readonly of: string;
  /** At most two lines: one above the shelf, one below it. */
  readonly lines: readonly string[];
  /** Points of the part that the leader may touch. */
  readonly touch: readonly TouchAt[];
  /** A letter at a circle: no arrowhead. */
  readonly bare?: boolean | undefined;
}

export interface TouchAt extends At {
  /** Direction of the edge there on the sheet: a leader that ran along it would be lost in it. */
  readonly run?: Radian | undefined;
}

export interface Zone {
  /** Text starts this far from the axis, going up (−1) or down (1). */
  readonly first: Mm;
  readonly outward: 1 | -1;
  readonly rows: number;
  /** What is drawn must stay inside. */
  readonly inside: Box;
}

const pitch: Mm = 2.1;
const shelfGap: Mm = 0.8;
const angles = [60, 75, 45, 90, 35].map((a) => (a * Math.PI) / 180);

interface Placing {
  readonly touch: At;
  readonly elbow: At;
  readonly side: 1 | -1;
  readonly cost: number;
}

/** Puts a note with an oblique leader; false when there is no place for it in these zones. */
export function placeNote(board: Board, note: Note, zones: readonly Zone[]): boolean {
  return placeBest(
    board,
    zones.map((zone) => ({ note, zone })),
  );
}

/** The same, where a note touches other points in each zone. Later zones must be that much better. */
export function placeBest(board: Board, ways: readonly { readonly note: Note; readonly zone: Zone }[]): boolean {
  const found = ways.flatMap(({ note, zone }, i) =>
    bestInZone(board, note, zone, 10 * i).map((best) => ({ note, best })),
  );
  const cheapest = found.toSorted((a, b) => a.best.cost - b.best.cost)[0];
  if (!cheapest) return false;
  const { note, best } = cheapest;
  const { touch, elbow, side } = best;
  const tail = note.lines.length === 0 ? elbow : shelfEnd(note.lines, elbow, side);
  board.line(touch, elbow, 'dimension', note.of);
  board.line(elbow, tail, 'dimension', note.of);
  if (!note.bare) board.items.push(arrowhead(touch, bearing(elbow, touch), note.of));
  drawLines(board, note, elbow, side);
  return true;
}

function bestInZone(board: Board, note: Note, zone: Zone, extra: number): Placing[] {
  let best: Placing | undefined;
  for (let row = 0; row < zone.rows; row++) {
    const y = zone.first + zone.outward * pitch * row;
    for (const touch of note.touch) {
      const rise = Math.abs(y - touch.y);
      if ((y - touch.y) * zone.outward < arrowLength || (best && rise + extra >= best.cost)) continue;
      for (const angle of angles) {
        for (const side of [1, -1] as const) {
          const elbow = { x: touch.x + (side * rise) / Math.tan(angle), y };
          const inWay = board.waitingUnder(lineBoxes(note.lines, elbow, side));
          const cost = leaderCost(board, { a: touch, b: elbow }, angle) + alongEdge(touch, elbow) + inWay + extra;
          if ((best && cost >= best.cost) || !mayStand(board, note.lines, touch, elbow, side, zone.inside)) continue;
          best = { touch, elbow, side, cost };
        }
      }
    }
  }
  return best ? [best] : [];
}

function leaderCost(board: Board, leader: Stretch, angle: number): number {
  const length = Math.hypot(leader.b.x - leader.a.x, leader.b.y - leader.a.y);
  const steep = Math.abs(angle - Math.PI / 3) * 4;
  // A little off the point itself, which lies on an edge that the leader is meant to touch.
  const start = towards(leader.a, leader.b, 0.4);
  return (
    length +
    steep +
    30 * board.coverings({ a: start, b: leader.b }) +
    15 * board.edgeCrossings({ a: start, b: leader.b }) +
    12 * board.crossings({ a: start, b: leader.b })
  );
}

/** What it costs to run nearly along the edge that is touched. */
function alongEdge(touch: TouchAt, elbow: At): number {
  if (touch.run === undefined) return 0;
  const apart = Math.abs(Math.sin(bearing(touch, elbow) - touch.run));
  return apart < 0.4 ? 40 : 0;
}

function towards(from: At, to: At, by: Mm): At {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return from;
  return { x: from.x + ((to.x - from.x) * by) / length, y: from.y + ((to.y - from.y) * by) / length };
}

function mayStand(board: Board, lines: readonly string[], touch: At, elbow: At, side: 1 | -1, inside: Box): boolean {
  const boxes = lineBoxes(lines, elbow, side);
  const whole = around(boxes);
  if (!whole || !within(whole, inside) || !within({ ...whole, left: elbow.x, right: elbow.x }, inside)) return false;
  const leader = { a: touch, b: elbow };
  const shelf = { a: elbow, b: shelfEnd(lines, elbow, side) };
  return (
    boxes.every((box) => board.isFree(box)) &&
    board.isClearOfText(leader) &&
    board.isClearOfText(shelf) &&
    !boxes.some((box) => passesThrough(leader, grown(box, 0.3)))
  );
}

function lineBoxes(lines: readonly string[], elbow: At, side: 1 | -1): Box[] {
  return lines.map((line, i) => textBox(lineAt(elbow, side, i), line, { anchor: side === 1 ? 'start' : 'end' }));
}

/** The base line of a note's first line is just above the shelf, the second hangs below it. */
function lineAt(elbow: At, side: 1 | -1, index: number): At {
  const y = index === 0 ? elbow.y - shelfGap : elbow.y + textHeight.dimension + shelfGap;
  return { x: elbow.x + side * 0.8, y };
}

function shelfEnd(lines: readonly string[], elbow: At, side: 1 | -1): At {
  const widest = Math.max(...lines.map((line) => textWidth(line, textHeight.dimension)));
  return { x: elbow.x + side * (widest + 1.2), y: elbow.y };
}

function drawLines(board: Board, note: Note, elbow: At, side: 1 | -1): void {
  note.lines.forEach((line, i) => {
    board.text(lineAt(elbow, side, i), line, { anchor: side === 1 ? 'start' : 'end', of: note.of });
  });
}

/** A diameter shown by a line across the view, drawn on to a shelf above or below it. */
export interface Across {
  readonly of: string;
  readonly text: string;
  /** Where along the sheet the line may run, best first. */
  readonly xs: readonly Mm[];
  readonly axis: Mm;
  readonly radius: Mm;
}

export function placeAcross(board: Board, mark: Across, zones: readonly Zone[]): boolean {
  let best: { x: Mm; y: Mm; side: 1 | -1; zone: Zone; cost: number } | undefined;
  zones.forEach((zone, z) => {
    for (let row = 0; row < zone.rows; row++) {
      const y = zone.first + zone.outward * pitch * row;
      if ((y - mark.axis) * zone.outward < mark.radius + 3) continue;
      for (const [i, x] of mark.xs.entries()) {
        for (const side of [1, -1] as const) {
          const leader = { a: { x, y: mark.axis + zone.outward * (mark.radius + 0.1) }, b: { x, y } };
          const inWay = board.waitingUnder(lineBoxes([mark.text], { x, y }, side));
          const cost =
            Math.abs(y - mark.axis) +
            2 * i +
            25 * z +
            12 * board.crossings(leader) +
            30 * board.coverings(leader) +
            inWay;
          if (best && cost >= best.cost) continue;
          const full = { a: acrossEnd(mark, x, zone.outward), b: { x, y } };
          if (mayStand(board, [mark.text], full.a, full.b, side, zone.inside)) best = { x, y, side, zone, cost };
        }
      }
    }
  });
  if (!best) return false;
  const { x, y, side, zone } = best;
  const elbow = { x, y };
  board.line(acrossEnd(mark, x, zone.outward), elbow, 'dimension', mark.of);
  board.line(elbow, shelfEnd([mark.text], elbow, side), 'dimension', mark.of);
  drawDiameterArrows(board, mark, x);
  drawLines(board, { of: mark.of, lines: [mark.text], touch: [] }, elbow, side);
  return true;
}

function hasRoom(radius: Mm): boolean {
  return 2 * radius >= 2 * arrowLength + 1.5;
}

/** The end of the line away from the shelf: at the far outline, or past it where the arrows stand outside. */
function acrossEnd(mark: Across, x: Mm, outward: 1 | -1): At {
  const past = hasRoom(mark.radius) ? 0 : arrowLength + 2;
  return { x, y: mark.axis - outward * (mark.radius + past) };
}

function drawDiameterArrows(board: Board, mark: Across, x: Mm): void {
  const inward = hasRoom(mark.radius) ? 1 : -1;
  board.items.push(arrowhead({ x, y: mark.axis - mark.radius }, (-inward * Math.PI) / 2, mark.of));
  board.items.push(arrowhead({ x, y: mark.axis + mark.radius }, (inward * Math.PI) / 2, mark.of));
}
