/** What can be done to a corner between two segments: round it or break it. */
import type { Mm } from '../units/quantities.ts';
import type { Segment, Vector } from './outline-types.ts';
import {
  cross,
  distance,
  dot,
  fractionOf,
  fractionsAt,
  type Label,
  leftOf,
  line,
  minus,
  plus,
  pointAt,
  size,
  stretch,
  tangentAt,
  unit,
} from './segment.ts';

/** Positive: the path turns left at the corner. 0 where it runs on smoothly. */
export function turnAt(a: Segment, b: Segment): number {
  const turn = cross(tangentAt(a, 1), tangentAt(b, 0));
  if (Math.abs(turn) > 1e-6) return turn;
  return dot(tangentAt(a, 1), tangentAt(b, 0)) > 0 ? 0 : 1;
}

/** `a`, the tangent arc of `radius`, `b`; undefined when it does not fit on the two segments. */
export function rounded(a: Segment, b: Segment, radius: Mm, labels: Label): Segment[] | undefined {
  const side = Math.sign(turnAt(a, b));
  if (side === 0) return undefined;
  const corner = a.to;
  const centres = crossings(offset(a, side * radius), offset(b, side * radius))
    .map((centre) => ({ centre, onA: foot(a, centre), onB: foot(b, centre) }))
    .map((c) => ({ ...c, ta: fractionOf(a, c.onA), tb: fractionOf(b, c.onB) }))
    .filter((c) => c.ta > -1e-9 && c.ta <= 1 + 1e-9 && c.tb >= -1e-9 && c.tb < 1 + 1e-9)
    .filter((c) => Math.abs(distance(c.centre, c.onA) - radius) < 1e-7)
    .sort((p, q) => distance(p.centre, corner) - distance(q.centre, corner));
  const best = centres[0];
  if (!best) return undefined;
  const first = stretch(a, 0, best.ta);
  const last = stretch(b, best.tb, 1);
  const u = minus(first.to, best.centre);
  const v = minus(last.from, best.centre);
  const turn = Math.atan2(cross(u, v), dot(u, v)) * side;
  if (turn <= 1e-9) return undefined;
  const sweep = side * turn;
  return [first, { kind: 'arc', from: first.to, to: last.from, centre: best.centre, radius, sweep, ...labels }, last];
}

/**
 * `a`, a straight chamfer, `b`. Where one of the two stands up from the other (a face, a dome over a bore) it gives up `across` in radius
 * and the other `along`; where the surface runs on past the corner, each side gives up half of `along`.
 */
export function chamfered(a: Segment, b: Segment, along: Mm, across: Mm, labels: Label): Segment[] | undefined {
  const back = tangentAt(a, 1);
  const on = tangentAt(b, 0);
  const runsOn = back.z * on.z > 1e-9;
  const isSteepA = Math.abs(back.z) < Math.abs(on.z);
  const ta = runsOn ? givenUp(a, 1, 'z', along / 2) : givenUp(a, 1, isSteepA ? 'r' : 'z', isSteepA ? across : along);
  const tb = runsOn ? givenUp(b, 0, 'z', along / 2) : givenUp(b, 0, isSteepA ? 'z' : 'r', isSteepA ? along : across);
  if (ta === undefined || tb === undefined) return undefined;
  return [stretch(a, 0, ta), line(pointAt(a, ta), pointAt(b, tb), labels), stretch(b, tb, 1)];
}

/** Fraction of the segment at which a chamfer begins that takes `amount` of one coordinate from its end `at` (0 or 1). */
function givenUp(segment: Segment, at: 0 | 1, axis: 'z' | 'r', amount: Mm): number | undefined {
  const corner = at === 1 ? segment.to : segment.from;
  const away = at === 1 ? -1 : 1;
  const found = fractionsAt(segment, axis, corner[axis] + away * Math.sign(tangentAt(segment, at)[axis]) * amount);
  return at === 1 ? found.at(-1) : found[0];
}

type Carrier =
  | { readonly kind: 'line'; readonly point: Vector; readonly direction: Vector }
  | { readonly kind: 'circle'; readonly centre: Vector; readonly radius: Mm };

function offset(segment: Segment, left: Mm): Carrier {
  if (segment.kind === 'line') {
    const direction = tangentAt(segment, 0);
    return { kind: 'line', point: plus(segment.from, leftOf(direction), left), direction };
  }
  return { kind: 'circle', centre: segment.centre, radius: segment.radius - Math.sign(segment.sweep) * left };
}

function crossings(a: Carrier, b: Carrier): Vector[] {
  if (a.kind === 'line' && b.kind === 'line') {
    const turn = cross(a.direction, b.direction);
    return Math.abs(turn) < 1e-12
      ? []
      : [plus(a.point, a.direction, cross(minus(b.point, a.point), b.direction) / turn)];
  }
  if (a.kind === 'line') return b.kind === 'circle' ? lineCircle(a, b) : [];
  if (b.kind === 'line') return lineCircle(b, a);
  return a.radius > 0 && b.radius > 0 ? circleCircle(a, b) : [];
}

export function lineCircle(
  a: { readonly point: Vector; readonly direction: Vector },
  b: { readonly centre: Vector; readonly radius: Mm },
): Vector[] {
  if (b.radius <= 0) return [];
  const near = dot(minus(b.centre, a.point), a.direction);
  const foot = plus(a.point, a.direction, near);
  const off = distance(foot, b.centre);
  if (off > b.radius * (1 + 1e-12)) return [];
  const half = Math.sqrt(Math.max(0, (b.radius - off) * (b.radius + off)));
  return [plus(foot, a.direction, half), plus(foot, a.direction, -half)];
}

export function circleCircle(
  a: { readonly centre: Vector; readonly radius: Mm },
  b: { readonly centre: Vector; readonly radius: Mm },
): Vector[] {
  const between = minus(b.centre, a.centre);
  const d = size(between);
  if (d < 1e-12 || d > (a.radius + b.radius) * (1 + 1e-12) || d < Math.abs(a.radius - b.radius) * (1 - 1e-12)) {
    return [];
  }
  const along = (d * d + (a.radius - b.radius) * (a.radius + b.radius)) / (2 * d);
  const half = Math.sqrt(Math.max(0, (a.radius - along) * (a.radius + along)));
  const u = unit(between);
  const foot = plus(a.centre, u, along);
  return [plus(foot, leftOf(u), half), plus(foot, leftOf(u), -half)];
}

/** Nearest point of the segment's carrier. */
function foot(segment: Segment, point: Vector): Vector {
  if (segment.kind === 'line') {
    const direction = tangentAt(segment, 0);
    return plus(segment.from, direction, dot(minus(point, segment.from), direction));
  }
  return plus(segment.centre, unit(minus(point, segment.centre)), segment.radius);
}
