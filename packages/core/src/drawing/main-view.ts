/** The part seen along its axis: from outside, and cut open above the axis where there is an inside. */

import { closedLoop } from '../part/outline-queries.ts';
import type { Outline, Point, Segment } from '../part/outline-types.ts';
import type { PartResult } from '../part/part-result.ts';
import { isVertical } from '../part/segment.ts';
import type { Mm } from '../units/quantities.ts';
import type { Board } from './board.ts';
import { breakEdge, breakLine } from './break-line.ts';
import { isOpen, type Opening, openings } from './cut-open.ts';
import { hatchParts } from './hatch.ts';
import type { At } from './scene.ts';
import { chords, type Half, headingAt, place, radiusAt, runParts, runsOf, type View } from './view.ts';

/** How far the centre line stands out at either end on paper. */
const overrun: Mm = 4;
export const hatchSpacing: Mm = 2.2;

export function drawMainView(board: Board, part: PartResult, view: View): void {
  const { outline } = part;
  const opened = openings(part);
  for (const opening of opened) drawOpening(board, outline, opening, view);
  drawSeenEdges(board, part, view, opened);
  drawChain(board, outline.outside, view, 'upper', opened);
  drawChain(board, outline.outside, view, 'lower', []);
  drawChain(board, outline.insideLeft, view, 'upper');
  drawChain(board, outline.insideRight, view, 'upper');
  drawCentreLine(board, outline, view);
}

function drawOpening(board: Board, outline: Outline, { from, to, breaks }: Opening, view: View): void {
  const end = (z: Mm) => (breaks.includes(z) ? (r: Mm) => breakEdge(z, r, view.scale) : () => z);
  board.path(hatchParts(closedLoop(outline), view, hatchSpacing, { from: end(from), to: end(to) }), 'hatch');
  for (const z of breaks) board.path(breakLine(z, radiusAt(outline.outside, z) ?? 0, view), 'thin');
}

/** Faces are drawn only where the part is cut open there; elsewhere they are among the edges that are seen. */
function drawChain(board: Board, chain: readonly Segment[], view: View, half: Half, opened?: readonly Opening[]): void {
  for (const run of runsOf(chain.filter((s) => !opened || !isVertical(s) || isOpen(opened, s.from.z)))) {
    board.path(runParts(run, view, half), run[0]?.assumed ? 'assumed' : 'outline', baseFeature(run[0]?.feature ?? ''));
  }
  board.edges.push(...chords(chain, view, half));
}

/** Edges that run round the part, and faces seen edge-on, as straight lines across it. */
function drawSeenEdges(board: Board, part: PartResult, view: View, opened: readonly Opening[]): void {
  const { outline } = part;
  const curved = curves(part);
  for (const edge of seenEdges(outline.outside, curved)) {
    const low = place(view, edge, 'lower');
    const high = isOpen(opened, edge.z) ? place(view, { z: edge.z, r: 0 }) : place(view, edge, 'upper');
    drawEdge(board, high, low, edge);
  }
  for (const chain of [outline.insideLeft, outline.insideRight]) {
    for (const edge of seenEdges(chain, curved))
      drawEdge(board, place(view, edge), place(view, { z: edge.z, r: 0 }), edge);
  }
}

function drawEdge(board: Board, a: At, b: At, edge: SeenEdge): void {
  board.path(
    [
      { to: 'start', ...a },
      { to: 'line', ...b },
    ],
    edge.assumed ? 'assumed' : 'outline',
    edge.of,
  );
  board.edges.push({ a, b });
}

export interface SeenEdge extends Point {
  readonly assumed: boolean;
  readonly of: string;
}

/** Ids of the free curves, whose own joints are no edges. */
export function curves(part: PartResult): ReadonlySet<string> {
  return new Set(part.outside.filter((p) => p.feature.kind === 'curve').map((p) => p.feature.id));
}

/** Corners and faces of a chain, one for each place along the axis: the outermost there. */
export function seenEdges(chain: readonly Segment[], curved: ReadonlySet<string>): SeenEdge[] {
  const outermost = new Map<number, SeenEdge>();
  const see = (point: Point, assumed: boolean, of: string) => {
    const key = Math.round(point.z * 1e6);
    const known = outermost.get(key);
    if (point.r > 1e-9 && (!known || point.r > known.r + 1e-9)) outermost.set(key, { ...point, assumed, of });
  };
  chain.forEach((after, i) => {
    const of = baseFeature(after.feature);
    if (isVertical(after)) see(after.from.r > after.to.r ? after.from : after.to, after.assumed === true, of);
    const before = chain[i - 1];
    if (!before || turnBetween(before, after) < 0.09) return;
    if (curved.has(after.feature) && before.feature === after.feature) return;
    see(after.from, after.assumed === true && before.assumed === true, of);
  });
  return [...outermost.values()];
}

function turnBetween(before: Segment, after: Segment): number {
  const turn = Math.abs(headingAt(after, 0) - headingAt(before, 1)) % (2 * Math.PI);
  return Math.min(turn, 2 * Math.PI - turn);
}

function drawCentreLine(board: Board, outline: Outline, view: View): void {
  const a = { x: view.x - overrun, y: view.y };
  const b = { x: view.x + outline.length * view.scale + overrun, y: view.y };
  board.path(
    [
      { to: 'start', ...a },
      { to: 'line', ...b },
    ],
    'centre',
  );
  board.edges.push({ a, b });
}

/** `head.startEdge` belongs to `head`. */
export function baseFeature(feature: string): string {
  return feature.split('.')[0] ?? feature;
}
