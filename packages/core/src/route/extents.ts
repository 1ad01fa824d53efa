/** Largest and smallest diameters of curved sections, bulges and waists between their ends included: what roughing must leave standing. */
import type { PartResult, Placed } from '../part/part-result.ts';
import type { OutsideSection } from '../part/schema.ts';
import { bounds } from '../part/segment.ts';

/** The part with the true extents of its outside sections, read off the outline. */
export function withTrueExtents(part: PartResult): PartResult {
  return { ...part, outside: part.outside.map((s) => widened(part, s)) };
}

function widened(part: PartResult, section: Placed<OutsideSection>): Placed<OutsideSection> {
  const { kind, id } = section.feature;
  if (kind === 'cylinder' || kind === 'cone') return section;
  const boxes = part.outline.outside.filter((s) => s.feature === id && !s.face).map(bounds);
  return {
    ...section,
    largest: Math.max(section.largest, ...boxes.map((b) => 2 * b.max.r)),
    smallest: Math.min(section.smallest, ...boxes.map((b) => 2 * Math.max(0, b.min.r))),
  };
}
