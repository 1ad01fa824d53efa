/** Grooves cut into a chain. */
import type { Mm } from '../units/quantities.ts';
import { rounded } from './corner.ts';
import type { Point, Segment } from './outline-types.ts';
import {
  bounds,
  distance,
  fractionsAtZ,
  isSame,
  isVertical,
  label,
  line,
  pointAt,
  same,
  stretch,
  tidy,
} from './segment.ts';

export interface GrooveCut {
  readonly id: string;
  readonly from: Mm;
  readonly to: Mm;
  readonly floor: Mm;
  readonly floorRadius: Mm;
  readonly edgeRadius: Mm;
  /** The near and the far wall stand within the section, not at its end. */
  readonly rims: readonly [boolean, boolean];
  readonly assumed: boolean;
}

export interface Cut {
  readonly chain: Segment[];
  /** The radii that did not fit: field and the room there is. */
  readonly misfits: readonly { readonly field: 'floorRadius' | 'edgeRadius'; readonly room: Mm }[];
}

/** Smallest and largest radius of the chain's surface between two places; undefined where the surface does not reach from one to the other. */
export function radiusBetween(chain: readonly Segment[], from: Mm, to: Mm): { min: Mm; max: Mm } | undefined {
  const boxes = chain
    .filter((s) => !isVertical(s))
    .flatMap((s) => clip(s, from, to))
    .map(bounds);
  const left = Math.min(...boxes.map((b) => b.min.z));
  const right = Math.max(...boxes.map((b) => b.max.z));
  if (!(left <= from + 1e-6 && right >= to - 1e-6)) return undefined;
  return { min: Math.min(...boxes.map((b) => b.min.r)), max: Math.max(...boxes.map((b) => b.max.r)) };
}

/** Cuts a rectangular groove into a chain that runs in the direction of +z; undefined where it runs into a rim that turns back on itself. */
export function cutGroove(chain: readonly Segment[], cut: GrooveCut): Cut | undefined {
  const before = chain.flatMap((s) => (isVertical(s) ? keep(s, s.from.z < cut.from - same) : clip(s, -1e9, cut.from)));
  const after = chain.flatMap((s) => (isVertical(s) ? keep(s, s.from.z > cut.to + same) : clip(s, cut.to, 1e9)));
  const start = before.at(-1)?.to ?? chain[0]?.from ?? { z: cut.from, r: 0 };
  const end = after[0]?.from ?? chain.at(-1)?.to ?? { z: cut.to, r: 0 };
  const low: Point = { z: cut.from, r: cut.floor };
  const high: Point = { z: cut.to, r: cut.floor };
  const labels = label(cut.id, cut.assumed);
  const walls = label(cut.id, cut.assumed, true);
  let built = [...before, line(start, low, walls), line(low, high, labels), line(high, end, walls), ...after];
  built = tidy(built);
  if (built.some((s, i) => i > 0 && distance(s.from, built[i - 1]?.to ?? s.from) > 1e-6)) return undefined;
  const misfits: { field: 'floorRadius' | 'edgeRadius'; room: Mm }[] = [];
  const round = (corner: Point, radius: Mm, field: 'floorRadius' | 'edgeRadius', room: Mm) => {
    if (radius <= 0) return;
    const i = built.findIndex((s) => isSame(s.to, corner));
    const [a, b] = [built[i], built[i + 1]];
    if (!a || !b) return;
    const made = rounded(a, b, radius, labels);
    if (made) built = tidy([...built.slice(0, i), ...made, ...built.slice(i + 2)]);
    else misfits.push({ field, room });
  };
  const width = cut.to - cut.from;
  round(low, cut.floorRadius, 'floorRadius', Math.min(width / 2, Math.abs(start.r - cut.floor)));
  round(high, cut.floorRadius, 'floorRadius', Math.min(width / 2, Math.abs(end.r - cut.floor)));
  if (cut.rims[0]) round(start, cut.edgeRadius, 'edgeRadius', Math.abs(start.r - cut.floor));
  if (cut.rims[1]) round(end, cut.edgeRadius, 'edgeRadius', Math.abs(end.r - cut.floor));
  return { chain: built, misfits };
}

const keep = (segment: Segment, wanted: boolean): Segment[] => (wanted ? [segment] : []);

/** The stretch of a segment that lies between two places along the axis. */
function clip(segment: Segment, from: Mm, to: Mm): Segment[] {
  const ends = [0, ...fractionsAtZ(segment, from), ...fractionsAtZ(segment, to), 1].sort((a, b) => a - b);
  return ends.slice(1).flatMap((t, i) => {
    const s = ends[i] ?? 0;
    const middle = pointAt(segment, (s + t) / 2).z;
    // An arc that only touches the line there gives a piece of no width, which is none.
    return middle > from + same && middle < to - same ? tidy([stretch(segment, s, t)]) : [];
  });
}
