/**
 * Takes a curved section of the outline and lays it out from the free end, as the steps need it.
 */
import type { Arc, Segment } from '../part/outline-types.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { OutsideSection } from '../part/schema.ts';
import type { End } from './hold.ts';
import type { StepCurve } from './tables/curve-steps.ts';

/**
 * The curve seen from the free end, or undefined when it narrows away from it (an undercut that steps from this side cannot make).
 */
export function stepCurveOf(part: PartResult, section: Placed<OutsideSection>, endOut: End): StepCurve | undefined {
  const own = part.outline.outside.filter(
    (s) => s.feature === section.feature.id && Math.abs(s.to.z - s.from.z) > 1e-9,
  );
  const pieces =
    endOut === 'right' ? own.toReversed().map((s) => turned(s, section.to)) : own.map((s) => shifted(s, section.from));
  if (pieces.length === 0 || pieces.some((p) => p.to.r < p.from.r - 1e-9)) return undefined;
  return { pieces, depth: section.to - section.from };
}

function shifted(s: Segment, origin: number): Segment {
  const move = <P extends { readonly z: number; readonly r: number }>(p: P): P => ({ ...p, z: p.z - origin });
  return s.kind === 'line'
    ? { ...s, from: move(s.from), to: move(s.to) }
    : { ...s, from: move(s.from), to: move(s.to), centre: move(s.centre) };
}

/** Seen from the right end: z runs the other way and the piece is walked backwards; an arc's turn keeps its sign under both. */
function turned(s: Segment, end: number): Segment {
  const flip = <P extends { readonly z: number; readonly r: number }>(p: P): P => ({ ...p, z: end - p.z });
  if (s.kind === 'line') return { ...s, from: flip(s.to), to: flip(s.from) };
  const arc: Arc = { ...s, from: flip(s.to), to: flip(s.from), centre: flip(s.centre) };
  return arc;
}
