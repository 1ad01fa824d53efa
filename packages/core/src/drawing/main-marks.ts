/** Sets the marks of the main view in order: what has least choice first. */
import type { PartResult } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import { placeAcross } from './across.ts';
import type { Board } from './board.ts';
import type { Box } from './box.ts';
import { placeFinish } from './finish-marks.ts';
import { placeBest, type TouchAt } from './leaders.ts';
import { placeLengths, type RowLength } from './length-rows.ts';
import type { DiameterMark, FinishMark, LeaderMark, LengthMark, Mark } from './marks.ts';
import { insideChain } from './section-marks.ts';
import type { Zone } from './shelf.ts';
import { fitsBetweenArrows, placeColumn } from './side-columns.ts';
import { type Half, place, radiusAt, type View } from './view.ts';

export interface MarkRoom {
  /** Nothing goes beyond. */
  readonly inside: Box;
  readonly above: Zone;
  readonly below: Zone;
}

/** An extension line runs at most so far past steps that are smaller. */
const longestRun: Mm = 22;

/** Places what it can; gives back the marks that found no room. */
export function placeMarks(board: Board, part: PartResult, view: View, marks: readonly Mark[], room: MarkRoom): Mark[] {
  const lengths = marks.filter((m) => m.mark === 'length');
  const lost: Mark[] = [
    ...setLengths(
      board,
      part,
      view,
      lengths.filter((m) => m.where === 'below'),
      room,
      1,
    ),
    ...setLengths(
      board,
      part,
      view,
      lengths.filter((m) => m.where === 'above'),
      room,
      -1,
    ),
  ];
  const across: DiameterMark[] = [];
  const diameters = marks.filter((m) => m.mark === 'diameter').toSorted((a, b) => a.radius - b.radius);
  for (const mark of diameters) if (!setBesideEnd(board, part, view, mark, room.inside)) across.push(mark);
  const finishes = marks.filter((m) => m.mark === 'finish');
  for (const mark of finishes) if (!setFinish(board, part, view, mark, room)) lost.push(mark);
  const notes = marks.filter((m) => m.mark === 'leader').toSorted((a, b) => firstZ(a) - firstZ(b));
  const ordered = [...across.toSorted((a, b) => firstZ(a) - firstZ(b)), ...notes];
  ordered.forEach((mark, i) => {
    board.waiting = ordered.slice(i + 1).map((m) => view.x + firstZ(m) * view.scale);
    const isSet =
      mark.mark === 'diameter' ? setAcross(board, part, view, mark, room) : setNote(board, view, mark, room);
    if (!isSet) lost.push(mark);
  });
  return lost;
}

function firstZ(mark: LeaderMark | DiameterMark): Mm {
  if (mark.mark === 'leader') return mark.points[0]?.z ?? 0;
  return mark.at ?? (mark.from + mark.to) / 2;
}

function setLengths(
  board: Board,
  part: PartResult,
  view: View,
  marks: readonly LengthMark[],
  room: MarkRoom,
  outward: 1 | -1,
): Mark[] {
  const largest = (part.outline.largestDiameter / 2) * view.scale;
  const rows = marks.map((mark): RowLength => {
    const end = (z: Mm) => place(view, { z, r: edgeRadius(part, z, mark) }, outward === 1 ? 'lower' : 'upper');
    return { of: mark.of, text: mark.text, a: end(mark.from), b: end(mark.to), rank: mark.rank };
  });
  const { left, right, top, bottom } = room.inside;
  const first = view.y + outward * (largest + 9);
  const count = Math.floor(Math.abs((outward === 1 ? bottom : top) - first) / 6.5);
  const lost = new Set(placeLengths(board, rows, { first, outward, left, right, rows: count }).map((row) => row.of));
  return marks.filter((mark) => lost.has(mark.of));
}

/** Extension lines start where the feature is: on the outside below, at the bore's edge above. */
function edgeRadius(part: PartResult, z: Mm, mark: LengthMark): Mm {
  const { outside, insideLeft, insideRight } = part.outline;
  const outer = radiusAt(outside, z) ?? 0;
  if (mark.where === 'below') return outer;
  if (z <= 1e-9 || z >= part.outline.length - 1e-9) return outer;
  return radiusAt([...insideLeft, ...insideRight], z) ?? outer;
}

/** Where hexagons and squares take the round away that a diameter could be shown on. */
function flatStretches(part: PartResult): (readonly [Mm, Mm])[] {
  const nominal = (id: string) => part.dimensions.find((d) => d.id === id)?.nominal;
  return part.notTurned.flatMap((feature) => {
    const on = 'on' in feature ? part.outside.find((p) => p.feature.id === feature.on) : undefined;
    if (!on) return [];
    if (feature.kind === 'hexagon') return [[on.from, on.to] as const];
    if (feature.kind !== 'flats' || feature.count !== 4) return [];
    const from = on.from + (nominal(`${feature.id}.along`) ?? 0);
    return [[from, from + (nominal(`${feature.id}.length`) ?? on.to - from)] as const];
  });
}

function setBesideEnd(board: Board, part: PartResult, view: View, mark: DiameterMark, inside: Box): boolean {
  const side = mark.side === 'inside left' ? -1 : mark.side === 'inside right' ? 1 : outwardSide(part, mark, view);
  if (side === undefined) return false;
  const half = mark.side !== 'outside';
  if (half && !isSeenFromMouth(part, mark)) return false;
  if (!half && !fitsBetweenArrows(mark.text, 2 * mark.radius * view.scale)) return false;
  const z = mark.at ?? (side === -1 ? mark.from : mark.to);
  const start = place(view, { z, r: mark.radius });
  const end = side === -1 ? view.x : view.x + part.outline.length * view.scale;
  return placeColumn(board, { of: mark.of, text: mark.text, start, axis: view.y, side, end, half }, inside);
}

/** The nearer end from which a step can be seen over everything before it. */
function outwardSide(part: PartResult, mark: DiameterMark, view: View): 1 | -1 | undefined {
  const z = { left: mark.at ?? mark.from, right: mark.at ?? mark.to };
  const smaller = (radius: Mm) => radius <= mark.radius + 1e-9;
  const left = part.outside.every((p) => p.to > z.left + 1e-9 || smaller(p.largest / 2));
  const right = part.outside.every((p) => p.from < z.right - 1e-9 || smaller(p.largest / 2));
  const runLeft = z.left * view.scale;
  const runRight = (part.outline.length - z.right) * view.scale;
  const isLeft = left && runLeft <= longestRun && (!right || runLeft <= runRight);
  if (isLeft) return -1;
  return right && runRight <= longestRun ? 1 : undefined;
}

/** Nothing narrower lies between a bore and the face it is entered from. */
function isSeenFromMouth(part: PartResult, mark: DiameterMark): boolean {
  return part.inside.every((p) => {
    if (p.side !== mark.side) return true;
    const nearer = mark.side === 'inside left' ? p.to <= mark.from + 1e-9 : p.from >= mark.to - 1e-9;
    return !nearer || p.smallest / 2 >= mark.radius - 1e-9;
  });
}

function setFinish(board: Board, part: PartResult, view: View, mark: FinishMark, room: MarkRoom): boolean {
  const z = (f: number) => mark.from + f * (mark.to - mark.from);
  if (mark.side === 'outside') {
    const feet = [0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85, 0.42, 0.58].map((f) =>
      place(view, { z: z(f), r: radiusAt(part.outline.outside, z(f)) ?? 0 }),
    );
    if (placeFinish(board, { of: mark.of, text: mark.text, feet }, room.inside)) return true;
  }
  const chain =
    mark.side === 'outside' ? part.outline.outside : [...part.outline.insideLeft, ...part.outline.insideRight];
  const points = [0.5, 0.3, 0.7, 0.15, 0.85].map((f) => ({ z: z(f), r: radiusAt(chain, z(f)) ?? 0 }));
  const lines = [`√ ${mark.text}`];
  const { of, title } = mark;
  return setNote(board, view, { mark: 'leader', of, title, lines, points, upperOnly: mark.side === 'inside' }, room);
}

function setAcross(board: Board, part: PartResult, view: View, mark: DiameterMark, room: MarkRoom): boolean {
  const { of, text, radius, title } = mark;
  if (mark.at !== undefined || mark.side !== 'outside') {
    const z = mark.at ?? (mark.from + mark.to) / 2;
    const chain = mark.side === 'outside' ? undefined : insideChain(part, mark.side);
    const points = [z, ...[0.3, 0.7].map((f) => mark.from + f * (mark.to - mark.from))]
      .filter((_, i) => i === 0 || (mark.at === undefined && chain !== undefined))
      .map((at) => ({ z: at, r: radius }));
    const note = { mark: 'leader', of, title, lines: [text], points, upperOnly: mark.side !== 'outside' } as const;
    return setNote(board, view, note, room);
  }
  const fractions = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];
  const flat = flatStretches(part);
  const isRound = (z: Mm) => !flat.some(([from, to]) => z > from - 1e-9 && z < to + 1e-9);
  const xs = fractions
    .map((f) => mark.from + f * (mark.to - mark.from))
    .filter(isRound)
    .filter((z) => Math.abs((radiusAt(part.outline.outside, z) ?? 0) - radius) < 1e-3)
    .map((z) => view.x + z * view.scale);
  if (
    xs.length > 0 &&
    placeAcross(board, { of, text, xs, axis: view.y, radius: radius * view.scale }, [room.above, room.below])
  ) {
    return true;
  }
  const places = [0.02, ...fractions].map((f) => mark.from + f * (mark.to - mark.from));
  const round = places.filter(isRound);
  const points = (round.length > 0 ? round : places).map((z) => {
    return { z, r: Math.min(radius, radiusAt(part.outline.outside, z) ?? radius) };
  });
  return setNote(board, view, { mark: 'leader', of, title, lines: [text], points }, room);
}

export function setNote(board: Board, view: View, mark: LeaderMark, room: MarkRoom): boolean {
  const note = (half: Half) => ({ of: mark.of, lines: mark.lines, touch: touches(mark, view, half) });
  const upper = { note: note('upper'), zone: room.above };
  return placeBest(board, mark.upperOnly ? [upper] : [upper, { note: note('lower'), zone: room.below }]);
}

/** The radius points up the sheet in the upper half, so angles turn the other way there. */
function touches(mark: LeaderMark, view: View, half: Half): TouchAt[] {
  const turn = half === 'upper' ? -1 : 1;
  return mark.points.map((p) => ({ ...place(view, p, half), run: p.run === undefined ? undefined : turn * p.run }));
}
