/** The stretch of an outline between two places along the part, cut exactly; and the outline turned end for end. */
import type { Outline, Segment } from '../part/outline-types.ts';
import { fractionsAtZ, pointAt, stretch } from '../part/segment.ts';
import type { Mm } from '../units/quantities.ts';

export function between(chain: readonly Segment[], from: Mm, to: Mm): Segment[] {
  return chain.flatMap((segment) => {
    const cuts = [0, ...fractionsAtZ(segment, from), ...fractionsAtZ(segment, to), 1].toSorted((a, b) => a - b);
    return cuts.slice(1).flatMap((end, i) => {
      const start = cuts[i] ?? 0;
      const { z } = pointAt(segment, (start + end) / 2);
      return end - start < 1e-9 || z < from || z > to ? [] : [stretch(segment, start, end)];
    });
  });
}

/** The same part seen from the other side: z runs the other way. */
export function mirrored(outline: Outline): Outline {
  const { outside, insideLeft, insideRight } = outline;
  return {
    ...outline,
    outside: outside.map(mirroredSegment),
    insideLeft: insideLeft.map(mirroredSegment),
    insideRight: insideRight.map(mirroredSegment),
  };
}

function mirroredSegment(segment: Segment): Segment {
  const from = { ...segment.from, z: -segment.from.z };
  const to = { ...segment.to, z: -segment.to.z };
  if (segment.kind === 'line') return { ...segment, from, to };
  return { ...segment, from, to, centre: { ...segment.centre, z: -segment.centre.z }, sweep: -segment.sweep };
}
