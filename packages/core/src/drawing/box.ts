/** Upright rectangles and straight lines on the sheet: does this stand in the way of that? */
import type { Mm } from '../units/quantities.ts';
import type { At } from './scene.ts';

export interface Box {
  readonly left: Mm;
  readonly top: Mm;
  readonly right: Mm;
  readonly bottom: Mm;
}

export interface Stretch {
  readonly a: At;
  readonly b: At;
}

export function boxAt(left: Mm, top: Mm, width: Mm, height: Mm): Box {
  return { left, top, right: left + width, bottom: top + height };
}

export function boxWidth(box: Box): Mm {
  return box.right - box.left;
}

export function boxHeight(box: Box): Mm {
  return box.bottom - box.top;
}

export function grown(box: Box, by: Mm): Box {
  return { left: box.left - by, top: box.top - by, right: box.right + by, bottom: box.bottom + by };
}

export function moved(box: Box, by: At): Box {
  return { left: box.left + by.x, top: box.top + by.y, right: box.right + by.x, bottom: box.bottom + by.y };
}

export function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

export function within(inner: Box, outer: Box): boolean {
  return (
    inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom
  );
}

/** The smallest box around all of them; undefined around nothing. */
export function around(boxes: readonly Box[]): Box | undefined {
  if (boxes.length === 0) return undefined;
  let { left, top, right, bottom } = boxes[0] ?? { left: 0, top: 0, right: 0, bottom: 0 };
  for (const box of boxes) {
    left = Math.min(left, box.left);
    top = Math.min(top, box.top);
    right = Math.max(right, box.right);
    bottom = Math.max(bottom, box.bottom);
  }
  return { left, top, right, bottom };
}

/** Whether a straight line passes through the inside of a box (Liang and Barsky's clipping). */
export function passesThrough(line: Stretch, box: Box): boolean {
  const dx = line.b.x - line.a.x;
  const dy = line.b.y - line.a.y;
  let enter = 0;
  let leave = 1;
  const sides: readonly (readonly [number, number])[] = [
    [-dx, line.a.x - box.left],
    [dx, box.right - line.a.x],
    [-dy, line.a.y - box.top],
    [dy, box.bottom - line.a.y],
  ];
  for (const [towards, room] of sides) {
    if (towards === 0) {
      if (room <= 0) return false;
      continue;
    }
    const t = room / towards;
    if (towards < 0) enter = Math.max(enter, t);
    else leave = Math.min(leave, t);
  }
  return leave - enter > 1e-9;
}

/** Whether two straight lines lie so nearly on one another that they would be read as one. */
export function runsAlong(one: Stretch, other: Stretch, apart: Mm = 0.7): boolean {
  const length = Math.hypot(other.b.x - other.a.x, other.b.y - other.a.y);
  if (length < 1e-9) return false;
  const [ux, uy] = [(other.b.x - other.a.x) / length, (other.b.y - other.a.y) / length];
  const seen = (p: At) => ({
    along: (p.x - other.a.x) * ux + (p.y - other.a.y) * uy,
    off: Math.abs((p.y - other.a.y) * ux - (p.x - other.a.x) * uy),
  });
  const [a, b] = [seen(one.a), seen(one.b)];
  if (a.off > apart || b.off > apart) return false;
  return Math.min(Math.max(a.along, b.along), length) - Math.max(Math.min(a.along, b.along), 0) > 0.5;
}

/** Whether two straight lines cross at a point inside both. */
export function cross(one: Stretch, other: Stretch): boolean {
  const side = (p: At, line: Stretch) =>
    (line.b.x - line.a.x) * (p.y - line.a.y) - (line.b.y - line.a.y) * (p.x - line.a.x);
  const tiny = 1e-9;
  const a = side(one.a, other);
  const b = side(one.b, other);
  const c = side(other.a, one);
  const d = side(other.b, one);
  return ((a > tiny && b < -tiny) || (a < -tiny && b > tiny)) && ((c > tiny && d < -tiny) || (c < -tiny && d > tiny));
}
