/** A pencil for the small drawings of the help: lines, arrows and letters in the house's own strokes. */
import type { At, Item, PathPart, Scene, Stroke } from '@sparewright/core/drawing/scene';

/** Height of capitals: readable when the picture is as wide as a phone [mm]. */
const letters = 2.9;
const arrow = 2.6;

type Point = readonly [x: number, y: number];
type Fill = 'ink' | 'paper' | 'tint';

const at = ([x, y]: Point): At => ({ x, y });

export function line(stroke: Stroke, ...points: readonly Point[]): Item {
  return { item: 'path', stroke, parts: along(points) };
}

export function shape(points: readonly Point[], fill: Fill = 'tint', stroke: Stroke = 'outline'): Item {
  return { item: 'path', stroke, fill, parts: [...along(points), { to: 'close' }] };
}

export function box(x: number, y: number, width: number, height: number, fill: Fill = 'tint'): Item {
  return shape(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    fill,
  );
}

export function circle([x, y]: Point, radius: number, stroke: Stroke = 'outline', fill?: Fill): Item {
  const half = (to: number): PathPart => ({ to: 'arc', x: to, y, radius, largeArc: false, clockwise: true });
  const parts: PathPart[] = [{ to: 'start', x: x - radius, y }, half(x + radius), half(x - radius), { to: 'close' }];
  return { item: 'path', stroke, fill, parts };
}

/** From one point to another on a circle, clockwise as seen. */
export function arc(stroke: Stroke, from: Point, to: Point, radius: number): Item {
  return {
    item: 'path',
    stroke,
    parts: [
      { to: 'start', ...at(from) },
      { to: 'arc', ...at(to), radius, largeArc: false, clockwise: true },
    ],
  };
}

export function words(
  point: Point,
  text: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
  weight: 'normal' | 'bold' = 'normal',
): Item {
  return { item: 'text', at: at(point), text, height: letters, anchor, turn: 0, weight };
}

/** Where a gauge touches, or what is looked at. */
export function touch([x, y]: Point): Item {
  return circle([x, y], 0.9, 'cut');
}

/** A dimension line with arrow heads at both ends, and what it measures. */
export function span(
  from: Point,
  to: Point,
  text: string,
  label: Point,
  anchor: 'start' | 'middle' | 'end' = 'middle',
): Item[] {
  return [line('dimension', from, to), head(from, to), head(to, from), words(label, text, anchor)];
}

/** An arrow whose head is at its end. */
export function pointer(from: Point, to: Point): Item[] {
  return [line('dimension', from, to), head(to, from)];
}

function head(tip: Point, from: Point): Item {
  const length = Math.hypot(from[0] - tip[0], from[1] - tip[1]);
  const [ux, uy] = [(from[0] - tip[0]) / length, (from[1] - tip[1]) / length];
  const wing = (side: number): Point => [
    tip[0] + arrow * ux - side * arrow * 0.17 * uy,
    tip[1] + arrow * uy + side * arrow * 0.17 * ux,
  ];
  return {
    item: 'path',
    stroke: 'dimension',
    fill: 'ink',
    parts: [...along([tip, wing(1), wing(-1)]), { to: 'close' }],
  };
}

/** Slanting lines over a box, for material cut through. */
export function hatched(x: number, y: number, width: number, height: number, step = 3): Item[] {
  const lines: Item[] = [];
  for (let c = step; c < width + height; c += step) {
    const from: Point = c <= height ? [x, y + c] : [x + c - height, y + height];
    const to: Point = c <= width ? [x + c, y] : [x + width, y + c - width];
    lines.push(line('hatch', from, to));
  }
  return lines;
}

export function picture(
  title: string,
  description: string,
  height: number,
  items: readonly (Item | readonly Item[])[],
): Scene {
  return { width: 100, height, title, description, items: items.flat() };
}

function along(points: readonly Point[]): PathPart[] {
  return points.map(([x, y], i) => ({ to: i === 0 ? ('start' as const) : ('line' as const), x, y }));
}
