/** The part seen on one end, when there is something there that is not round. */
import type { PartResult } from '../part/part-result.ts';
import type { NotTurned } from '../part/schema.ts';
import type { Mm } from '../units/quantities.ts';
import type { Board } from './board.ts';
import { curves, seenEdges } from './main-view.ts';
import type { At, PathPart } from './scene.ts';
import { nameOf } from './section-marks.ts';
import { circle, lineThrough, threeQuarterCircle } from './shapes.ts';
import type { Sizes } from './sizes.ts';

/** A size that belongs at the end view, with points its leader may touch. */
export interface EndNote {
  readonly of: string;
  readonly title: string;
  readonly lines: readonly string[];
  readonly touch: readonly At[];
}

export type End = 'left' | 'right';

/** The ends worth looking at, each with what is to be seen from there. */
export function endsToShow(part: PartResult): Map<End, NotTurned[]> {
  const ends = new Map<End, NotTurned[]>();
  for (const feature of part.notTurned) {
    const end = endOf(part, feature);
    if (end) ends.set(end, [...(ends.get(end) ?? []), feature]);
  }
  return ends;
}

function endOf(part: PartResult, feature: NotTurned): End | undefined {
  switch (feature.kind) {
    case 'hexagon socket':
    case 'slot':
      return feature.face;
    case 'hexagon':
    case 'flats': {
      const on = part.outside.find((p) => p.feature.id === feature.on);
      if (!on) return undefined;
      const behindLeft = part.outside.some((p) => p.to <= on.from + 1e-9 && p.largest > on.largest);
      const behindRight = part.outside.some((p) => p.from >= on.to - 1e-9 && p.largest > on.largest);
      if (behindLeft !== behindRight) return behindLeft ? 'right' : 'left';
      return on.from + on.to <= part.outline.length ? 'left' : 'right';
    }
    default:
      return undefined;
  }
}

/** On which side of the main view a view from that end stands. */
export function sideFor(end: End, projection: 'first angle' | 'third angle'): End {
  if (projection === 'third angle') return end;
  return end === 'left' ? 'right' : 'left';
}

export function drawEndView(
  board: Board,
  part: PartResult,
  end: End,
  features: readonly NotTurned[],
  centre: At,
  scale: number,
  sizes: Sizes,
): EndNote[] {
  const largest = (part.outline.largestDiameter / 2) * scale;
  const polygons = new Set(features.filter((f) => f.kind === 'hexagon' || f.kind === 'flats').map((f) => f.on));
  for (const radius of seenRadii(part, end, polygons)) drawCircle(board, centre, radius * scale);
  for (const thread of part.threads) {
    const fromHere =
      thread.entersAt === end && (end === 'left' ? thread.from < 1e-6 : thread.to > part.outline.length - 1e-6);
    if (!fromHere) continue;
    const { rootDiameterExternal, majorDiameter } = thread.thread;
    const radius = (thread.side === 'external' ? rootDiameterExternal : majorDiameter) / 2;
    board.items.push(threeQuarterCircle(centre, radius * scale, 'thin', thread.id));
  }
  const notes = features.flatMap((f) => drawFeature(board, part, f, end, centre, scale, sizes));
  drawCross(board, centre, largest + 3);
  return notes;
}

/** Radii of the round edges that can be seen from an end: each outer one that stands out over all before it, and the mouths of the bores. */
function seenRadii(part: PartResult, end: End, polygons: ReadonlySet<string>): Mm[] {
  const { outside, insideLeft, insideRight } = part.outline;
  const curved = curves(part);
  const way = end === 'left' ? 1 : -1;
  const radii: Mm[] = [];
  let soFar = 0;
  const within = (z: Mm) =>
    part.outside.some((p) => polygons.has(p.feature.id) && z >= p.from - 1e-9 && z <= p.to + 1e-9);
  for (const edge of seenEdges(outside, curved).toSorted((a, b) => way * (a.z - b.z))) {
    if (edge.r <= soFar + 1e-9) continue;
    soFar = edge.r;
    if (!within(edge.z)) radii.push(edge.r);
  }
  if (part.outline.largestDiameter / 2 > soFar + 1e-9) radii.push(part.outline.largestDiameter / 2);
  const mouth = end === 'left' ? insideLeft : insideRight;
  let least = Number.POSITIVE_INFINITY;
  for (const edge of [...(mouth[0] ? [mouth[0].from] : []), ...seenEdges(mouth, curved)]) {
    if (edge.r < least - 1e-9 && edge.r > 1e-9) {
      radii.push(edge.r);
      least = edge.r;
    }
  }
  return [...new Set(radii)];
}

function drawCircle(board: Board, centre: At, radius: Mm): void {
  board.items.push(circle(centre, radius, 'outline'));
  addRing(board, centre, radius);
}

/** Registers a circle as something to keep text off. */
export function addRing(board: Board, centre: At, radius: Mm): void {
  const points = Array.from({ length: 25 }, (_, i) => onCircle(centre, radius, (i * Math.PI) / 12));
  points.slice(1).forEach((b, i) => {
    const a = points[i];
    if (a) board.edges.push({ a, b });
  });
}

export function onCircle(centre: At, radius: Mm, angle: number): At {
  return { x: centre.x + radius * Math.cos(angle), y: centre.y - radius * Math.sin(angle) };
}

function drawFeature(
  board: Board,
  part: PartResult,
  feature: NotTurned,
  end: End,
  centre: At,
  scale: number,
  sizes: Sizes,
): EndNote[] {
  const title = nameOf(feature);
  if (feature.kind === 'slot') {
    const width = sizes.take(feature.id, 'width');
    if (!width) return [];
    const half = (width.nominal / 2) * scale;
    const reach = (mouthDiameter(part, feature.face) / 2) * scale;
    const across = Math.sqrt(Math.max(0, reach ** 2 - half ** 2));
    for (const y of [centre.y - half, centre.y + half]) {
      drawLine(board, { x: centre.x - across, y }, { x: centre.x + across, y }, feature.id);
    }
    const touch = [0.6, -0.6, 0.8, -0.8].map((f) => ({ x: centre.x + f * across, y: centre.y - half }));
    return [{ of: width.id, title: `${title}, width`, lines: [`slot ${sizes.text(width)}`], touch }];
  }
  if (feature.kind === 'hexagon' || feature.kind === 'hexagon socket') {
    const across = sizes.take(feature.id, 'acrossFlats');
    if (!across) return [];
    const corner = (across.nominal / Math.sqrt(3)) * scale;
    const corners = Array.from({ length: 6 }, (_, i) => onCircle(centre, corner, Math.PI / 2 + (i * Math.PI) / 3));
    const room = feature.kind === 'hexagon' ? acrossOf(part, feature.on) : part.outline.largestDiameter;
    // One that would be larger than the part is an entry still being typed.
    if (across.nominal < room) drawPolygon(board, corners, feature.id);
    const made = feature.kind === 'hexagon socket' && feature.made ? [feature.made] : [];
    const touch = [flatMiddle(corners, 0), flatMiddle(corners, 5)];
    return [{ of: across.id, title: `${title}, across flats`, lines: [`${sizes.text(across)} A/F`, ...made], touch }];
  }
  return feature.kind === 'flats' ? drawFlats(board, part, feature, end, centre, scale, sizes) : [];
}

function drawFlats(
  board: Board,
  part: PartResult,
  feature: Extract<NotTurned, { kind: 'flats' }>,
  end: End,
  centre: At,
  scale: number,
  sizes: Sizes,
): EndNote[] {
  const across = sizes.take(feature.id, 'acrossFlats');
  const on = part.outside.find((p) => p.feature.id === feature.on);
  if (!across || !on) return [];
  const radius = (on.largest / 2) * scale;
  const away = (feature.count === 1 ? across.nominal - on.largest / 2 : across.nominal / 2) * scale;
  const half = away > 0 && away < radius ? Math.acos(away / radius) : 0;
  if (half === 0) drawCircle(board, centre, radius);
  const turn = (2 * Math.PI) / feature.count;
  const parts: PathPart[] = [];
  // The first flat faces the reader of the main view, who stands to the right of whoever looks at the left end.
  const front = end === 'left' ? 0 : Math.PI;
  const flats = Array.from({ length: half === 0 ? 0 : feature.count }, (_, i) => front + i * turn);
  flats.forEach((middle, i) => {
    const [a, b] = [onCircle(centre, radius, middle - half), onCircle(centre, radius, middle + half)];
    const next = onCircle(centre, radius, middle + turn - half);
    parts.push(i === 0 ? { to: 'start', ...a } : { to: 'line', ...a }, { to: 'line', ...b });
    board.edges.push({ a, b });
    parts.push({ to: 'arc', ...next, radius, largeArc: turn - 2 * half > Math.PI, clockwise: false });
  });
  board.path(parts, 'outline', feature.id);
  const touch = [0.4, -0.4].map((f) =>
    onCircle(centre, half === 0 ? radius : away / Math.cos(f * half), front + f * half),
  );
  const lines = [`${sizes.text(across)} ${feature.count === 1 ? 'over the flat' : 'A/F'}`];
  return [{ of: across.id, title: `${nameOf(feature)}, across flats`, lines, touch }];
}

function acrossOf(part: PartResult, section: string): Mm {
  return part.outside.find((p) => p.feature.id === section)?.largest ?? 0;
}

/** Outside diameter of the face a slot is cut across. */
function mouthDiameter(part: PartResult, face: End): Mm {
  const first = face === 'left' ? part.outside[0] : part.outside.at(-1);
  return first?.smallest ?? part.outline.largestDiameter;
}

function flatMiddle(corners: readonly At[], index: number): At {
  const [a, b] = [corners[index], corners[(index + 1) % corners.length]];
  if (!a || !b) return { x: 0, y: 0 };
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

function drawPolygon(board: Board, corners: readonly At[], of: string): void {
  const parts = corners.map((p, i): PathPart => ({ to: i === 0 ? 'start' : 'line', ...p }));
  board.path([...parts, { to: 'close' }], 'outline', of);
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length];
    if (b) board.edges.push({ a, b });
  });
}

function drawLine(board: Board, a: At, b: At, of: string): void {
  board.items.push(lineThrough([a, b], 'outline', of));
  board.edges.push({ a, b });
}

function drawCross(board: Board, centre: At, reach: Mm): void {
  for (const [dx, dy] of [
    [reach, 0],
    [0, reach],
  ] as const) {
    const [a, b] = [
      { x: centre.x - dx, y: centre.y - dy },
      { x: centre.x + dx, y: centre.y + dy },
    ];
    board.path(
      [
        { to: 'start', ...a },
        { to: 'line', ...b },
      ],
      'centre',
    );
    board.edges.push({ a, b });
  }
}
