/** What others ask of an outline. */
import type { Mm } from '../units/quantities.ts';
import type { Outline, Point, Segment } from './outline-types.ts';
import { bounds, fractionsAtZ, isSame, isVertical, label, line, pointAt, reversedChain, same } from './segment.ts';

/** Largest outside radius at `z`, either side of a step; 0 beyond the ends. */
export function radiusAt(outline: Outline, z: Mm): Mm {
  return largestRadiusAt(outline.outside, z);
}

/** Largest radius of a hole at `z`; 0 where the part is solid. */
export function innerRadiusAt(outline: Outline, z: Mm): Mm {
  return Math.max(largestRadiusAt(outline.insideLeft, z), largestRadiusAt(outline.insideRight, z));
}

function largestRadiusAt(chain: readonly Segment[], z: Mm): Mm {
  let largest = 0;
  for (const s of chain) {
    const reaches = z >= Math.min(s.from.z, s.to.z) - same && z <= Math.max(s.from.z, s.to.z) + same;
    if (isVertical(s)) {
      if (reaches) largest = Math.max(largest, s.from.r, s.to.r);
    } else if (reaches || s.kind === 'arc') {
      for (const t of fractionsAtZ(s, z)) largest = Math.max(largest, pointAt(s, t).r);
    }
  }
  return largest;
}

/** The half-section as one closed path: outside from left to right, back through the holes and along the axis. */
export function closedLoop(outline: Outline): Segment[] {
  const chain = [
    ...outline.outside,
    ...(outline.through ? [] : outline.insideRight),
    ...reversedChain(outline.insideLeft),
  ];
  return chain.flatMap((segment, i) => {
    const next = chain[(i + 1) % chain.length];
    const axis = next && !isSame(segment.to, next.from) ? [line(segment.to, next.from, label('axis'))] : [];
    return [segment, ...axis];
  });
}

/**
 * Points along a segment, both ends included, so near that the straight lines between them stay within `tolerance` of it.
 *
 * @internal for tests that look at an outline by sampling it
 */
export function segmentPoints(segment: Segment, tolerance: Mm): Point[] {
  if (segment.kind === 'line') return [segment.from, segment.to];
  const step = 2 * Math.acos(Math.max(0, 1 - Math.max(tolerance, 1e-9) / segment.radius));
  const pieces = Math.min(10_000, Math.max(1, Math.ceil(Math.abs(segment.sweep) / Math.max(step, 1e-6))));
  return Array.from({ length: pieces + 1 }, (_, i) => pointAt(segment, i / pieces));
}

/**
 * The box around the half-section: left end, right end and largest radius.
 *
 * @internal for tests
 */
export function boundingBox(outline: Outline): { left: Mm; right: Mm; radius: Mm } {
  const boxes = outline.outside.map(bounds);
  return {
    left: Math.min(...boxes.map((b) => b.min.z), outline.length),
    right: Math.max(...boxes.map((b) => b.max.z), 0),
    radius: Math.max(0, ...boxes.map((b) => b.max.r)),
  };
}
