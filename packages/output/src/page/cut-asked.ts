/** The hardest cut of an operation as the questions about the lathe take it: the work as it stands out of the jaws at that moment. */
import { radiusAt } from '@sparewright/core/drawing/view';
import { bendingShare, usualTolerance } from '@sparewright/core/route/practice';
import type { Operation, Setup, WorkOutline } from '@sparewright/core/route/route-result';
import type { Mm } from '@sparewright/core/units/quantities';
import type { CutAsked } from '../present/job-view.ts';
import type { PacketContext } from '../sheets/context.ts';

const asks: Partial<Record<Operation['kind'], CutAsked['operation']>> = {
  face: 'facing',
  bore: 'boring',
  'rough turn': 'turning',
  'finish turn': 'turning',
  'turn cone': 'turning',
  'turn curve': 'turning',
  groove: 'grooving',
  'part off': 'parting',
};

/** @returns undefined for what is no cut, has no cutter, or stands off the work that is out of the jaws */
export function cutAsked(
  operation: Operation,
  setup: Setup,
  before: WorkOutline,
  { job, workshop, assessment }: PacketContext,
): CutAsked | undefined {
  const { cut, cutterId } = operation;
  const kind = operation.side === 'inside' && operation.kind.endsWith('turn') ? 'boring' : asks[operation.kind];
  const cutter = workshop?.cutters.find((c) => c.id === cutterId);
  const material = job.part?.material;
  if (!cut || !kind || !cutter || material === undefined || operation.wish?.skipped) return undefined;
  // What bends then is the mandrel, of another material; the questions know only the work.
  if (setup.mandrel) return undefined;
  if (kind === 'boring' && cutter.barDiameter === undefined) return undefined;
  const plunges = kind === 'grooving' || kind === 'parting';
  if (plunges && cutter.width === undefined) return undefined;
  const right = setup.endOut === 'right';
  const jaw = setup.freeFrom;
  const out = (z: Mm): Mm => (right ? z - jaw : jaw - z);
  const sections = sectionsOut(before, jaw, right);
  const end = sections.reduce((sum, s) => sum + s.length, 0);
  const [near, far] = [out(operation.from), out(operation.to)].toSorted((a, b) => a - b);
  const to = kind === 'facing' ? end : Math.min(end, far ?? end);
  const from = kind === 'facing' ? 0 : Math.max(0, Math.min(near ?? 0, to - 0.1));
  if (!(to > from)) return undefined;
  const stretch = kind === 'facing' ? end - 0.01 : (from + to) / 2;
  const diameter = diameterAt(sections, stretch);
  if (!(diameter > 0)) return undefined;
  const bands = (assessment.part?.dimensions ?? []).filter(
    (d) => d.kind === `${operation.side} diameter` && operation.features.includes(d.feature),
  );
  const band = Math.min(usualTolerance, ...bands.map((d) => d.max - d.min).filter((b) => b > 0));
  return {
    operation: kind,
    cutter: cutter.id,
    material,
    sections,
    grip: setup.stiffOver,
    tailstock: setup.tailstock,
    from,
    to,
    diameter,
    depth: plunges ? (cutter.width ?? cut.depth) : cut.depth,
    feed: cut.feed,
    speed: cut.speed,
    // As the route itself holds it: bending may take up a share of the tolerance in the last cut.
    ...(operation.kind === 'finish turn' ? { sizeLimit: Math.max(0.002, bendingShare * band) } : {}),
  };
}

function diameterAt(sections: CutAsked['sections'], at: Mm): Mm {
  let end = 0;
  for (const s of sections) {
    end += s.length;
    if (at <= end) return s.outerDiameter;
  }
  return sections.at(-1)?.outerDiameter ?? 0;
}

/** Pieces that a sloping or round stretch counts as. */
const slopePieces = 3;
/** Thinner than this is left for nothing to bend [mm]. */
const thinnest: Mm = 0.2;
/** Shorter pieces are passed over [mm]. */
const shortest: Mm = 1e-4;

/** The work from the jaw faces outwards as plain pieces. */
function sectionsOut({ outside, inside, from, to }: WorkOutline, jaw: Mm, right: boolean): CutAsked['sections'] {
  const [first, last] = right ? [Math.max(jaw, from), to] : [from, Math.min(jaw, to)];
  const places = [...outside, ...inside].flatMap((s) => {
    const pieces = s.kind === 'arc' || Math.abs(s.to.r - s.from.r) > 1e-9 ? slopePieces : 1;
    return Array.from({ length: pieces + 1 }, (_, i) => s.from.z + ((s.to.z - s.from.z) * i) / pieces);
  });
  const stops = [...new Set([first, last, ...places.filter((z) => z > first && z < last)])].toSorted((a, b) => a - b);
  const pieces = stops.flatMap((z, i) => {
    const before = stops[i - 1];
    if (before === undefined || z - before < shortest) return [];
    const middle = (before + z) / 2;
    const outerDiameter = Math.max(thinnest, 2 * (radiusAt(outside, middle) ?? 0));
    const hole = Math.min(2 * (radiusAt(inside, middle) ?? 0), outerDiameter - thinnest / 2);
    return [{ length: z - before, outerDiameter, ...(hole > 0 ? { innerDiameter: hole } : {}) }];
  });
  return right ? pieces : pieces.toReversed();
}
