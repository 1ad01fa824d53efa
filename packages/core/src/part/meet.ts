/** Where two segments cut each other, and how near they come. */
import type { Mm } from '../units/quantities.ts';
import { circleCircle, lineCircle } from './corner.ts';
import type { Point, Segment, Vector } from './outline-types.ts';
import { bounds, cross, distance, dot, fractionOf, minus, plus, tangentAt, unit } from './segment.ts';

/** Slack, as a length, within which a point counts as lying on a segment. */
const slack: Mm = 1e-9;

function isOn(segment: Segment, point: Vector): boolean {
  const length =
    segment.kind === 'line' ? distance(segment.from, segment.to) : segment.radius * Math.abs(segment.sweep);
  const t = fractionOf(segment, point);
  return t >= -slack / length && t <= 1 + slack / length;
}

/** Points that lie on both segments; segments that run along each other give none. */
export function meetings(a: Segment, b: Segment): Point[] {
  return carrierMeetings(a, b).filter((p) => isOn(a, p) && isOn(b, p));
}

function carrierMeetings(a: Segment, b: Segment): Vector[] {
  if (a.kind === 'arc') return b.kind === 'arc' ? circleCircle(a, b) : lineCircle(carrier(b), a);
  if (b.kind === 'arc') return lineCircle(carrier(a), b);
  const u = tangentAt(a, 0);
  const v = tangentAt(b, 0);
  const turn = cross(u, v);
  return Math.abs(turn) < 1e-12 ? [] : [plus(a.from, u, cross(minus(b.from, a.from), v) / turn)];
}

const carrier = (s: Segment) => ({ point: s.from, direction: tangentAt(s, 0) });

export interface Gap {
  readonly distance: Mm;
  readonly onA: Point;
  readonly onB: Point;
}

/** The least distance between two segments, and where. */
export function leastGap(a: Segment, b: Segment): Gap {
  const met = meetings(a, b)[0];
  if (met) return { distance: 0, onA: met, onB: met };
  const gaps: Gap[] = [
    ...[a.from, a.to].map((p) => between(p, nearest(b, p))),
    ...[b.from, b.to].map((p) => between(nearest(a, p), p)),
  ];
  const square = [...extremes(a, b).map((p) => between(p, nearest(b, p)))];
  gaps.push(...square, ...extremes(b, a).map((p) => between(nearest(a, p), p)));
  return gaps.reduce((best, g) => (g.distance < best.distance ? g : best));
}

/** A lower bound of the distance, from the boxes around the two. */
export function boxGap(a: Segment, b: Segment): Mm {
  const p = bounds(a);
  const q = bounds(b);
  const dz = Math.max(0, q.min.z - p.max.z, p.min.z - q.max.z);
  const dr = Math.max(0, q.min.r - p.max.r, p.min.r - q.max.r);
  return Math.hypot(dz, dr);
}

function between(onA: Point, onB: Point): Gap {
  return { distance: distance(onA, onB), onA, onB };
}

/** Nearest point of the segment. */
export function nearest(segment: Segment, point: Vector): Point {
  const onCarrier =
    segment.kind === 'line'
      ? plus(segment.from, tangentAt(segment, 0), dot(minus(point, segment.from), tangentAt(segment, 0)))
      : plus(segment.centre, unit(minus(point, segment.centre)), segment.radius);
  if (isOn(segment, onCarrier)) return onCarrier;
  return distance(point, segment.from) < distance(point, segment.to) ? segment.from : segment.to;
}

/** Points of arc `a` at which it runs parallel to `b`: where a common perpendicular can stand. */
function extremes(a: Segment, b: Segment): Point[] {
  if (a.kind !== 'arc') return [];
  const direction =
    b.kind === 'line' ? { z: -tangentAt(b, 0).r, r: tangentAt(b, 0).z } : unit(minus(b.centre, a.centre));
  return [plus(a.centre, direction, a.radius), plus(a.centre, direction, -a.radius)].filter((p) => isOn(a, p));
}
