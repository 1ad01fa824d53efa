/** Diameters shown by a line across the view, drawn on to a shelf above or below it. */
import type { Mm } from '../units/quantities.ts';
import type { Board } from './board.ts';
import type { Stretch } from './box.ts';
import { PriceQueue } from './price-queue.ts';
import type { At } from './scene.ts';
import { arrowhead, arrowLength } from './shapes.ts';
import { cheapest, drawShelf, mayStand, measured, rowHeights, type Shelf, troubleOf, type Zone } from './shelf.ts';

export interface Across {
  readonly of: string;
  readonly text: string;
  /** Where along the sheet the line may run, best first. */
  readonly xs: readonly Mm[];
  readonly axis: Mm;
  readonly radius: Mm;
}

const laterZone = 25;

export function placeAcross(board: Board, mark: Across, zones: readonly Zone[]): boolean {
  const best = cheapest(
    new PriceQueue(zones.flatMap((zone, i) => candidates(mark, zone, laterZone * i))),
    ({ shelf, zone }, enough) => troubleOf(board, outside(mark, shelf.elbow, zone), shelf, enough),
    ({ shelf, zone }) => {
      const line = whole(mark, shelf.elbow, zone);
      return board.isClearOfText(line) && mayStand(board, shelf, line, zone.inside);
    },
  );
  if (!best) return false;
  const { shelf, zone } = best.candidate;
  const line = whole(mark, shelf.elbow, zone);
  board.line(line.a, line.b, 'dimension', mark.of);
  drawShelf(board, shelf, mark.of);
  drawArrows(board, mark, shelf.elbow.x);
  return true;
}

interface Candidate {
  readonly shelf: Shelf;
  readonly zone: Zone;
  readonly price: number;
}

function candidates(mark: Across, zone: Zone, extra: number): Candidate[] {
  const lines = measured([mark.text]);
  return rowHeights(zone).flatMap((y) => {
    const away = (y - mark.axis) * zone.outward;
    if (away < mark.radius + 3) return [];
    return mark.xs.flatMap((x, i) =>
      ([1, -1] as const).map((side) => ({
        shelf: { lines, elbow: { x, y }, side },
        zone,
        price: away + 2 * i + extra,
      })),
    );
  });
}

function hasRoom(radius: Mm): boolean {
  return 2 * radius >= 2 * arrowLength + 1.5;
}

/** From the outline to the shelf. */
function outside(mark: Across, elbow: At, zone: Zone): Stretch {
  return { a: { x: elbow.x, y: mark.axis + zone.outward * (mark.radius - 0.3) }, b: elbow };
}

/** From the far outline, or past it where the arrows stand outside, to the shelf. */
function whole(mark: Across, elbow: At, zone: Zone): Stretch {
  const past = hasRoom(mark.radius) ? 0 : arrowLength + 2;
  return { a: { x: elbow.x, y: mark.axis - zone.outward * (mark.radius + past) }, b: elbow };
}

function drawArrows(board: Board, mark: Across, x: Mm): void {
  const inward = hasRoom(mark.radius) ? 1 : -1;
  board.items.push(arrowhead({ x, y: mark.axis - mark.radius }, (-inward * Math.PI) / 2, mark.of));
  board.items.push(arrowhead({ x, y: mark.axis + mark.radius }, (inward * Math.PI) / 2, mark.of));
}
