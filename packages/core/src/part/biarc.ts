/**
 * A smooth curve through points, made of arcs: between every two points a pair of arcs that meet without a corner.
 *
 * Knowledge: Bolton, Biarc curves, Computer-Aided Design 7 (1975) 89: with end tangents given, one free number remains; here both
 * arcs get equal tangent lengths.
 */
import type { Point, Segment, Vector } from './outline-types.ts';
import { arcLeaving, cross, dot, isSame, type Label, line, minus, plus, reversed, tidy, unit } from './segment.ts';

/** The curve through all points in order. Tangents are those of the circles through each point and its two neighbours. */
export function curveThrough(points: readonly Point[], labels: Label): Segment[] {
  const tangents = points.map((_, i) => tangentAtPoint(points, i));
  return points.slice(1).flatMap((to, i) => {
    const from = points[i];
    const leaving = tangents[i];
    const arriving = tangents[i + 1];
    return from && leaving && arriving ? biarc(from, leaving, to, arriving, labels) : [];
  });
}

/** Two arcs from `a` to `b` with the given unit tangents; one arc or line where one is enough. */
export function biarc(a: Point, ta: Vector, b: Point, tb: Vector, labels: Label): Segment[] {
  const v = minus(b, a);
  if (isSame(a, b)) return [];
  const t = plus(ta, tb);
  const denominator = 2 * (1 - dot(ta, tb));
  const vt = dot(v, t);
  const reach =
    denominator < 1e-12
      ? dot(v, v) / (4 * dot(v, tb))
      : (-vt + Math.sqrt(vt * vt + denominator * dot(v, v))) / denominator;
  if (!Number.isFinite(reach) || reach <= 0) return [line(a, b, labels)];
  const joint = plus(plus(plus(a, v, 0.5), ta, reach / 2), tb, -reach / 2);
  const back = { z: -tb.z, r: -tb.r };
  return tidy([arcLeaving(a, ta, joint, labels), reversed(arcLeaving(b, back, joint, labels))]);
}

function tangentAtPoint(points: readonly Point[], i: number): Vector {
  const last = points.length - 1;
  if (last === 1) return unit(chord(points, 0, 1));
  const middle = Math.min(Math.max(i, 1), last - 1);
  const before = chord(points, middle - 1, middle);
  const after = chord(points, middle, middle + 1);
  const there = circleTangent(before, after);
  if (i === middle) return there;
  // At an end: the circle's tangent there is the middle one mirrored in the chord.
  const c = unit(i === 0 ? before : after);
  return plus({ z: -there.z, r: -there.r }, c, 2 * dot(there, c));
}

/** Tangent, at the point between two chords, of the circle through their three ends. */
function circleTangent(before: Vector, after: Vector): Vector {
  const a = dot(before, before);
  const b = dot(after, after);
  // Weighting each chord's direction slope by the other's length is exact for a circle.
  const mixed = plus({ z: before.z / a, r: before.r / a }, after, 1 / b);
  return Math.abs(cross(before, after)) < 1e-15 && dot(before, after) < 0 ? unit(before) : unit(mixed);
}

function chord(points: readonly Point[], from: number, to: number): Vector {
  const a = points[from];
  const b = points[to];
  return a && b ? minus(b, a) : { z: 1, r: 0 };
}
