/** From the part's half-plane onto the sheet. */
import type { Point, Segment } from '../part/outline-types.ts';
import { pointAt, tangentAt } from '../part/segment.ts';
import type { Mm, Radian } from '../units/quantities.ts';
import type { Stretch } from './box.ts';
import type { At, PathPart } from './scene.ts';

/** Where the left face meets the axis on the sheet, and how large the part is drawn. */
export interface View {
  readonly x: Mm;
  readonly y: Mm;
  readonly scale: number;
}

/** The half of the view above the axis or the one below it. */
export type Half = 'upper' | 'lower';

export function place(view: View, point: { readonly z: Mm; readonly r: number }, half: Half = 'upper'): At {
  const up = half === 'upper' ? 1 : -1;
  return { x: view.x + point.z * view.scale, y: view.y - up * point.r * view.scale };
}

/** One continuous path along a run of segments. */
export function runParts(run: readonly Segment[], view: View, half: Half = 'upper'): PathPart[] {
  const first = run[0];
  if (!first) return [];
  const start = place(view, first.from, half);
  return [
    { to: 'start', ...start },
    ...run.map((segment): PathPart => {
      const end = place(view, segment.to, half);
      if (segment.kind === 'line') return { to: 'line', ...end };
      // Seen with the axis pointing right and the radius up, a positive turn runs anticlockwise.
      const clockwise = segment.sweep < 0 === (half === 'upper');
      const largeArc = Math.abs(segment.sweep) > Math.PI;
      return { to: 'arc', ...end, radius: segment.radius * view.scale, largeArc, clockwise };
    }),
  ];
}

/** Consecutive segments of the same feature and standing, so that each can be clicked and be drawn in ink or pencil. */
export function runsOf(chain: readonly Segment[]): Segment[][] {
  const runs: Segment[][] = [];
  for (const segment of chain) {
    const last = runs.at(-1);
    const before = last?.at(-1);
    if (last && before && joins(before, segment)) {
      last.push(segment);
    } else runs.push([segment]);
  }
  return runs;
}

function joins(before: Segment, after: Segment): boolean {
  const apart = Math.hypot(after.from.z - before.to.z, after.from.r - before.to.r);
  return apart < 1e-9 && before.feature === after.feature && !before.assumed === !after.assumed;
}

/** Straight pieces that follow the segments closely enough to tell whether something is in their way. */
export function chords(chain: readonly Segment[], view: View, half: Half = 'upper'): Stretch[] {
  return chain.flatMap((segment) => {
    const points = [segment.from, ...(segment.kind === 'arc' ? arcPoints(segment) : []), segment.to];
    return points.slice(1).map((point, i) => {
      const before = points[i] ?? point;
      return { a: place(view, before, half), b: place(view, point, half) };
    });
  });
}

function arcPoints(arc: Extract<Segment, { kind: 'arc' }>): Point[] {
  const pieces = Math.max(2, Math.ceil(Math.abs(arc.sweep) / 0.25));
  return Array.from({ length: pieces - 1 }, (_, i) => pointAt(arc, (i + 1) / pieces));
}

/** Direction of a segment a fraction of the way along it. */
export function headingAt(segment: Segment, fraction: number): Radian {
  const { z, r } = tangentAt(segment, fraction);
  return Math.atan2(r, z);
}

/** Outside radius at a place along the part; the larger one on a shoulder. */
export function radiusAt(chain: readonly Segment[], z: Mm): Mm | undefined {
  let largest: Mm | undefined;
  for (const segment of chain) {
    const [low, high] = [Math.min(segment.from.z, segment.to.z), Math.max(segment.from.z, segment.to.z)];
    if (z < low - 1e-9 || z > high + 1e-9) continue;
    const r = segmentRadius(segment, z);
    if (r !== undefined && (largest === undefined || r > largest)) largest = r;
  }
  return largest;
}

function segmentRadius(segment: Segment, z: Mm): Mm | undefined {
  const { from, to } = segment;
  if (Math.abs(to.z - from.z) < 1e-9) return Math.max(from.r, to.r);
  if (segment.kind === 'line') return from.r + ((z - from.z) / (to.z - from.z)) * (to.r - from.r);
  const { centre, radius } = segment;
  const rise = Math.sqrt(Math.max(0, radius ** 2 - (z - centre.z) ** 2));
  const middle = pointAt(segment, 0.5);
  return middle.r >= centre.r ? centre.r + rise : centre.r - rise;
}
