/** The stretches of an outline that lie inside a circle, cut exactly. */
import type { Point, Segment } from '../part/outline-types.ts';
import { pointAt, stretch } from '../part/segment.ts';
import type { Bound } from './hatch.ts';

export function insideCircle(chain: readonly Segment[], bound: Bound): Segment[] {
  return chain.flatMap((segment) => {
    const cuts = [0, ...cutsAt(segment, bound), 1].toSorted((a, b) => a - b);
    return cuts.slice(1).flatMap((to, i) => {
      const from = cuts[i] ?? 0;
      if (to - from < 1e-9 || !contains(bound, pointAt(segment, (from + to) / 2))) return [];
      return [stretch(segment, from, to)];
    });
  });
}

function contains(bound: Bound, p: Point): boolean {
  return Math.hypot(p.z - bound.z, p.r - bound.r) <= bound.radius;
}

/** Fractions of the way along a segment at which it meets the circle. */
function cutsAt(segment: Segment, bound: Bound): number[] {
  return segment.kind === 'line' ? lineCuts(segment, bound) : arcCuts(segment, bound);
}

function lineCuts(segment: Segment, bound: Bound): number[] {
  const dz = segment.to.z - segment.from.z;
  const dr = segment.to.r - segment.from.r;
  const [z, r] = [segment.from.z - bound.z, segment.from.r - bound.r];
  const a = dz ** 2 + dr ** 2;
  const b = z * dz + r * dr;
  const under = b ** 2 - a * (z ** 2 + r ** 2 - bound.radius ** 2);
  if (a === 0 || under <= 0) return [];
  const root = Math.sqrt(under);
  return [(-b - root) / a, (-b + root) / a].filter((t) => t > 0 && t < 1);
}

/** Two circles meet on the line across their centres' line; the angles about the arc's centre follow from the cosine rule. */
function arcCuts(arc: Extract<Segment, { kind: 'arc' }>, bound: Bound): number[] {
  const apart = Math.hypot(bound.z - arc.centre.z, bound.r - arc.centre.r);
  if (apart === 0) return [];
  const cosine = (apart ** 2 + arc.radius ** 2 - bound.radius ** 2) / (2 * apart * arc.radius);
  if (Math.abs(cosine) >= 1) return [];
  const towards = Math.atan2(bound.r - arc.centre.r, bound.z - arc.centre.z);
  const start = Math.atan2(arc.from.r - arc.centre.r, arc.from.z - arc.centre.z);
  const turn = 2 * Math.PI;
  return [towards + Math.acos(cosine), towards - Math.acos(cosine)]
    .map((angle) => ((((angle - start) * Math.sign(arc.sweep)) % turn) + turn) % turn)
    .map((turned) => turned / Math.abs(arc.sweep))
    .filter((t) => t > 0 && t < 1);
}
