/** What holds the work in the sketch of a setup: jaws, a mandrel, a driving plate with its centre and dog, the tailstock's centre. */
import type { Mm } from '../units/quantities.ts';
import type { Board } from './board.ts';
import { boxAt } from './box.ts';
import type { At, PathPart } from './scene.ts';
import { lineThrough, rectangle } from './shapes.ts';

/** What holds the work instead of jaws on its outside; places along the part from its left face. */
export type Holder =
  | {
      readonly by: 'mandrel';
      readonly diameter: Mm;
      /** From the jaw faces to its end. */
      readonly length: Mm;
      /** The jaw faces. */
      readonly freeFrom: Mm;
    }
  | {
      readonly by: 'dog';
      /** The point of the driving centre. */
      readonly freeFrom: Mm;
    };

/** Left edge of chuck and driving plate on the sheet. */
export const edge: Mm = 6;
export const jawHeight: Mm = 15;
const body: Mm = 14;
/** Jaws that hold a mandrel, which is drawn from their faces on. */
const jawsOnMandrel: Mm = 13;
const plate = { thick: 7, high: 27 } as const;
const centre = { radius: 5, out: 15, into: 2 } as const;
const tailRadius: Mm = 6;
const dog = { thick: 5, tail: 3 } as const;

/** Where the work begins on the sheet. */
export function leftOfWork(holder: Holder | undefined): Mm {
  if (!holder) return edge + body;
  return holder.by === 'mandrel' ? edge + body + jawsOnMandrel : edge + plate.thick + centre.out;
}

/** Body and two jaws as plain blocks; jaws are lined, for they are what holds. */
export function drawChuck(
  board: Board,
  { from, to, axis, radius }: { readonly from: Mm; readonly to: Mm; readonly axis: Mm; readonly radius: Mm },
): void {
  const reach = radius + jawHeight + 3;
  board.items.push(rectangle(edge, axis - reach, body, 2 * reach, 'holding'));
  board.taken.push(boxAt(edge, axis - reach, body, 2 * reach));
  for (const top of [axis - radius - jawHeight, axis + radius])
    lined(board, from, top, Math.max(to - from, 1), jawHeight);
}

/** Held in the jaws, and through the bore to where it ends in the work. */
export function drawMandrel(
  board: Board,
  { free, axis, radius, length }: { readonly free: Mm; readonly axis: Mm; readonly radius: Mm; readonly length: Mm },
): void {
  drawChuck(board, { from: free - jawsOnMandrel, to: free, axis, radius });
  const left = free - jawsOnMandrel;
  board.path(lining(left, axis - radius, free - left + length, 2 * radius), 'hatch');
  board.items.push(rectangle(left, axis - radius, free - left + length, 2 * radius, 'holding'));
}

/** The driving plate with its centre, and the dog whose tail lies in the slot of the plate. */
export function drawDog(
  board: Board,
  { tip, from, to, radius }: { readonly tip: At; readonly from: Mm; readonly to: Mm; readonly radius: Mm },
): void {
  const { y } = tip;
  const face = edge + plate.thick;
  board.items.push(rectangle(edge, y - plate.high, plate.thick, 2 * plate.high, 'holding'));
  board.taken.push(boxAt(edge, y - plate.high, plate.thick, 2 * plate.high));
  drawPoint(board, { x: tip.x + centre.into, y }, face, -1);
  const width = Math.max(to - from, 3);
  for (const top of [y - radius - dog.thick, y + radius]) lined(board, from, top, width, dog.thick);
  // The screw that closes it, and the tail bent over into the plate.
  const middle = from + width / 2;
  board.items.push(rectangle(middle - 1.2, y - radius - dog.thick - 5, 2.4, 5, 'holding'));
  board.items.push(rectangle(middle - 2.2, y - radius - dog.thick - 7, 4.4, 2, 'holding'));
  board.taken.push(boxAt(middle - 2.2, y - radius - dog.thick - 7, 4.4, 7));
  const low = Math.min(y + plate.high - dog.tail - 1, Math.max(y + radius + dog.thick - dog.tail, y + 14));
  const [slot, foot] = [edge + 1.5, y + radius + dog.thick];
  const tail = [
    { x: from, y: Math.min(foot, low) },
    { x: slot, y: low },
    { x: slot, y: low + dog.tail },
    { x: from + 1, y: low + dog.tail },
    { x: from + width, y: foot },
  ];
  board.items.push(lineThrough(tail, 'holding'));
  board.taken.push(boxAt(slot, low, from - slot, dog.tail));
}

/** The tailstock's centre in the free end. */
export function drawCentre(board: Board, end: At): void {
  const tip = end.x - centre.into;
  drawPoint(board, { x: tip, y: end.y }, tip + tailRadius / Math.tan(Math.PI / 6) + 14, 1);
}

/** A centre of 60° with its point here, its shank back to a place; it points left for the tailstock, right for the spindle. */
function drawPoint(board: Board, tip: At, end: Mm, away: 1 | -1): void {
  const radius = away > 0 ? tailRadius : centre.radius;
  const back = tip.x + (away * radius) / Math.tan(Math.PI / 6);
  const { y } = tip;
  const points = [
    { x: tip.x, y },
    { x: back, y: y - radius },
    { x: end, y: y - radius },
    { x: end, y: y + radius },
    { x: back, y: y + radius },
    { x: tip.x, y },
  ];
  board.items.push(lineThrough(points, 'holding'));
  const shoulder = [
    { x: back, y: y - radius },
    { x: back, y: y + radius },
  ];
  board.items.push(lineThrough(shoulder, 'holding'));
  const left = Math.min(tip.x + away * centre.into, end);
  board.taken.push(boxAt(left, y - radius, Math.abs(end - (tip.x + away * centre.into)), 2 * radius));
}

function lined(board: Board, left: Mm, top: Mm, width: Mm, height: Mm): void {
  board.path(lining(left, top, width, height), 'hatch');
  board.items.push(rectangle(left, top, width, height, 'holding'));
  board.taken.push(boxAt(left, top, width, height));
}

function lining(left: Mm, top: Mm, width: Mm, height: Mm): PathPart[] {
  const parts: PathPart[] = [];
  for (let k = 1.5; k < width + height; k += 2.2) {
    const a = { x: left + Math.max(0, k - height), y: top + Math.min(k, height) };
    const b = { x: left + Math.min(k, width), y: top + Math.max(0, k - width) };
    parts.push({ to: 'start', ...a }, { to: 'line', ...b });
  }
  return parts;
}
