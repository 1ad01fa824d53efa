/** Metal left between the outside and the holes. */
import type { Mm } from '../units/quantities.ts';
import { boxGap, type Gap, leastGap } from './meet.ts';
import type { Outline, Segment } from './outline-types.ts';
import type { PlacedThread } from './part-result.ts';
import { bounds, label, line, same } from './segment.ts';

export interface Wall extends Gap {
  /** The features it lies between. */
  readonly outer: string;
  readonly inner: string;
}

/**
 * The thinnest wall, and every place where there is none. A thread counts with its root outside and with its full diameter inside. The end
 * in which a hole opens and the edges at its rim are not walls.
 */
export function thinnestWalls(outline: Outline, threads: readonly PlacedThread[]): Wall[] {
  const { length, through } = outline;
  const isOpen = {
    left: outline.insideLeft.length > 0,
    right: outline.insideRight.length > 0 || through,
  };
  const rim = new Set<Segment | undefined>();
  if (isOpen.left) rim.add(outline.outside[0]);
  if (isOpen.right) rim.add(outline.outside.at(-1));
  const counts = (s: Segment) => !rim.has(s) && !isRimEdge(s, length);
  const outer = [...outline.outside.filter(counts), ...threadLines(threads, 'external')];
  const inner = [...outline.insideLeft, ...outline.insideRight].filter(counts);
  const walls: Wall[] = [];
  let thinnest: Wall | undefined;
  for (const b of [...inner, ...threadLines(threads, 'internal')]) {
    for (const a of outer) {
      if (boxGap(a, b) > (thinnest?.distance ?? Number.POSITIVE_INFINITY)) continue;
      const gap = isBelow(a, b) ? { ...leastGap(a, b), distance: 0 } : leastGap(a, b);
      const wall = { ...gap, outer: a.feature, inner: b.feature };
      if (gap.distance <= same) walls.push(wall);
      if (!thinnest || gap.distance < thinnest.distance) thinnest = wall;
    }
  }
  return walls.length > 0 ? walls : thinnest ? [thinnest] : [];
}

/** The outer segment lies nearer the axis than the inner one over the length they share. */
function isBelow(outer: Segment, inner: Segment): boolean {
  const a = bounds(outer);
  const b = bounds(inner);
  const overlap = Math.min(a.max.z, b.max.z) - Math.max(a.min.z, b.min.z);
  return overlap > same && a.max.r < b.min.r + same;
}

function isRimEdge(s: Segment, length: Mm): boolean {
  const touches = [s.from.z, s.to.z].some((z) => Math.abs(z) < same || Math.abs(z - length) < same);
  return touches && /\.(start|end)Edge$/.test(s.feature);
}

function threadLines(threads: readonly PlacedThread[], side: PlacedThread['side']): Segment[] {
  return threads
    .filter((t) => t.side === side)
    .map(({ id, thread, from, to }) => {
      const r = (side === 'external' ? thread.rootDiameterExternal : thread.majorDiameter) / 2;
      return line({ z: from, r }, { z: to, r }, label(id));
    });
}
