/** Flats, hexagons, cross holes, slots, sockets and knurls on the main view. */
import type { Dimension, PartResult, Placed } from '../part/part-result.ts';
import type { NotTurned, OutsideSection } from '../part/schema.ts';
import type { Mm } from '../units/quantities.ts';
import type { Board } from './board.ts';
import { isOpen, type Opening, openings } from './cut-open.ts';
import type { PathPart, Stroke } from './scene.ts';
import { circle, lowerHalf, rectangleParts } from './shapes.ts';
import { place, type View } from './view.ts';

export function drawNotTurned(board: Board, part: PartResult, view: View): void {
  const sizes = new Map(part.dimensions.map((d) => [d.id, d]));
  const size = (feature: NotTurned, field: string) => sizes.get(`${feature.id}.${field}`);
  const pen = new Pen(board, view, openings(part));
  for (const feature of part.notTurned) {
    const on = 'on' in feature ? part.outside.find((p) => p.feature.id === feature.on) : undefined;
    switch (feature.kind) {
      case 'hexagon socket':
        drawPocket(pen, part, feature, size(feature, 'acrossFlats'), size(feature, 'depth'), 2 / Math.sqrt(3));
        break;
      case 'slot':
        drawPocket(pen, part, feature, size(feature, 'width'), size(feature, 'depth'), 1);
        break;
      case 'hexagon':
        if (on) drawHexagon(pen, on, size(feature, 'acrossFlats'), feature.id);
        break;
      case 'flats':
        if (on) drawFlats(pen, on, feature, size, part.outline.length);
        break;
      case 'cross hole':
        if (on) drawCrossHole(pen, on, feature, size(feature, 'along'), size(feature, 'diameter'));
        break;
      case 'knurl':
        if (on) drawKnurl(pen, on, feature);
        break;
    }
  }
}

/** Lines given by z and signed height over the axis; what lies above it is left away where that half is cut open. */
class Pen {
  readonly board: Board;
  readonly view: View;
  readonly opened: readonly Opening[];

  constructor(board: Board, view: View, opened: readonly Opening[]) {
    this.board = board;
    this.view = view;
    this.opened = opened;
  }

  isOpenAt(z: Mm): boolean {
    return isOpen(this.opened, z);
  }

  /** Takes away what was drawn there as if the part were round. */
  blank(z0: Mm, h0: number, z1: Mm, h1: number): void {
    const [a, b] = [place(this.view, { z: z0, r: h0 }), place(this.view, { z: z1, r: h1 })];
    const corner = { x: Math.min(a.x, b.x), y: Math.min(a.y, b.y) };
    const parts = rectangleParts(corner.x, corner.y, Math.abs(b.x - a.x), Math.abs(b.y - a.y));
    this.board.items.push({ item: 'path', parts, stroke: undefined, fill: 'paper' });
  }

  line(z0: Mm, h0: number, z1: Mm, h1: number, stroke: Stroke, of: string): void {
    const [a, b] = [place(this.view, { z: z0, r: h0 }), place(this.view, { z: z1, r: h1 })];
    this.board.path(
      [
        { to: 'start', ...a },
        { to: 'line', ...b },
      ],
      stroke,
      of,
    );
    this.board.edges.push({ a, b });
  }
}

/** A socket or slot in a face: seen in section where the part is cut open, else as hidden lines. */
function drawPocket(
  pen: Pen,
  part: PartResult,
  feature: Extract<NotTurned, { kind: 'hexagon socket' | 'slot' }>,
  across: Dimension | undefined,
  depth: Dimension | undefined,
  broadest: number,
): void {
  if (!across || !depth || across.nominal >= part.outline.largestDiameter || depth.nominal >= part.outline.length)
    return;
  const { length } = part.outline;
  const [mouth, floor] = feature.face === 'left' ? [0, depth.nominal] : [length, length - depth.nominal];
  const half = (across.nominal / 2) * broadest;
  // A slot is open at both sides and seen along its length; a socket is hidden unless the part is cut open.
  const isCut = pen.isOpenAt(mouth);
  const open = feature.kind === 'slot' || isCut;
  const stroke = open ? 'outline' : 'hidden';
  const margin = 0.4 / pen.view.scale;
  const inward = feature.face === 'left' ? margin : -margin;
  if (open) pen.blank(mouth - inward, half, mouth + inward, feature.kind === 'slot' ? -half : 0);
  pen.line(mouth, half, floor, half, stroke, feature.id);
  const low = isCut && feature.kind !== 'slot' ? 0 : -half;
  pen.line(floor, half, floor, low, stroke, feature.id);
  if (low < 0) pen.line(mouth, -half, floor, -half, stroke, feature.id);
}

/** Two of the six corners point up and down; the flats between show their edges at a quarter of the corner size. */
function drawHexagon(pen: Pen, on: Placed<OutsideSection>, across: Dimension | undefined, of: string): void {
  if (!across || across.nominal >= on.largest) return;
  const quarter = across.nominal / Math.sqrt(3) / 2;
  pen.line(on.from, -quarter, on.to, -quarter, 'outline', of);
  if (!pen.isOpenAt(on.from)) pen.line(on.from, quarter, on.to, quarter, 'outline', of);
}

function drawFlats(
  pen: Pen,
  on: Placed<OutsideSection>,
  feature: Extract<NotTurned, { kind: 'flats' }>,
  size: (feature: NotTurned, field: string) => Dimension | undefined,
  ends: Mm,
): void {
  const across = size(feature, 'acrossFlats');
  const from = on.from + (size(feature, 'along')?.nominal ?? 0);
  const to = Math.min(on.to, from + (size(feature, 'length')?.nominal ?? on.to - from));
  const radius = on.largest / 2;
  if (!across || to <= from) return;
  const height = feature.count === 1 ? across.nominal - radius : across.nominal / 2;
  // A flat that lies outside the round, or past the axis, is an entry still being typed.
  if (height <= 0 || height >= radius) return;
  const half = Math.sqrt(Math.max(0, radius ** 2 - height ** 2));
  const isCut = pen.isOpenAt(from);
  const top = isCut ? 0 : half;
  if (feature.count === 4) narrow(pen, on, [from, to], height, ends, feature.id);
  for (const z of [from, to]) pen.line(z, -half, z, top, 'outline', feature.id);
  pen.line(from, -half, to, -half, 'outline', feature.id);
  if (!isCut) pen.line(from, half, to, half, 'outline', feature.id);
  // Crossed thin lines say that the face is flat.
  pen.line(from, -half, to, top, 'thin', feature.id);
  pen.line(from, top, to, -half, 'thin', feature.id);
}

/** Two of four flats lie above and below: the outline runs along them. */
function narrow(
  pen: Pen,
  on: Placed<OutsideSection>,
  [from, to]: readonly [Mm, Mm],
  height: Mm,
  partEnd: Mm,
  of: string,
): void {
  const radius = on.largest / 2;
  const beyond = 0.4 / pen.view.scale;
  const left = from <= 1e-9 ? from - beyond : from;
  const right = to >= partEnd - 1e-9 ? to + beyond : to;
  for (const side of [1, -1]) {
    pen.blank(left, side * height, right, side * (radius + beyond));
    pen.line(from, side * height, to, side * height, 'outline', of);
    const walls = [from, to].filter((z) => z > on.from + 1e-9 && z < on.to - 1e-9);
    for (const z of walls) pen.line(z, side * height, z, side * radius, 'outline', of);
  }
}

function drawCrossHole(
  pen: Pen,
  on: Placed<OutsideSection>,
  feature: Extract<NotTurned, { kind: 'cross hole' }>,
  along: Dimension | undefined,
  diameter: Dimension | undefined,
): void {
  if (!diameter || diameter.nominal >= on.largest) return;
  const z = on.from + (along?.nominal ?? (on.to - on.from) / 2);
  const radius = diameter.nominal / 2;
  const centre = place(pen.view, { z, r: 0 });
  const onPaper = radius * pen.view.scale;
  // Cut open, the near wall above the axis is gone; what is left of a hole through one wall is its lower half.
  const isWhole = !pen.isOpenAt(z) || feature.through;
  pen.board.items.push(
    isWhole ? circle(centre, onPaper, 'outline', feature.id) : lowerHalf(centre, onPaper, 'outline', feature.id),
  );
  const reach = radius + 2 / pen.view.scale;
  pen.line(z, -reach, z, isWhole ? reach : 0, 'centre', feature.id);
}

/** A knurl is hinted at on part of its surface. */
function drawKnurl(pen: Pen, on: Placed<OutsideSection>, feature: Extract<NotTurned, { kind: 'knurl' }>): void {
  const radius = on.smallest / 2;
  const top = pen.isOpenAt(on.from) ? 0 : radius;
  const step = Math.max(feature.pitch ?? 1, 1.4 / pen.view.scale);
  const parts: PathPart[] = [];
  const stretch = (z0: Mm, h0: number, z1: Mm, h1: number) => {
    const [a, b] = [place(pen.view, { z: z0, r: h0 }), place(pen.view, { z: z1, r: h1 })];
    parts.push({ to: 'start', ...a }, { to: 'line', ...b });
  };
  if (feature.pattern === 'straight') {
    for (let h = -radius + step / 2; h < top; h += step) stretch(on.from, h, on.to, h);
  } else {
    const slope = Math.tan(Math.PI / 6);
    for (const way of [1, -1]) {
      const rise = (on.to - on.from) * slope;
      for (let h = -radius - rise + step / 2; h < top + rise; h += step) {
        const clipped = clip(on.from, way === 1 ? h : h + rise, on.to, way === 1 ? h + rise : h, -radius, top);
        if (clipped) stretch(...clipped);
      }
    }
  }
  pen.board.path(parts, 'thin', feature.id);
}

/** The part of a slanting line between two heights. */
function clip(z0: Mm, h0: number, z1: Mm, h1: number, low: number, high: number): [Mm, number, Mm, number] | undefined {
  const at = (h: number) => (h - h0) / (h1 - h0);
  const [enter, leave] = [at(h1 > h0 ? low : high), at(h1 > h0 ? high : low)];
  const [from, to] = [Math.max(0, enter), Math.min(1, leave)];
  if (to - from < 1e-6) return undefined;
  const point = (t: number): [Mm, number] => [z0 + t * (z1 - z0), h0 + t * (h1 - h0)];
  return [...point(from), ...point(to)];
}
