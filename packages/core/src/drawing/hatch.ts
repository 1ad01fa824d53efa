/** Section lining: lines at 45° cut exactly against the outline, its arcs included. */
import type { Segment } from '../part/outline-types.ts';
import type { Mm } from '../units/quantities.ts';
import type { PathPart } from './scene.ts';
import { place, type View } from './view.ts';

/** A circle in the part's half-plane that the lining must stay inside. */
export interface Bound {
  readonly z: Mm;
  readonly r: Mm;
  readonly radius: Mm;
}

/** A length of the part that the lining must stay inside; its ends may wave with the radius by less than they rise. */
export interface Strip {
  readonly from: (r: Mm) => Mm;
  readonly to: (r: Mm) => Mm;
}

const root2 = Math.SQRT2;

/**
 * The lining of a region, as one path. A line z + c·cos45° … is described by its offset u = (r − z)/√2 and runs along
 * v = (r + z)/√2; where it crosses the boundary an odd number of times it is inside.
 *
 * @param loop  the segments that bound the material; their order does not matter, the region must be closed by them
 * @param view  where it is drawn
 * @param spacing  distance between the lines on paper [mm]
 * @param bound  what to stay inside: a circle for a detail view, a strip where only a length of the part is cut open
 * @returns one path of separate strokes
 */
export function hatchParts(loop: readonly Segment[], view: View, spacing: Mm, bound?: Bound | Strip): PathPart[] {
  const step = spacing / view.scale;
  const offsets = loop.flatMap((s) => reach(s));
  if (offsets.length === 0) return [];
  const first = Math.ceil(Math.min(...offsets) / step);
  const last = Math.floor(Math.max(...offsets) / step);
  const parts: PathPart[] = [];
  for (let k = first; k <= last; k++) {
    // A hair off round figures, so that a line never runs through a corner and is counted twice.
    const u = (k + 0.137) * step;
    const hits = loop.flatMap((s) => crossings(s, u)).toSorted((a, b) => a - b);
    const limit = bound && stretchIn(bound, u);
    if (bound && !limit) continue;
    for (let i = 0; i + 1 < hits.length; i += 2) {
      const from = Math.max(hits[i] ?? 0, limit?.[0] ?? Number.NEGATIVE_INFINITY);
      const to = Math.min(hits[i + 1] ?? 0, limit?.[1] ?? Number.POSITIVE_INFINITY);
      if (to - from < 0.2 / view.scale) continue;
      parts.push({ to: 'start', ...place(view, point(u, from)) }, { to: 'line', ...place(view, point(u, to)) });
    }
  }
  return parts;
}

function point(u: number, v: number): { z: Mm; r: Mm } {
  return { z: (v - u) / root2, r: (v + u) / root2 };
}

function offset(p: { readonly z: Mm; readonly r: number }): number {
  return (p.r - p.z) / root2;
}

function along(p: { readonly z: Mm; readonly r: number }): number {
  return (p.r + p.z) / root2;
}

/** Offsets between which a segment lies. */
function reach(segment: Segment): number[] {
  const ends = [offset(segment.from), offset(segment.to)];
  if (segment.kind === 'line') return ends;
  const tip = segment.radius / root2;
  const farthest = [1, -1]
    .map((s) => ({ z: segment.centre.z - s * tip, r: segment.centre.r + s * tip }))
    .filter((p) => isOnArc(segment, p));
  return [...ends, ...farthest.map(offset)];
}

/** Where the line of offset `u` crosses a segment, as positions along it. */
function crossings(segment: Segment, u: number): number[] {
  if (segment.kind === 'line') {
    const [a, b] = [offset(segment.from) - u, offset(segment.to) - u];
    if (a < 0 === b < 0) return [];
    const t = a / (a - b);
    return [along(segment.from) + t * (along(segment.to) - along(segment.from))];
  }
  const stretch = circleStretch({ z: segment.centre.z, r: segment.centre.r, radius: segment.radius }, u);
  return stretch ? stretch.filter((v) => isOnArc(segment, point(u, v))) : [];
}

function stretchIn(bound: Bound | Strip, u: number): [number, number] | undefined {
  return 'radius' in bound ? circleStretch(bound, u) : [crossingOf(bound.from, u), crossingOf(bound.to, u)];
}

/** Where the line of offset `u` meets a waving end: both rise along it, the line faster. */
function crossingOf(end: (r: Mm) => Mm, u: number): number {
  let v = root2 * end(0) + u;
  for (let i = 0; i < 40; i++) v = root2 * end(point(u, v).r) + u;
  return v;
}

function circleStretch(bound: Bound, u: number): [number, number] | undefined {
  const away = u - offset(bound);
  if (Math.abs(away) >= bound.radius) return undefined;
  const half = Math.sqrt(bound.radius ** 2 - away ** 2);
  return [along(bound) - half, along(bound) + half];
}

function isOnArc(arc: Extract<Segment, { kind: 'arc' }>, p: { readonly z: Mm; readonly r: Mm }): boolean {
  const angle = (q: { readonly z: Mm; readonly r: number }) => Math.atan2(q.r - arc.centre.r, q.z - arc.centre.z);
  const turn = 2 * Math.PI;
  const way = Math.sign(arc.sweep) * (angle(p) - angle(arc.from));
  const turned = ((way % turn) + turn) % turn;
  return turned < Math.abs(arc.sweep);
}
