/** The few shapes a sheet is made of, as paths. */
import type { Mm, Radian } from '../units/quantities.ts';
import type { At, Item, PathItem, PathPart, Stroke } from './scene.ts';

export function lineThrough(points: readonly At[], stroke: Stroke, of?: string): PathItem {
  const parts = points.map((p, i): PathPart => ({ to: i === 0 ? 'start' : 'line', x: p.x, y: p.y }));
  return { item: 'path', parts, stroke, of };
}

export function rectangle(left: Mm, top: Mm, width: Mm, height: Mm, stroke: Stroke): PathItem {
  return { item: 'path', parts: rectangleParts(left, top, width, height), stroke };
}

export function rectangleParts(left: Mm, top: Mm, width: Mm, height: Mm): PathPart[] {
  return [
    { to: 'start', x: left, y: top },
    { to: 'line', x: left + width, y: top },
    { to: 'line', x: left + width, y: top + height },
    { to: 'line', x: left, y: top + height },
    { to: 'close' },
  ];
}

/** A full circle, in two halves because an arc cannot end where it starts. */
export function circle(centre: At, radius: Mm, stroke: Stroke, of?: string): PathItem {
  const half = { to: 'arc', radius, largeArc: false, clockwise: true } as const;
  const parts: PathPart[] = [
    { to: 'start', x: centre.x - radius, y: centre.y },
    { ...half, x: centre.x + radius, y: centre.y },
    { ...half, x: centre.x - radius, y: centre.y },
    { to: 'close' },
  ];
  return { item: 'path', parts, stroke, of };
}

/** The half of a circle below its centre. */
export function lowerHalf(centre: At, radius: Mm, stroke: Stroke, of?: string): PathItem {
  const parts: PathPart[] = [
    { to: 'start', x: centre.x + radius, y: centre.y },
    { to: 'arc', radius, largeArc: false, clockwise: true, x: centre.x - radius, y: centre.y },
  ];
  return { item: 'path', parts, stroke, of };
}

/** Three quarters of a circle: a thread seen from its end. */
export function threeQuarterCircle(centre: At, radius: Mm, stroke: Stroke, of?: string): PathItem {
  const parts: PathPart[] = [
    { to: 'start', x: centre.x, y: centre.y - radius },
    { to: 'arc', radius, largeArc: true, clockwise: false, x: centre.x + radius, y: centre.y },
  ];
  return { item: 'path', parts, stroke, of };
}

/** Length and half breadth of an arrowhead: 15° a side, closed and filled. */
export const arrowLength: Mm = 2.5;
const arrowHalf: Mm = 0.45;

/** A filled arrowhead with its tip at `tip`, pointing the way of `direction` (0 = right, clockwise on the sheet). */
export function arrowhead(tip: At, direction: Radian, of?: string): PathItem {
  const [c, s] = [Math.cos(direction), Math.sin(direction)];
  const corner = (side: number): At => ({
    x: tip.x - arrowLength * c - side * arrowHalf * s,
    y: tip.y - arrowLength * s + side * arrowHalf * c,
  });
  const [one, other] = [corner(1), corner(-1)];
  const parts: PathPart[] = [
    { to: 'start', x: tip.x, y: tip.y },
    { to: 'line', x: one.x, y: one.y },
    { to: 'line', x: other.x, y: other.y },
    { to: 'close' },
  ];
  return { item: 'path', parts, stroke: undefined, fill: 'ink', of };
}

/** The same item shifted on the sheet. */
export function shifted(item: Item, by: At): Item {
  if (item.item === 'text') return { ...item, at: { x: item.at.x + by.x, y: item.at.y + by.y } };
  const parts = item.parts.map((part): PathPart => {
    if (part.to === 'close') return part;
    return { ...part, x: part.x + by.x, y: part.y + by.y };
  });
  return { ...item, parts };
}

/** The angle of the way from one point to another, clockwise on the sheet. */
export function bearing(from: At, to: At): Radian {
  return Math.atan2(to.y - from.y, to.x - from.x);
}
