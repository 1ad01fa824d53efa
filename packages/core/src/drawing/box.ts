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

/**
 * Whether a straight line passes through the inside of a box (Liang and Barsky's clipping). This and the two below are asked some
 * hundred thousand times for a crowded sheet, hence no arrays or objects in them.
 */
export function passesThrough({ a, b }: Stretch, box: Box): boolean {
  if (a.x <= box.left && b.x <= box.left) return false;
  if (a.x >= box.right && b.x >= box.right) return false;
  if (a.y <= box.top && b.y <= box.top) return false;
  if (a.y >= box.bottom && b.y >= box.bottom) return false;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  let enter = 0;
  let leave = 1;
  if (dx !== 0) {
    const [one, other] = [(box.left - a.x) / dx, (box.right - a.x) / dx];
    enter = Math.max(enter, Math.min(one, other));
    leave = Math.min(leave, Math.max(one, other));
  }
  if (dy !== 0) {
    const [one, other] = [(box.top - a.y) / dy, (box.bottom - a.y) / dy];
    enter = Math.max(enter, Math.min(one, other));
    leave = Math.min(leave, Math.max(one, other));
  }
  return leave - enter > 1e-9;
}

/** Whether two straight lines lie so nearly on one another that they would be read as one. */
export function runsAlong(one: Stretch, other: Stretch, apart: Mm = 0.7): boolean {
  const length = Math.hypot(other.b.x - other.a.x, other.b.y - other.a.y);
  if (length < 1e-9) return false;
  const limit = apart * length;
  if (Math.abs(side(one.a, other)) > limit || Math.abs(side(one.b, other)) > limit) return false;
  const a = along(one.a, other) / length;
  const b = along(one.b, other) / length;
  return Math.min(Math.max(a, b), length) - Math.max(Math.min(a, b), 0) > 0.5;
}

/** Whether two straight lines cross at a point inside both. */
export function cross(one: Stretch, other: Stretch): boolean {
  return areApart(side(one.a, other), side(one.b, other)) && areApart(side(other.a, one), side(other.b, one));
}

function areApart(p: number, q: number): boolean {
  const tiny = 1e-9;
  return (p > tiny && q < -tiny) || (p < -tiny && q > tiny);
}

/** Distance of a point from a line, times the line's length; its sign tells the side. */
function side(p: At, line: Stretch): number {
  return (line.b.x - line.a.x) * (p.y - line.a.y) - (line.b.y - line.a.y) * (p.x - line.a.x);
}

/** How far along a line a point lies, times the line's length. */
function along(p: At, line: Stretch): number {
  return (line.b.x - line.a.x) * (p.x - line.a.x) + (line.b.y - line.a.y) * (p.y - line.a.y);
}
