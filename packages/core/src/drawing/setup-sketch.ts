/** A workshop sketch of how the work is held: chuck at the left, free end to the right, whichever end of the part that is. */
import type { Outline, Segment } from '../part/outline-types.ts';
import type { LengthUnit } from '../units/length.ts';
import type { Mm } from '../units/quantities.ts';
import { between, mirrored } from './between.ts';
import { Board, textHeight } from './board.ts';
import { boxAt, grown } from './box.ts';
import { fitText } from './fit-text.ts';
import { drawCentre, drawChuck, drawDog, drawMandrel, edge, type Holder, jawHeight, leftOfWork } from './holders.ts';
import { placeNote } from './leaders.ts';
import { placeLengths, type RowLength } from './length-rows.ts';
import { sizeText } from './numbers.ts';
import type { PathPart, Scene, Stroke } from './scene.ts';
import { lineThrough, rectangle } from './shapes.ts';
import { chords, place, radiusAt, runParts, runsOf, type View } from './view.ts';

export interface SetupSketch {
  readonly outline: Outline;
  /** Stretch of the part, or of the bar beyond it, that the jaws hold; along the part from its left face. */
  readonly gripFrom: Mm;
  readonly gripTo: Mm;
  /** The end of the part that stands out of the chuck. */
  readonly endOut: 'left' | 'right';
  readonly tailstock: boolean;
  /** What holds it instead of jaws on its outside; for the centres `gripFrom` and `gripTo` are the place of the dog. */
  readonly holder?: Holder | undefined;
  /** Diameter before this setup, between these places. */
  readonly stockDiameter: Mm;
  readonly stockFrom: Mm;
  readonly stockTo: Mm;
  readonly chuckLabel: string;
  /** The stretch being cut. */
  readonly cutFrom?: Mm | undefined;
  readonly cutTo?: Mm | undefined;
  readonly cutSide?: 'outside' | 'inside' | undefined;
  /** The work before that cut, drawn thin behind; what is cut away shows between the two. */
  readonly before?: Pick<Outline, 'outside' | 'insideLeft'> | undefined;
  readonly labels?: readonly SketchLabel[] | undefined;
  readonly units?: LengthUnit | undefined;
  readonly decimalSign?: 'point' | 'comma' | undefined;
}

export interface SketchLabel {
  /** Along the part from its left face. */
  readonly at: Mm;
  readonly text: string;
  readonly of?: string | undefined;
}

const size = { width: 180, height: 95 } as const;
const axis: Mm = 46;
/** Room right of the work for the tailstock centre. */
const tailRoom: Mm = 34;
const tallest: Mm = 40;
const narrowest: Mm = 110;

/** Everything along the axis of the sketch: the chuck at the left, so mirrored where the left end stands out. */
interface Laid {
  readonly outline: Outline;
  readonly before: SetupSketch['before'];
  readonly grip: readonly [Mm, Mm];
  /** Where it stands free: the jaw faces, or the point of the driving centre. */
  readonly free: Mm;
  readonly stock: readonly [Mm, Mm];
  readonly cut: readonly [Mm, Mm] | undefined;
  /** The free end. */
  readonly end: Mm;
  readonly turn: (z: Mm) => Mm;
}

export function drawSetup(sketch: SetupSketch): Scene {
  const laid = layOut(sketch);
  const view = viewOf(sketch, laid);
  const board = new Board();
  const radius = (sketch.stockDiameter / 2) * view.scale;
  drawStock(board, laid, view, radius);
  drawWork(board, sketch, laid, view);
  drawHolder(board, sketch, laid, view);
  const { holder } = sketch;
  const centred = holder?.by === 'mandrel' ? laid.free + holder.length : laid.end;
  if (sketch.tailstock) drawCentre(board, place(view, { z: centred, r: 0 }));
  drawAxis(board, view, laid, sketch.tailstock);
  drawOverhang(board, sketch, laid, view, radius);
  drawLabels(board, sketch, laid, view, radius);
  const right = board.extent()?.right ?? size.width;
  return {
    width: Math.min(size.width, Math.max(narrowest, Math.ceil(right + 6))),
    height: size.height,
    title: `Setup: ${sketch.chuckLabel}`,
    description: describe(sketch, laid),
    items: board.items,
  };
}

function layOut(sketch: SetupSketch): Laid {
  const isMirrored = sketch.endOut === 'left';
  const turn = (z: Mm) => (isMirrored ? -z : z);
  const stretch = (from: Mm, to: Mm): readonly [Mm, Mm] => {
    const [a, b] = [turn(from), turn(to)];
    return [Math.min(a, b), Math.max(a, b)];
  };
  const { outline, before, cutFrom, cutTo } = sketch;
  const stock = stretch(sketch.stockFrom, sketch.stockTo);
  return {
    outline: isMirrored ? mirrored(outline) : outline,
    before: before && isMirrored ? mirrored({ ...outline, insideRight: [], ...before }) : before,
    grip: stretch(sketch.gripFrom, sketch.gripTo),
    free: sketch.holder ? turn(sketch.holder.freeFrom) : stretch(sketch.gripFrom, sketch.gripTo)[1],
    stock,
    cut: cutFrom === undefined || cutTo === undefined ? undefined : stretch(cutFrom, cutTo),
    end: Math.max(stock[1], turn(0), turn(outline.length)),
    turn,
  };
}

/** As large as the sheet lets it be; a sketch has no scale of its own. */
function viewOf(sketch: SetupSketch, laid: Laid): View {
  const left = leftOfWork(sketch.holder);
  const begin = sketch.holder ? laid.free : laid.grip[0];
  const room = size.width - left - 8 - (sketch.tailstock ? tailRoom : 6);
  const widest = Math.max(sketch.stockDiameter, laid.outline.largestDiameter, 1e-3);
  const span = Math.max(laid.end - begin, 1e-3);
  const scale = Math.min(room / span, tallest / widest);
  return { x: left - begin * scale, y: axis, scale };
}

function drawStock(board: Board, laid: Laid, view: View, radius: Mm): void {
  const left = Math.max(place(view, { z: laid.stock[0], r: 0 }).x, edge + 2);
  const right = place(view, { z: laid.stock[1], r: 0 }).x;
  if (right <= left) return;
  board.items.push(rectangle(left, view.y - radius, right - left, 2 * radius, 'thin'));
  for (const y of [view.y - radius, view.y + radius]) board.edges.push({ a: { x: left, y }, b: { x: right, y } });
  board.edges.push({ a: { x: right, y: view.y - radius }, b: { x: right, y: view.y + radius } });
}

function drawWork(board: Board, sketch: SetupSketch, laid: Laid, view: View): void {
  const { outside, insideLeft, insideRight } = laid.outline;
  if (laid.before) {
    solid(board, laid.before.outside, view, 'tint', 'thin');
    solid(board, outside, view, 'paper');
    for (const hole of holesOf([...insideLeft, ...insideRight])) solid(board, hole, view, 'tint');
    for (const hole of holesOf(laid.before.insideLeft)) solid(board, hole, view, 'paper');
  }
  drawBoth(board, outside, view, 'outline');
  drawBoth(board, [...insideLeft, ...insideRight], view, 'hidden');
  if (!laid.cut) return;
  const chain = sketch.cutSide === 'inside' ? [...insideLeft, ...insideRight] : outside;
  drawBoth(board, between(chain, ...laid.cut), view, 'cut');
}

/** What a chain encloses with the axis. */
function solid(board: Board, chain: readonly Segment[], view: View, fill: 'tint' | 'paper', stroke?: Stroke): void {
  const [first, last] = [chain[0], chain.at(-1)];
  if (!first || !last) return;
  for (const half of ['upper', 'lower'] as const) {
    const start = place(view, { z: first.from.z, r: 0 }, half);
    const end = place(view, { z: last.to.z, r: 0 }, half);
    const [, ...along] = runParts(chain, view, half);
    const parts: PathPart[] = [
      { to: 'start', ...start },
      { to: 'line', ...place(view, first.from, half) },
      ...along,
      { to: 'line', ...end },
      { to: 'close' },
    ];
    board.items.push({ item: 'path', parts, fill, stroke });
  }
}

/** Holes that do not meet, one by one. */
function holesOf(chain: readonly Segment[]): Segment[][] {
  const holes: Segment[][] = [];
  for (const segment of chain) {
    const hole = holes.at(-1);
    const end = hole?.at(-1)?.to;
    if (hole && end && Math.hypot(end.z - segment.from.z, end.r - segment.from.r) < 1e-6) hole.push(segment);
    else holes.push([segment]);
  }
  return holes;
}

function drawBoth(board: Board, chain: readonly Segment[], view: View, stroke: Stroke): void {
  for (const half of ['upper', 'lower'] as const) {
    for (const run of runsOf(chain)) board.path(runParts(run, view, half), stroke, run[0]?.feature);
    board.edges.push(...chords(chain, view, half));
  }
}

/** Chuck, mandrel, or driving plate and dog, with its name above. */
function drawHolder(board: Board, sketch: SetupSketch, laid: Laid, view: View): void {
  const [from, to] = laid.grip.map((z) => place(view, { z, r: 0 }).x);
  if (from === undefined || to === undefined) return;
  const { holder } = sketch;
  const radius = radiusHeld(sketch, laid) * view.scale;
  if (holder?.by === 'mandrel') {
    const free = place(view, { z: laid.free, r: 0 }).x;
    drawMandrel(board, { free, axis, radius: (holder.diameter / 2) * view.scale, length: holder.length * view.scale });
  } else if (holder) drawDog(board, { tip: place(view, { z: laid.free, r: 0 }), from, to, radius });
  else drawChuck(board, { from, to, axis, radius });
  const { text, height } = fitText(sketch.chuckLabel, size.width - 12, textHeight.dimension, 'bold');
  board.text({ x: edge, y: 5.5 }, text, { height, weight: 'bold' });
}

/** What the jaws close on: the bar where there is bar, else the finished surface. */
function radiusHeld(sketch: SetupSketch, laid: Laid): Mm {
  const middle = (laid.grip[0] + laid.grip[1]) / 2;
  if (middle >= laid.stock[0] && middle <= laid.stock[1]) return sketch.stockDiameter / 2;
  return radiusAt(laid.outline.outside, middle) ?? sketch.stockDiameter / 2;
}

function drawAxis(board: Board, view: View, laid: Laid, tailstock: boolean): void {
  const end = place(view, { z: laid.end, r: 0 }).x + (tailstock ? 26 : 4);
  const [a, b] = [
    { x: edge - 3, y: view.y },
    { x: end, y: view.y },
  ];
  board.items.push(lineThrough([a, b], 'centre'));
  board.edges.push({ a, b });
}

function drawOverhang(board: Board, sketch: SetupSketch, laid: Laid, view: View, radius: Mm): void {
  const { free } = laid;
  if (laid.end - free <= 1e-9) return;
  const style = { units: sketch.units ?? 'mm', decimalSign: sketch.decimalSign ?? 'point' } as const;
  // Set with a rule: a tenth of a millimetre, or a hundredth of an inch.
  const finest = style.units === 'in' ? 0.254 : 0.1;
  const where = sketch.holder?.by === 'dog' ? 'between centres' : 'out';
  const text = `${sizeText(Math.round((laid.end - free) / finest) * finest, style)} ${where}`;
  const low = view.y + Math.max(radius, (laid.outline.largestDiameter / 2) * view.scale);
  const end = (z: Mm) => ({ x: place(view, { z, r: 0 }).x, y: low });
  const held = sketch.holder?.by === 'mandrel' ? sketch.holder.diameter / 2 : radiusHeld(sketch, laid);
  const jaw = held * view.scale + jawHeight;
  const row: RowLength = { of: 'overhang', text, a: end(free), b: end(laid.end), rank: 0 };
  const first = Math.max(low, view.y + jaw) + 6;
  placeLengths(board, [row], { first, outward: 1, left: 2, right: size.width - 2, rows: 3 });
}

function drawLabels(board: Board, sketch: SetupSketch, laid: Laid, view: View, radius: Mm): void {
  const inside = grown(boxAt(0, 0, size.width, size.height), -2);
  const above = { first: view.y - radius - 5, outward: -1, rows: 14, inside } as const;
  const below = { first: view.y + radius + 5, outward: 1, rows: 14, inside } as const;
  const crowded: string[] = [];
  for (const label of sketch.labels ?? []) {
    const z = laid.turn(label.at);
    const touch = [place(view, { z, r: radiusOf(sketch, laid, z) })];
    const note = { of: label.of ?? 'label', lines: [label.text], touch };
    const low = { ...note, touch: touch.map((p) => ({ ...p, y: 2 * view.y - p.y })) };
    if (!placeNote(board, note, [above]) && !placeNote(board, low, [below])) crowded.push(label.text);
  }
  // What found no room at its place is said at the foot of the sketch.
  const { text, height } = fitText(crowded.join(' · '), size.width - 12, textHeight.dimension);
  if (crowded.length > 0) board.text({ x: edge, y: size.height - 1.5 }, text, { height });
}

/** Labels point at the surface being cut. */
function radiusOf(sketch: SetupSketch, laid: Laid, z: Mm): Mm {
  const { outside, insideLeft, insideRight } = laid.outline;
  const inner = sketch.cutSide === 'inside' ? radiusAt([...insideLeft, ...insideRight], z) : undefined;
  return inner ?? radiusAt(outside, z) ?? 0;
}

function describe(sketch: SetupSketch, laid: Laid): string {
  const size = (value: Mm) =>
    `${sizeText(Math.round(value * 1000) / 1000, { units: sketch.units ?? 'mm', decimalSign: 'point' })} ${sketch.units ?? 'mm'}`;
  const out = Math.max(0, laid.end - laid.free);
  const tail = sketch.tailstock ? ' and carried by the tailstock centre' : '';
  const cut =
    sketch.cutFrom === undefined || sketch.cutTo === undefined
      ? ''
      : ` Being cut: from ${size(Math.min(sketch.cutFrom, sketch.cutTo))} to ${size(Math.max(sketch.cutFrom, sketch.cutTo))} from the left face.`;
  const labels = (sketch.labels ?? []).map((label) => ` ${label.text}.`).join('');
  const over = size(laid.grip[1] - laid.grip[0]);
  const held =
    sketch.holder?.by === 'dog'
      ? `between centres ${size(out)} apart, the ${sketch.endOut} end at the tailstock, a dog on ${over} of the other`
      : `the ${sketch.endOut} end stands ${size(out)} out of the jaws${tail}; held over ${over}${sketch.holder ? ' on the mandrel' : ''}`;
  return `${sketch.chuckLabel}: ${held}, bar ${size(sketch.stockDiameter)}.${cut}${labels}`;
}
