/** The sketch of a setup: what is left of the bar, how it is held, and where each operation cuts. */
import type { Scene } from '@sparewright/core/drawing/scene';
import { drawSetup, type SketchLabel } from '@sparewright/core/drawing/setup-sketch';
import type { PartResult } from '@sparewright/core/part/part-result';
import type { Operation, RouteResult, Setup } from '@sparewright/core/route/route-result';
import type { Mm } from '@sparewright/core/units/quantities';
import type { PresentSettings } from '../present/settings.ts';

/** Operations that take the bar down to the part. */
const outsideKinds: readonly Operation['kind'][] = ['rough turn', 'finish turn', 'turn cone', 'turn curve'];

export function setupScene(setup: Setup, part: PartResult, route: RouteResult, settings: PresentSettings): Scene {
  const { outline } = part;
  const rough = roughStretch(setup, route, outline.length);
  return drawSetup({
    outline,
    gripFrom: setup.gripFrom,
    gripTo: setup.gripTo,
    endOut: setup.endOut,
    tailstock: setup.tailstock,
    stockDiameter: route.stock?.diameter ?? outline.largestDiameter,
    stockFrom: rough.from,
    stockTo: rough.to,
    chuckLabel: setup.chuck,
    labels: labels(route.operations.filter((o) => o.setup === setup.id)),
    ...settings,
  });
}

/** Where the work still has the diameter of the bar when this setup begins. */
function roughStretch(setup: Setup, route: RouteResult, length: Mm): { from: Mm; to: Mm } {
  const right = setup.endOut === 'right';
  const end = right ? setup.gripTo + setup.out : setup.gripFrom - setup.out;
  // The bar, or the blank, reaches through the jaws as far as the part does.
  if (setup.number === 1)
    return right ? { from: Math.min(setup.gripFrom, 0), to: end } : { from: end, to: Math.max(setup.gripTo, length) };
  const earlier = new Set(route.setups.filter((s) => s.number < setup.number).map((s) => s.id));
  const turned = route.operations.filter((o) => earlier.has(o.setup) && outsideKinds.includes(o.kind));
  const near = right ? Math.max(...turned.map((o) => o.to)) : Math.min(...turned.map((o) => o.from));
  const start = Number.isFinite(near) ? near : right ? 0 : length;
  return right ? { from: start, to: end } : { from: end, to: start };
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
