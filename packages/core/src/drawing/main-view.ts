/** The part seen along its axis: full outside view, or half in section where there is an inside. */

import { closedLoop } from '../part/outline-queries.ts';
import type { Outline, Point, Segment } from '../part/outline-types.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import type { Board } from './board.ts';
import { hatchParts } from './hatch.ts';
import { chords, type Half, headingAt, isHollow, place, runParts, runsOf, type View } from './view.ts';

/** How far the centre line stands out at either end on paper. */
const overrun: Mm = 4;
export const hatchSpacing: Mm = 2.2;

export function drawMainView(board: Board, part: PartResult, view: View): void {
  const { outline } = part;
  const hollow = isHollow(outline);
  if (hollow) {
    const loop = closedLoop(outline);
    board.path(hatchParts(loop, view, hatchSpacing), 'hatch');
  }
  drawSeenEdges(board, part, view, hollow);
  drawChain(board, outline.outside, view, 'upper');
  drawChain(board, outline.outside, view, 'lower');
  drawChain(board, outline.insideLeft, view, 'upper');
  drawChain(board, outline.insideRight, view, 'upper');
  drawCentreLine(board, outline, view);
}

function drawChain(board: Board, chain: readonly Segment[], view: View, half: Half): void {
  for (const run of runsOf(chain)) {
    board.path(runParts(run, view, half), run[0]?.assumed ? 'assumed' : 'outline', baseFeature(run[0]?.feature ?? ''));
  }
  board.edges.push(...chords(chain, view, half));
}

/** Edges that run round the part, seen as straight lines across it. */
function drawSeenEdges(board: Board, part: PartResult, view: View, hollow: boolean): void {
  const { outline } = part;
  const curved = new Set(part.outside.filter((p) => p.feature.kind === 'curve').map((p) => p.feature.id));
  for (const edge of kinks(outline.outside, curved)) {
    const low = place(view, edge, 'lower');
    const high = hollow ? place(view, { z: edge.z, r: 0 }) : place(view, edge, 'upper');
    board.path(
      [
        { to: 'start', ...high },
        { to: 'line', ...low },
      ],
      'outline',
    );
    board.edges.push({ a: high, b: low });
  }
  for (const chain of [outline.insideLeft, outline.insideRight]) {
    for (const edge of kinks(chain, curved)) {
      const [a, b] = [place(view, edge), place(view, { z: edge.z, r: 0 })];
      board.path(
        [
          { to: 'start', ...a },
          { to: 'line', ...b },
        ],
        'outline',
      );
      board.edges.push({ a, b });
    }
  }
}

/** Corners of a chain, one for each place along the axis: the outermost there. */
export function kinks(chain: readonly Segment[], curved: ReadonlySet<string>): Point[] {
  const outermost = new Map<number, Point>();
  chain.slice(1).forEach((after, i) => {
    const before = chain[i];
    if (!before || turnBetween(before, after) < 0.09) return;
    if (curved.has(after.feature) && before.feature === after.feature) return;
    const key = Math.round(after.from.z * 1e6);
    const known = outermost.get(key);
    if (after.from.r > 1e-9 && (!known || after.from.r > known.r)) outermost.set(key, after.from);
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
