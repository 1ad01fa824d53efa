/**
 * Drafts the work inside: centring, the ladder of drills, boring, inner cones, inner grooves.
 */
import type { Drill } from '../cutting/cutter.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { InsideSection } from '../part/schema.ts';
import type { Mm } from '../units/quantities.ts';
import { called, type Draft, dimensionOf, inWords, middle } from './draft.ts';
import type { Holding } from './hold.ts';

/** A first drill above this diameter is led by a smaller one; `common practice`. */
const pilotAbove: Mm = 8;
/** Left in a drilled hole for boring it, on the diameter; `common practice`. */
const boringAllowance: Mm = 1;

/** Drafts for the bores entered from the end that stands out in this setup. */
export function draftInside(part: PartResult, holding: Holding, drills: readonly Drill[]): Draft[] {
  const side = holding.setup.endOut === 'right' ? 'inside right' : 'inside left';
  const sections = part.inside.filter((s) => s.side === side);
  if (sections.length === 0) return [];
  const face = holding.setup.endOut === 'right' ? part.outline.length : 0;
  const depth = (s: Placed<InsideSection>) => Math.max(Math.abs(s.from - face), Math.abs(s.to - face));
  const common = {
    setup: holding.setup.id,
    atFreeEnd: false,
    working: false,
    why: [] as string[],
    cautions: [] as string[],
  };
  const all = sections.map((s) => s.feature.id);
  const centre: Draft = {
    ...common,
    id: `${holding.setup.id}-centre-for-drill`,
    kind: 'centre',
    features: all,
    diameter: 0,
    title: 'Centre for the drill',
    from: face,
    to: face,
    task: { does: 'centre' },
  };
  const drilled = sections.flatMap((s) => drilling(part, holding, s, depth(s), drills, common));
  const holes = drilled.filter((hole, i) => !drilled.some((other, j) => j !== i && coveredBy(hole, other, i > j)));
  const bored = sections.flatMap((s) => boring(part, holding, s, common));
  const grooved = part.grooves
    .filter((g) => g.side === side)
    .map(
      (g): Draft => ({
        ...common,
        id: `${holding.setup.id}-groove-${g.feature.id}`,
        kind: 'groove',
        features: [g.feature.id, g.feature.on],
        diameter: g.largest,
        title: `Cut ${called(part, g.feature.id)} inside to ${inWords(g.largest)}`,
        from: g.from,
        to: g.to,
        task: { does: 'groove', width: g.to - g.from, floor: g.largest, outer: g.smallest, internal: true },
      }),
    );
  return [centre, ...holes, ...bored, ...grooved];
}

/** The same drill goes deeper for another section of the bore (or as deep, and was named first). */
function coveredBy(hole: Draft, other: Draft, later: boolean): boolean {
  if (hole.task.does !== 'drill' || other.task.does !== 'drill' || hole.task.diameter !== other.task.diameter)
    return false;
  return other.task.depth > hole.task.depth || (other.task.depth === hole.task.depth && later);
}

type Common = Pick<Draft, 'setup' | 'atFreeEnd' | 'working' | 'why' | 'cautions'>;

/** Drills on hand that make the hole, smallest first: a pilot when the hole is large, then the largest that leaves enough to bore. */
function drilling(
  part: PartResult,
  holding: Holding,
  s: Placed<InsideSection>,
  depth: Mm,
  drills: readonly Drill[],
  common: Common,
): Draft[] {
  const { feature } = s;
  if (feature.kind === 'undercut') return [];
  const whole = feature.kind === 'drilled';
  const wanted = whole ? s.largest : s.smallest - boringAllowance;
  const twist = drills.filter((d) => d.kind === 'twist').toSorted((a, b) => a.diameter - b.diameter);
  const last = twist.findLast((d) => d.diameter <= wanted + (whole ? 0.1 : 0));
  const exact = !whole || (last !== undefined && Math.abs(last.diameter - wanted) <= 0.1);
  const diameter = last && exact ? last.diameter : wanted;
  const pilot = twist.findLast((d) => d.diameter <= diameter * 0.45);
  const ladder = diameter > pilotAbove && pilot ? [pilot.diameter, diameter] : [diameter];
  // A flat or conical bottom must not be pierced by the point of the drill.
  const pointAngle = feature.kind === 'drilled' ? (feature.pointAngle ?? 118) : 118;
  const point = (d: Mm) => d / 2 / Math.tan((pointAngle * Math.PI) / 360);
  return ladder
    .filter((d) => d > 0.5)
    .map((d) => ({
      ...common,
      id: `${holding.setup.id}-drill-${feature.id}-${String(d).replace('.', '-')}`,
      kind: 'drill' as const,
      features: [feature.id],
      diameter: d,
      title: `Drill ${inWords(d)} for ${called(part, feature.id)}`,
      from: s.from,
      to: s.to,
      task: { does: 'drill' as const, diameter: d, depth: whole ? depth : Math.max(1, depth - point(d)), pointAngle },
      why:
        d === diameter
          ? []
          : ['A pilot hole takes the chisel edge of the large drill out of the cut: a fraction of the thrust.'],
      cautions: ['Clear the chips often; a drill that squeals is hardening the hole: stop, sharpen, feed firmly.'],
    }));
}

function boring(part: PartResult, holding: Holding, s: Placed<InsideSection>, common: Common): Draft[] {
  const { feature } = s;
  if (feature.kind === 'drilled') return [];
  if (feature.kind === 'cone')
    return [
      {
        ...common,
        id: `${holding.setup.id}-turn-cone-${feature.id}`,
        kind: 'turn cone',
        features: [feature.id],
        diameter: s.largest,
        title: `Bore the cone ${called(part, feature.id)} with the top slide set over`,
        from: s.from,
        to: s.to,
        task: {
          does: 'cone',
          where: 'bore',
          startDiameter: s.smallest - boringAllowance,
          cone: { startDiameter: s.largest, endDiameter: s.smallest, length: s.to - s.from },
        },
      },
    ];
  const dimension = dimensionOf(part, feature.id, 'diameter');
  const target = middle(dimension, s.largest);
  return [
    {
      ...common,
      id: `${holding.setup.id}-bore-${feature.id}`,
      kind: 'bore',
      features: [feature.id],
      diameter: s.largest,
      title: `Bore ${called(part, feature.id)} to ${inWords(target)}`,
      from: s.from,
      to: s.to,
      task: {
        does: 'turn',
        target,
        stage: 'finish',
        where: 'bore',
        startDiameter: s.largest - boringAllowance,
        tolerance: dimension && dimension.max - dimension.min,
        finish: feature.finish,
      },
    },
  ];
}
