/** Notes on oblique leaders, each set where it is crossed by nothing and its line is short. */
import type { Mm, Radian } from '../units/quantities.ts';
import type { Board } from './board.ts';
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
  const all = ways.flatMap(({ note, zone }, i) => candidates(note, zone, laterZone * i));
  const best = cheapest(
    all,
    (candidate) => {
      const shelf = shelfOf(candidate);
      return troubleOf(board, { a: candidate.touch, b: shelf.elbow }, shelf);
    },
    (candidate) => {
      const shelf = shelfOf(candidate);
      return mayStand(board, shelf, { a: candidate.touch, b: shelf.elbow }, candidate.zone.inside);
    },
  );
  if (!best) return false;
  const { note, touch } = best.candidate;
  const shelf = shelfOf(best.candidate);
  board.line(touch, shelf.elbow, 'dimension', note.of);
  if (!note.bare) board.items.push(arrowhead(touch, bearing(shelf.elbow, touch), note.of));
  drawShelf(board, shelf, note.of);
  return true;
}

interface Candidate {
  readonly note: Note;
  readonly zone: Zone;
  readonly touch: TouchAt;
  readonly lines: Lines;
  /** Of the elbow. */
  readonly x: Mm;
  readonly y: Mm;
  readonly side: 1 | -1;
  readonly price: number;
}

/** Made only for those that are looked at: most never are. */
function shelfOf({ lines, x, y, side }: Candidate): Shelf {
  return { lines, elbow: { x, y }, side };
}

function candidates(note: Note, zone: Zone, extra: number): Candidate[] {
  const list: Candidate[] = [];
  const lines = measured(note.lines);
  const touches = note.touch.slice(0, mostTouches);
  for (const y of rowHeights(zone)) {
    for (const touch of touches) {
      const rise = (y - touch.y) * zone.outward;
      if (rise < arrowLength) continue;
      for (const { tan, sin, slant } of slopes) {
        for (const side of [1, -1] as const) {
          const x = touch.x + (side * rise) / tan;
          const price = rise / sin + slant + alongEdge(touch, x, y) + extra;
          list.push({ note, zone, touch, lines, x, y, side, price });
        }
      }
    }
  }
  return list;
}

/** What it costs to run nearly along the edge that is touched. */
function alongEdge(touch: TouchAt, x: Mm, y: Mm): number {
  if (touch.run === undefined) return 0;
  return Math.abs(Math.sin(bearing(touch, { x, y }) - touch.run)) < 0.4 ? 40 : 0;
}
