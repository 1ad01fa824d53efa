/** The sketch of a setup: what is left of the bar, how it is held, and where each operation cuts. */
import type { Scene } from '@sparewright/core/drawing/scene';
import { drawSetup, type SetupSketch, type SketchLabel } from '@sparewright/core/drawing/setup-sketch';
import type { PartResult } from '@sparewright/core/part/part-result';
import type { Operation, RouteResult, Setup, WorkOutline } from '@sparewright/core/route/route-result';
import type { Mm } from '@sparewright/core/units/quantities';
import type { PresentSettings } from '../present/settings.ts';

export function setupScene(setup: Setup, part: PartResult, route: RouteResult, settings: PresentSettings): Scene {
  const own = route.operations.filter((o) => o.setup === setup.id);
  // Cut off, the work no longer hangs together with what the jaws hold.
  const after = own.filter((o) => o.kind !== 'part off').findLast((o) => o.leaves)?.leaves ?? setup.work;
  const largestDiameter = Math.max(part.outline.largestDiameter, widest(setup.work));
  const free = setup.endOut === 'right' ? setup.work.to : setup.work.from;
  return drawSetup({
    outline: {
      outside: after.outside,
      insideLeft: after.inside,
      insideRight: [],
      through: false,
      length: after.to,
      largestDiameter,
    },
    before: { outside: setup.work.outside, insideLeft: setup.work.inside },
    gripFrom: setup.gripFrom,
    gripTo: setup.gripTo,
    endOut: setup.endOut,
    tailstock: setup.tailstock,
    holder: holderOf(setup),
    stockDiameter: widest(setup.work),
    stockFrom: free,
    stockTo: free,
    chuckLabel: holdingName(setup),
    labels: labels(own),
    ...settings,
  });
}

/** `three-jaw chuck, mandrel`, `driving plate and dog, between centres`. */
export function holdingName({ held, chuck }: Pick<Setup, 'held' | 'chuck'>): string {
  if (held === 'on a mandrel') return `${chuck}, mandrel`;
  return held === 'between centres' ? `${chuck} and dog, between centres` : chuck;
}

/** What holds the work where no jaws do. */
export function holderOf({
  held,
  mandrel,
  freeFrom,
}: Pick<Setup, 'held' | 'mandrel' | 'freeFrom'>): SetupSketch['holder'] {
  if (mandrel) return { by: 'mandrel', freeFrom, ...mandrel };
  return held === 'between centres' ? { by: 'dog', freeFrom } : undefined;
}

function widest({ outside }: WorkOutline): Mm {
  return 2 * Math.max(0, ...outside.flatMap((s) => [s.from.r, s.to.r]));
}

/** One label for each stretch that is cut, with the numbers of all operations on it. */
function labels(operations: readonly Operation[]): SketchLabel[] {
  const stretches = new Map<string, Operation[]>();
  for (const o of operations.filter((op) => op.kind !== 'off the lathe' && op.kind !== 'part off')) {
    const stretch = `${o.from.toFixed(2)} ${o.to.toFixed(2)}`;
    stretches.set(stretch, [...(stretches.get(stretch) ?? []), o]);
  }
  return [...stretches.values()].map((on) => {
    const [first] = on;
    return { at: first ? (first.from + first.to) / 2 : 0, text: on.map((o) => o.number).join(', ') };
  });
}
