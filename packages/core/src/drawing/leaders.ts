/** Notes on oblique leaders, each set where it is crossed by nothing and its line is short. */
import type { Mm, Radian } from '../units/quantities.ts';
import type { Board } from './board.ts';
import { PriceQueue } from './price-queue.ts';
import type { At } from './scene.ts';
import { arrowhead, arrowLength, bearing } from './shapes.ts';
import {
  cheapest,
  drawShelf,
  type Lines,
  mayStand,
  measured,
  rowHeights,
  type Shelf,
  troubleOf,
  type Zone,
} from './shelf.ts';

/** A note that is looking for a place. */
export interface Note {
  readonly of: string;
  /** One line above the shelf, the others below it. */
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

const usual: Radian = Math.PI / 3;
const slopes = [60, 75, 45, 90, 35].map((degrees) => {
  const angle: Radian = (degrees * Math.PI) / 180;
  const upright = angle > 1.5 ? 5 : 0;
  return { tan: Math.tan(angle), sin: Math.sin(angle), slant: 4 * Math.abs(angle - usual) + upright };
});
/** How much better a place in a later zone must be. */
const laterZone = 10;
/** Of many points that would do, trying the first few is enough. */
const mostTouches = 8;

/** Puts a note with its leader; false when there is no place for it in these zones. */
export function placeNote(board: Board, note: Note, zones: readonly Zone[]): boolean {
  return placeBest(
    board,
    zones.map((zone) => ({ note, zone })),
  );
}

/** The same, where a note touches other points in each zone. */
export function placeBest(board: Board, ways: readonly { readonly note: Note; readonly zone: Zone }[]): boolean {
  const nearest = ways.flatMap(({ note, zone }, i) => directions(note, zone, laterZone * i).flatMap((d) => at(d, 0)));
  /** Directions in which a leader has met a text or the bounds: a longer one meets them too. */
  const closed = new Set<Direction>();
  const best = cheapest(
    new PriceQueue(nearest, ({ direction, row }) => (closed.has(direction) ? undefined : at(direction, row + 1)[0])),
    ({ direction: { touch }, shelf }, enough) => troubleOf(board, { a: touch, b: shelf.elbow }, shelf, enough),
    ({ direction, shelf }) => {
      const { touch, zone } = direction;
      const leader = { a: touch, b: shelf.elbow };
      if (isWithin(shelf.elbow.x, zone) && board.isClearOfText(leader))
        return mayStand(board, shelf, leader, zone.inside);
      closed.add(direction);
      return false;
    },
  );
  if (!best) return false;
  const { direction, shelf } = best.candidate;
  const { note, touch } = direction;
  board.line(touch, shelf.elbow, 'dimension', note.of);
  if (!note.bare) board.items.push(arrowhead(touch, bearing(shelf.elbow, touch), note.of));
  drawShelf(board, shelf, note.of);
  return true;
}

const isWithin = (x: Mm, { inside }: Zone): boolean => x >= inside.left && x <= inside.right;

/** A leader from one point, going one way: the farther out its shelf is, the dearer. */
interface Direction {
  readonly note: Note;
  readonly zone: Zone;
  readonly touch: TouchAt;
  readonly lines: Lines;
  /** Heights of the shelf, from the part outwards. */
  readonly rows: readonly Mm[];
  readonly tan: number;
  readonly sin: number;
  readonly side: 1 | -1;
  /** What is paid besides the length. */
  readonly surcharge: number;
}

interface Candidate {
  readonly direction: Direction;
  readonly row: number;
  readonly shelf: Shelf;
  readonly price: number;
}

function directions(note: Note, zone: Zone, extra: number): Direction[] {
  const lines = measured(note.lines);
  return note.touch.slice(0, mostTouches).flatMap((touch) => {
    const rows = rowHeights(zone).filter((y) => (y - touch.y) * zone.outward >= arrowLength);
    return slopes.flatMap(({ tan, sin, slant }) =>
      ([1, -1] as const).map((side): Direction => {
        const along = alongEdge(touch, touch.x + side / tan, touch.y + zone.outward);
        return { note, zone, touch, lines, rows, tan, sin, side, surcharge: slant + along + extra };
      }),
    );
  });
}

/** The place on one of its rows; none beyond the last. */
function at(direction: Direction, row: number): [Candidate] | [] {
  const { zone, touch, lines, rows, tan, sin, side, surcharge } = direction;
  const y = rows[row];
  if (y === undefined) return [];
  const rise = (y - touch.y) * zone.outward;
  const elbow = { x: touch.x + (side * rise) / tan, y };
  return [{ direction, row, shelf: { lines, elbow, side }, price: rise / sin + surcharge }];
}

/** What it costs to run nearly along the edge that is touched. */
function alongEdge(touch: TouchAt, x: Mm, y: Mm): number {
  if (touch.run === undefined) return 0;
  return Math.abs(Math.sin(bearing(touch, { x, y }) - touch.run)) < 0.4 ? 40 : 0;
}
