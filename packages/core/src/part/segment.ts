/** Straight lines and circular arcs in the half-plane of the part: making, walking along, cutting and turning them round. */
import type { Mm, Radian } from '../units/quantities.ts';
import type { Arc, Line, Point, Segment, Vector } from './outline-types.ts';

/** Nearer than this, two points are the same point. */
export const same: Mm = 1e-9;

/** What a segment tells of where it comes from. */
export type Label = Pick<Segment, 'feature' | 'assumed' | 'face'>;

export function label(feature: string, assumed = false, face = false): Label {
  return { feature, ...(assumed ? { assumed: true } : {}), ...(face ? { face: true } : {}) };
}

export function labelOf(segment: Segment): Label {
  return label(segment.feature, segment.assumed === true, segment.face === true);
}

export const minus = (a: Vector, b: Vector): Vector => ({ z: a.z - b.z, r: a.r - b.r });
export const plus = (a: Vector, b: Vector, times = 1): Vector => ({ z: a.z + b.z * times, r: a.r + b.r * times });
export const dot = (a: Vector, b: Vector): number => a.z * b.z + a.r * b.r;
/** Positive when `b` points to the left of `a`. */
export const cross = (a: Vector, b: Vector): number => a.z * b.r - a.r * b.z;
export const size = (a: Vector): number => Math.hypot(a.z, a.r);
export const distance = (a: Vector, b: Vector): number => size(minus(a, b));
export const leftOf = (a: Vector): Vector => ({ z: -a.r, r: a.z });
export const unit = (a: Vector): Vector => {
  const s = size(a);
  return s === 0 ? { z: 0, r: 0 } : { z: a.z / s, r: a.r / s };
};
export const isSame = (a: Vector, b: Vector): boolean => distance(a, b) <= same;

export function line(from: Point, to: Point, labels: Label): Line {
  return { kind: 'line', from, to, ...labels };
}

/** The arc that leaves `from` in the direction `tangent` and arrives at `to`; a line when it is straight or would be a full turn. */
export function arcLeaving(from: Point, tangent: Vector, to: Point, labels: Label): Segment {
  const chord = minus(to, from);
  const along = dot(tangent, chord);
  const aside = cross(tangent, chord);
  const half = Math.atan2(aside, along);
  if (Math.abs(half) < 1e-8 || Math.abs(half) > Math.PI - 1e-8) return line(from, to, labels);
  const radius = size(chord) / (2 * Math.abs(Math.sin(half)));
  const centre = plus(from, leftOf(unit(tangent)), Math.sign(half) * radius);
  return { kind: 'arc', from, to, centre, radius, sweep: 2 * half, ...labels };
}

export function isVertical(segment: Segment): boolean {
  return segment.kind === 'line' && Math.abs(segment.to.z - segment.from.z) <= same;
}

export function startAngle(arc: Arc): Radian {
  return Math.atan2(arc.from.r - arc.centre.r, arc.from.z - arc.centre.z);
}

/** The point a fraction `t` of the way along. Stays exact on arcs of very large radius. */
export function pointAt(segment: Segment, t: number): Point {
  if (t <= 0) return segment.from;
  if (t >= 1) return segment.to;
  if (segment.kind === 'line') return plus(segment.from, minus(segment.to, segment.from), t);
  const half = (segment.sweep * t) / 2;
  const angle = startAngle(segment) + half;
  return plus(segment.from, { z: -Math.sin(angle), r: Math.cos(angle) }, 2 * segment.radius * Math.sin(half));
}

/** Direction of travel a fraction `t` of the way along. */
export function tangentAt(segment: Segment, t: number): Vector {
  if (segment.kind === 'line') return unit(minus(segment.to, segment.from));
  const angle = startAngle(segment) + segment.sweep * t;
  const s = Math.sign(segment.sweep);
  return { z: -s * Math.sin(angle), r: s * Math.cos(angle) };
}

export function lengthOf(segment: Segment): Mm {
  return segment.kind === 'line' ? distance(segment.from, segment.to) : segment.radius * Math.abs(segment.sweep);
}

/** The stretch from fraction `a` to fraction `b`. */
export function stretch(segment: Segment, a: number, b: number): Segment {
  if (a <= 0 && b >= 1) return segment;
  const from = pointAt(segment, a);
  const to = pointAt(segment, b);
  return segment.kind === 'line'
    ? { ...segment, from, to }
    : { ...segment, from, to, sweep: segment.sweep * (Math.min(b, 1) - Math.max(a, 0)) };
}

export function reversed(segment: Segment): Segment {
  const turned = { ...segment, from: segment.to, to: segment.from };
  return turned.kind === 'arc' ? { ...turned, sweep: -turned.sweep } : turned;
}

export function reversedChain(chain: readonly Segment[]): Segment[] {
  return chain.map(reversed).reverse();
}

/** Fraction of the way along at which `point`, known to lie on the carrier, is met; outside 0 … 1 when it is off the segment. */
export function fractionOf(segment: Segment, point: Vector): number {
  if (segment.kind === 'line') {
    const along = minus(segment.to, segment.from);
    return dot(minus(point, segment.from), along) / dot(along, along);
  }
  const a = minus(segment.from, segment.centre);
  const b = minus(point, segment.centre);
  const turn = Math.atan2(cross(a, b), dot(a, b)) * Math.sign(segment.sweep);
  const sweep = Math.abs(segment.sweep);
  // A little behind the start is a little negative; the point farthest from the middle of the arc divides before from after.
  const ahead = turn < (sweep - 2 * Math.PI) / 2 ? turn + 2 * Math.PI : turn;
  return ahead / sweep;
}

/** Fractions of the way along, in order, at which the segment stands at `z`. Empty for a vertical line. */
export function fractionsAtZ(segment: Segment, z: Mm): number[] {
  return fractionsAt(segment, 'z', z);
}

/** Fractions of the way along, in order, at which one coordinate has a value. Empty for a line on which it does not change. */
export function fractionsAt(segment: Segment, axis: 'z' | 'r', value: number): number[] {
  if (segment.kind === 'line') {
    const change = segment.to[axis] - segment.from[axis];
    if (Math.abs(change) <= same) return [];
    return inside([(value - segment.from[axis]) / change], lengthOf(segment));
  }
  const { centre, radius } = segment;
  const off = value - centre[axis];
  const square = (radius - off) * (radius + off);
  if (square < -2 * same * radius) return [];
  const half = Math.sqrt(Math.max(0, square));
  const points = [half, -half].map((h) =>
    axis === 'z' ? { z: value, r: centre.r + h } : { z: centre.z + h, r: value },
  );
  return inside(
    points.map((p) => fractionOf(segment, p)),
    lengthOf(segment),
  );
}

function inside(fractions: readonly number[], length: Mm): number[] {
  const slack = same / length;
  const kept = fractions.filter((t) => t >= -slack && t <= 1 + slack).map((t) => Math.min(1, Math.max(0, t)));
  return kept.sort((a, b) => a - b).filter((t, i) => i === 0 || t - (kept[i - 1] ?? 0) > slack);
}

/** Smallest and largest z and r over the segment. */
export function bounds(segment: Segment): { min: Vector; max: Vector } {
  const points: Vector[] = [segment.from, segment.to];
  if (segment.kind === 'arc') {
    for (const [z, r] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      const extreme = plus(segment.centre, { z, r }, segment.radius);
      const t = fractionOf(segment, extreme);
      if (t > 0 && t < 1) points.push(extreme);
    }
  }
  const zs = points.map((p) => p.z);
  const rs = points.map((p) => p.r);
  return { min: { z: Math.min(...zs), r: Math.min(...rs) }, max: { z: Math.max(...zs), r: Math.max(...rs) } };
}

/** Joins what follows on without a corner and without a gap: zero-length segments go, points of one corner become one point. */
export function tidy(chain: readonly Segment[]): Segment[] {
  return chain.filter((s) => lengthOf(s) > same);
}
