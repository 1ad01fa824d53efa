/** The cutter for an operation, of those the workshop owns. */
import type { Cutter } from '../cutting/cutter.ts';
import type { PlacedThread } from '../part/part-result.ts';
import { degrees, type Mm } from '../units/quantities.ts';

/**
 * For turning and facing: roughing takes the one that stands the deepest cut, finishing the sharpest edge. Work is fed towards the
 * headstock unless the other way is asked for.
 */
export function turningCutter(
  cutters: readonly Cutter[],
  stage: 'rough' | 'finish' | 'face',
  hand: 'right' | 'left' = 'right',
): Cutter | undefined {
  const usable = cutters.filter(
    (c) =>
      (c.hand === hand || c.hand === 'neutral') && (c.kind === 'turning' || (stage === 'face' && c.kind === 'facing')),
  );
  const sharpness = { sharp: 0, honed: 1, moulded: 2 } as const;
  const shoulder = usable.filter((c) => c.approachAngle >= 90);
  const from = shoulder.length > 0 ? shoulder : usable;
  if (stage === 'rough')
    return from.toSorted(
      (a, b) => b.maxDepth - a.maxDepth || Number(b.material === 'carbide') - Number(a.material === 'carbide'),
    )[0];
  return from.toSorted((a, b) => sharpness[a.edge] - sharpness[b.edge] || b.noseRadius - a.noseRadius)[0];
}

/** The thickest bar that goes into the hole, of those that reach its bottom if any does. */
export function boringCutter(cutters: readonly Cutter[], hole: Mm, reach: Mm): Cutter | undefined {
  return cutters
    .filter((c) => c.kind === 'boring' && (c.minBore ?? Number.POSITIVE_INFINITY) <= hole + 1e-9)
    .toSorted(
      (a, b) =>
        Number(b.overhang >= reach) - Number(a.overhang >= reach) || (b.barDiameter ?? 0) - (a.barDiameter ?? 0),
    )[0];
}

/** Cutters for inside work where any is entered as one; a workshop that marks none is taken to leave it open. */
function onSide(cutters: readonly Cutter[], kind: Cutter['kind'], inside: boolean): readonly Cutter[] {
  const own = cutters.filter((c) => c.kind === kind);
  const marked = own.filter((c) => (c.inside ?? false) === inside);
  return inside && marked.length === 0 ? own : marked;
}

/** Is a cutter known to work inside? */
export function worksInside(cutter: Cutter): boolean {
  return cutter.inside ?? false;
}

/** The widest grooving cutter that fits. */
export function groovingCutter(cutters: readonly Cutter[], width: Mm, inside: boolean): Cutter | undefined {
  return onSide(cutters, 'grooving', inside)
    .filter((c) => (c.width ?? Number.POSITIVE_INFINITY) <= width + 1e-9)
    .toSorted((a, b) => (b.width ?? 0) - (a.width ?? 0))[0];
}

/** A threading cutter of the thread's own angle. */
export function threadingCutter(cutters: readonly Cutter[], placed: PlacedThread): Cutter | undefined {
  const angle = degrees(placed.thread.flankAngle);
  return onSide(cutters, 'threading', placed.side === 'internal').find(
    (c) => Math.abs((c.flankAngle ?? 0) - angle) <= 0.5,
  );
}

/** How deep a groove is cut for the saw to follow: as deep as the cutter stands, and no more than to half the diameter. */
export function sawGrooveDepth(cutter: Cutter, diameter: Mm): Mm {
  return Math.min(cutter.maxDepth, diameter / 4);
}

export function partingCutter(cutters: readonly Cutter[]): Cutter | undefined {
  return cutters.find((c) => c.kind === 'parting');
}
