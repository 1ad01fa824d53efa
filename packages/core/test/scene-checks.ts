/** What can be asked of any sheet: is text clear of text and of the part's edges, and all of it on the paper? */
import type { Item, PathPart, Scene, TextItem } from '../src/drawing/scene.ts';
import { textWidth } from '../src/drawing/text-width.ts';

interface Rect {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The letters' own room: from the base line to the top of the capitals. */
export function letters(item: TextItem): Rect {
  const width = textWidth(item.text, item.height, item.weight);
  const before = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? width / 2 : width;
  const { x, y } = item.at;
  if (item.turn === 0) return { left: x - before, right: x - before + width, top: y - item.height, bottom: y };
  return { left: x - item.height, right: x, top: y + before - width, bottom: y + before };
}

export function texts(scene: Scene): TextItem[] {
  return scene.items.filter((item) => item.item === 'text');
}

/** All that is wrong with a sheet, in words. */
export function faults(scene: Scene, frame: Rect): string[] {
  return [
    ...overlappingTexts(scene).map(([a, b]) => `${a} overlaps ${b}`),
    ...textsOverEdges(scene).map((text) => `${text} stands on an edge`),
    ...textsOverDimensionLines(scene).map((text) => `${text} stands on a dimension line`),
    ...outsideFrame(scene, frame).map((what) => `${what} is off the sheet`),
  ];
}

export function overlappingTexts(scene: Scene): [string, string][] {
  const all = texts(scene).map((item) => ({ text: item.text, box: letters(item) }));
  return all.flatMap((one, i) =>
    all.slice(i + 1).flatMap((other): [string, string][] => (meet(one.box, other.box) ? [[one.text, other.text]] : [])),
  );
}

function meet(a: Rect, b: Rect): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** Texts that an outline, thin or centre line runs through. */
export function textsOverEdges(scene: Scene): string[] {
  return textsOver(scene, ['outline', 'thin', 'centre', 'hidden', 'assumed']);
}

/** Texts that a dimension, extension or leader line runs through. */
export function textsOverDimensionLines(scene: Scene): string[] {
  return textsOver(scene, ['dimension']);
}

function textsOver(scene: Scene, strokes: readonly string[]): string[] {
  const lines = scene.items.flatMap((item) =>
    item.item === 'path' && strokes.includes(item.stroke ?? '') ? straight(item) : [],
  );
  return texts(scene)
    .filter((item) => {
      const box = shrunk(letters(item), 0.05);
      return lines.some(([x0, y0, x1, y1]) => hits(box, x0, y0, x1, y1));
    })
    .map((item) => item.text);
}

type Piece = readonly [number, number, number, number];

/** A path as short straight pieces. */
function straight(item: Extract<Item, { item: 'path' }>): Piece[] {
  const pieces: Piece[] = [];
  let start = { x: 0, y: 0 };
  let at = start;
  for (const part of item.parts) {
    if (part.to === 'start') start = part;
    else
      for (const p of part.to === 'arc' ? arcPoints(at, part) : [part.to === 'close' ? start : part]) {
        pieces.push([at.x, at.y, p.x, p.y]);
        at = p;
      }
    if (part.to !== 'close') at = part;
  }
  return pieces;
}

/** Points on an arc, by turning about the centre that SVG's own rule gives it. */
export function arcPoints(from: { x: number; y: number }, arc: Extract<PathPart, { to: 'arc' }>) {
  const [dx, dy] = [arc.x - from.x, arc.y - from.y];
  const chord = Math.hypot(dx, dy);
  const radius = Math.max(arc.radius, chord / 2);
  const height = Math.sqrt(Math.max(0, radius ** 2 - (chord / 2) ** 2));
  const sign = arc.largeArc === arc.clockwise ? 1 : -1;
  const cx = (from.x + arc.x) / 2 + (sign * height * dy) / chord;
  const cy = (from.y + arc.y) / 2 - (sign * height * dx) / chord;
  const a0 = Math.atan2(from.y - cy, from.x - cx);
  let sweep = Math.atan2(arc.y - cy, arc.x - cx) - a0;
  if (arc.clockwise && sweep < 0) sweep += 2 * Math.PI;
  if (!arc.clockwise && sweep > 0) sweep -= 2 * Math.PI;
  return Array.from({ length: 24 }, (_, i) => {
    const a = a0 + (sweep * (i + 1)) / 24;
    return { x: cx + radius * Math.cos(a), y: cy + radius * Math.sin(a) };
  });
}

function shrunk(box: Rect, by: number): Rect {
  return { left: box.left + by, top: box.top + by, right: box.right - by, bottom: box.bottom - by };
}

/** Sampled, on purpose not the clipping that the placer uses. */
function hits(box: Rect, x0: number, y0: number, x1: number, y1: number): boolean {
  if (Math.max(x0, x1) < box.left || Math.min(x0, x1) > box.right) return false;
  if (Math.max(y0, y1) < box.top || Math.min(y0, y1) > box.bottom) return false;
  const steps = Math.ceil(Math.hypot(x1 - x0, y1 - y0) / 0.1) + 1;
  for (let i = 0; i <= steps; i++) {
    const x = x0 + ((x1 - x0) * i) / steps;
    const y = y0 + ((y1 - y0) * i) / steps;
    if (x > box.left && x < box.right && y > box.top && y < box.bottom) return true;
  }
  return false;
}

/** Everything drawn that sticks out of a frame; the frame's own lines are let be. */
export function outsideFrame(scene: Scene, frame: Rect): string[] {
  return scene.items.flatMap((item) => {
    if (item.item === 'text') return inside(letters(item), frame) ? [] : [item.text];
    if (item.stroke === 'frame') return [];
    const out = straight(item).some(
      ([x0, y0, x1, y1]) =>
        !inside(
          { left: Math.min(x0, x1), right: Math.max(x0, x1), top: Math.min(y0, y1), bottom: Math.max(y0, y1) },
          frame,
        ),
    );
    return out ? [`${item.stroke ?? 'filled'} line of ${item.of ?? 'nothing'}`] : [];
  });
}

function inside(box: Rect, frame: Rect): boolean {
  const slack = 1e-6;
  return (
    box.left >= frame.left - slack &&
    box.right <= frame.right + slack &&
    box.top >= frame.top - slack &&
    box.bottom <= frame.bottom + slack
  );
}
