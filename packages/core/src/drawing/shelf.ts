/** A text on a short horizontal line, at the end of a leader: whether it may stand there, and what else that costs. */
import type { Mm } from '../units/quantities.ts';
import { type Board, lineBox, textHeight } from './board.ts';
import { around, type Box, grown, passesThrough, type Stretch, within } from './box.ts';
import type { PriceQueue } from './price-queue.ts';
import type { At } from './scene.ts';
import { textWidth } from './text-width.ts';

export interface Zone {
  /** Text starts at this height of the sheet, going up (−1) or down (1). */
  readonly first: Mm;
  readonly outward: 1 | -1;
  readonly rows: number;
  /** What is drawn must stay inside. */
  readonly inside: Box;
}

const pitch: Mm = 2.1;
const gap: Mm = 0.8;

/** A shelf that starts at the elbow and runs right (1) or left (−1). */
export interface Shelf {
  readonly lines: Lines;
  readonly elbow: At;
  readonly side: 1 | -1;
}

/** Lines on a shelf and how wide they are: measured once, for some thousand places are tried. */
export interface Lines {
  readonly lines: readonly string[];
  readonly widths: readonly Mm[];
}

export function measured(lines: readonly string[]): Lines {
  return { lines, widths: lines.map((line) => textWidth(line, textHeight.dimension)) };
}

export function rowHeights(zone: Zone): Mm[] {
  return Array.from({ length: Math.max(0, zone.rows) }, (_, row) => zone.first + zone.outward * pitch * row);
}

/** Whether a shelf may stand at the end of a leader; whether the leader itself may run there is for the caller to see. */
export function mayStand(board: Board, shelf: Shelf, leader: Stretch, inside: Box): boolean {
  const { elbow: at } = shelf;
  // Most places that are tried are out of bounds; that is seen without making anything.
  if (at.x < inside.left || at.x > inside.right || at.y < inside.top || at.y - gap > inside.bottom) return false;
  const boxes = lineBoxes(shelf);
  const whole = around(boxes);
  const { elbow } = shelf;
  if (!whole || !within(whole, inside) || !within({ ...whole, left: elbow.x, right: elbow.x }, inside)) return false;
  return (
    boxes.every((box) => board.isFree(box)) &&
    board.isClearOfText({ a: elbow, b: shelfEnd(shelf) }) &&
    !boxes.some((box) => passesThrough(leader, grown(box, 0.3)))
  );
}

/**
 * What it costs to cross other lines, to be lost in them, or to stand over the start of leaders yet to come; no longer counted
 * once it has come to `enough`.
 */
export function troubleOf(board: Board, leader: Stretch, shelf: Shelf, enough: number): number {
  // A little off the point itself, which lies on an edge that the leader is meant to touch.
  const line = { a: towards(leader.a, leader.b, 0.4), b: leader.b };
  const waiting = 9 * board.waitingUnder(lineBoxes(shelf));
  const edges = waiting + board.trouble('edges', line, { lost: 30, crossed: 15 }, enough - waiting);
  return edges + board.trouble('lines', line, { lost: 30, crossed: 12 }, enough - edges);
}

/**
 * The cheapest of many candidates. Their own price is known at once; what they add by trouble with others is only worked out
 * while it could still matter.
 */
export function cheapest<T extends { readonly price: number }>(
  queue: PriceQueue<T>,
  /** May stop counting at `enough`. */
  trouble: (candidate: T, enough: number) => number,
  isPossible: (candidate: T) => boolean,
): { readonly candidate: T; readonly cost: number } | undefined {
  let best: { readonly candidate: T; readonly cost: number } | undefined;
  for (let candidate = queue.next(); candidate; candidate = queue.next()) {
    if (best && candidate.price >= best.cost) break;
    if (!isPossible(candidate)) continue;
    const enough = (best?.cost ?? Number.POSITIVE_INFINITY) - candidate.price;
    const cost = candidate.price + trouble(candidate, enough);
    if (!best || cost < best.cost) best = { candidate, cost };
  }
  return best;
}

export function drawShelf(board: Board, shelf: Shelf, of: string): void {
  board.line(shelf.elbow, shelfEnd(shelf), 'dimension', of);
  shelf.lines.lines.forEach((line, i) => {
    board.text(lineAt(shelf, i), line, { anchor: shelf.side === 1 ? 'start' : 'end', of });
  });
}

function lineBoxes(shelf: Shelf): Box[] {
  return shelf.lines.widths.map((width, i) => {
    const at = lineAt(shelf, i);
    return lineBox(shelf.side === 1 ? at.x : at.x - width, at.y, width, textHeight.dimension);
  });
}

/** The base line of the first line is just above the shelf, the second hangs below it. */
function lineAt({ elbow, side }: Shelf, index: number): At {
  const y = index === 0 ? elbow.y - gap : elbow.y + index * (textHeight.dimension + gap);
  return { x: elbow.x + side * 0.8, y };
}

function shelfEnd({ lines, elbow, side }: Shelf): At {
  const widest = Math.max(0, ...lines.widths);
  return { x: elbow.x + side * (widest + 1.2), y: elbow.y };
}

function towards(from: At, to: At, by: Mm): At {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length === 0) return from;
  return { x: from.x + ((to.x - from.x) * by) / length, y: from.y + ((to.y - from.y) * by) / length };
}
