/**
 * Drafts what happens at the corners of the outside: chamfers, rounded edges, fillets and reliefs.
 */
import type { Workshop } from '../lathe/schema.ts';
import type { PartResult, Placed, PlacedThread } from '../part/part-result.ts';
import type { Edge, OutsideSection } from '../part/schema.ts';
import { type Mm, radians } from '../units/quantities.ts';
import { threadingCutter } from './choose-cutter.ts';
import { called, type Draft, inWords, lengthInWords, operation } from './draft.ts';
import type { Holding } from './hold.ts';
import type { Profile } from './profile.ts';
import { piecesOf } from './surfaces.ts';
import { rootOf, threadAim } from './tables/thread-aim.ts';
import { threadChamfer } from './tables/thread-chamfer.ts';

/** An edge of a section, and where it is. */
interface Corner {
  readonly section: Placed<OutsideSection>;
  readonly edge: Edge;
  readonly at: 'start' | 'end';
  /** The neighbour stands higher: the edge lies in an inner corner. */
  readonly inner: boolean;
}

/** The chamfers of each thread, which come before it; reliefs, which are plunged; all other edges of the setup in one operation. */
export function draftEdges(part: PartResult, holding: Holding, workshop: Workshop): Draft[] {
  const corners = holding.sections.flatMap((s) => cornersOf(part, s));
  const threaded = holding.sections.filter((s) =>
    part.threads.some((t) => t.side === 'external' && t.on === s.feature.id),
  );
  const shaped = corners.filter(
    (c) => c.edge.kind !== 'relief' && !(c.edge.kind === 'chamfer' && threaded.includes(c.section)),
  );
  return [
    ...corners.flatMap((c) => relief(part, holding, c)),
    ...threaded.map((s) => threadEnds(part, holding, s, workshop)),
    ...(shaped.length > 0 ? [otherEdges(part, holding, shaped)] : []),
  ];
}

function cornersOf(part: PartResult, section: Placed<OutsideSection>): Corner[] {
  const at = part.outside.indexOf(section);
  const { startEdge, endEdge } = section.feature;
  const inner = (neighbour: Placed<OutsideSection> | undefined) =>
    neighbour !== undefined && neighbour.largest > section.largest + 1e-9;
  return [
    ...(startEdge ? [{ section, edge: startEdge, at: 'start' as const, inner: inner(part.outside[at - 1]) }] : []),
    ...(endEdge ? [{ section, edge: endEdge, at: 'end' as const, inner: inner(part.outside[at + 1]) }] : []),
  ];
}

function relief(part: PartResult, holding: Holding, { section, edge, at }: Corner): Draft[] {
  if (edge.kind !== 'relief') return [];
  const from = at === 'start' ? section.from : section.to - edge.width;
  const floor = section.smallest - 2 * edge.depth;
  return [
    {
      ...operation(holding, 'groove', `${section.feature.id}.${at}-edge`, [section.feature.id], section.largest),
      title: `Cut the relief in the corner of ${called(part, section.feature.id)}, ${lengthInWords(edge.width)} wide, to ${inWords(floor)}`,
      from,
      to: from + edge.width,
      task: { does: 'groove', width: edge.width, floor, outer: section.largest, internal: false },
      removes: { cuts: 'outside', to: piecesOf(part, 'outside', [`${section.feature.id}.${at}Edge`]) },
    },
  ];
}

/** A groove begins or ends no further from the end of a section than this to belong to it [mm]. */
const leastGap: Mm = 1;

/** The chamfers at the ends of a thread: as drawn where those reach below the root, else as the thread needs them. */
function threadEnds(part: PartResult, holding: Holding, section: Placed<OutsideSection>, workshop: Workshop): Draft {
  const { feature, largest } = section;
  const { id } = feature;
  const threads = part.threads.filter((t) => t.on === id && t.side === 'external');
  const root = Math.min(...threads.map((t) => rootBy(t, workshop)));
  const crest = Math.min(largest, ...threads.map((t) => threadAim(t.thread, 'external').crest));
  const drawn = [feature.startEdge, feature.endEdge].flatMap((edge) => (edge?.kind === 'chamfer' ? [edge] : []));
  const reach = drawn.map((c) => largest - 2 * c.size * Math.tan(radians(c.angle ?? 45)));
  const small = Math.max(...reach);
  const deep = drawn.length > 0 && small <= root;
  const needed = crest > root ? threadChamfer(crest, root) : undefined;
  const [first] = drawn;
  const size =
    deep && first
      ? `${lengthInWords(first.size)} × ${Number((first.angle ?? 45).toFixed(1))}°`
      : needed
        ? `45° to ${inWords(needed.diameter)}, ${lengthInWords(Number(needed.length.toFixed(2)))} long`
        : '45°';
  return {
    ...operation(holding, 'chamfer', `thread-${id}`, [id], largest),
    title: `Chamfer ${endsOf(part, section, root)} of ${called(part, id)}, ${size}, to below the root of the thread, ${inWords(Number(root.toFixed(2)))}`,
    from: section.from,
    to: section.to,
    task: { does: 'plain' },
    removes: { cuts: 'outside', to: chamfersOf(part, section) },
    why: [
      ...(deep
        ? []
        : [
            drawn.length === 0
              ? 'None is drawn, but a thread wants one: without it the first turn is a thin burr that cuts the hand and the mate.'
              : `The one drawn goes down to ${inWords(small)} only, above the root: the first turn would begin with a thin edge.`,
          ]),
    ],
  };
}

/** Ends at which the crest stands free: at the end of the part, at a groove, or beside work thinner than the root. */
function endsOf(part: PartResult, section: Placed<OutsideSection>, root: Mm): string {
  const at = part.outside.indexOf(section);
  const free = (['start', 'end'] as const).filter((side) => {
    const [place, beside] =
      side === 'start' ? [section.from, part.outside[at - 1]] : [section.to, part.outside[at + 1]];
    const grooved = part.grooves.some(
      (g) =>
        g.feature.on === section.feature.id && Math.min(Math.abs(g.from - place), Math.abs(g.to - place)) < leastGap,
    );
    const edge = section.feature[`${side}Edge`];
    return beside === undefined || beside.largest < root || grooved || edge?.kind === 'relief';
  });
  return free.length === 2 ? 'both ends' : 'the open end';
}

function rootBy(placed: PlacedThread, { cutters }: Workshop): Mm {
  return rootOf(placed.thread, 'external', threadingCutter(cutters, placed)?.noseRadius);
}

function chamfersOf(part: PartResult, { feature }: Placed<OutsideSection>): Profile {
  const names = (['start', 'end'] as const).flatMap((at) =>
    feature[`${at}Edge`]?.kind === 'chamfer' ? [`${feature.id}.${at}Edge`] : [],
  );
  return piecesOf(part, 'outside', names);
}

function otherEdges(part: PartResult, holding: Holding, corners: readonly Corner[]): Draft {
  const sections = [...new Set(corners.map((c) => c.section))];
  const ids = sections.map((s) => s.feature.id);
  const words = sections.map((s) => {
    const edges = corners.filter((c) => c.section === s).map(inWordsOf);
    return `${called(part, s.feature.id)} ${[...new Set(edges)].join(' and ')}`;
  });
  // A fillet in an inner corner comes with the finishing cut.
  const edges = piecesOf(
    part,
    'outside',
    corners.filter((c) => !(c.inner && c.edge.kind === 'fillet')).map((c) => `${c.section.feature.id}.${c.at}Edge`),
  );
  const chamfersOnly = corners.every((c) => c.edge.kind === 'chamfer');
  const hollow = corners.filter((c) => c.inner && c.edge.kind === 'fillet');
  return {
    ...operation(holding, 'chamfer', `edges-${holding.setup.endOut}`, ids, Math.max(...sections.map((s) => s.largest))),
    title: `${chamfersOnly ? 'Chamfer' : 'Shape the edges:'} ${words.join(', ')}`,
    from: edges[0]?.from ?? Math.min(...sections.map((s) => s.from)),
    to: edges.at(-1)?.to ?? Math.max(...sections.map((s) => s.to)),
    task: { does: 'plain' },
    removes: { cuts: 'outside', to: edges },
    why:
      hollow.length > 0
        ? [
            'A fillet in an inner corner is left by a finishing cutter ground to its radius, in the finishing cut itself.',
          ]
        : [],
  };
}

function inWordsOf({ edge, inner }: Corner): string {
  if (edge.kind === 'chamfer') return `${lengthInWords(edge.size)} × ${Number((edge.angle ?? 45).toFixed(1))}°`;
  if (edge.kind === 'fillet')
    return `${inner ? 'fillet of radius' : 'rounded to radius'} ${lengthInWords(edge.radius)}`;
  return `relief ${lengthInWords(edge.width)}`;
}

/** Smallest fillet in an inner corner of these sections: the nose of the finishing cutter must not be larger. */
export function tightestFillet(part: PartResult, sections: readonly string[]): Mm | undefined {
  const radii = part.outside
    .filter((s) => sections.includes(s.feature.id))
    .flatMap((s) => cornersOf(part, s))
    .flatMap((c) => (c.inner && c.edge.kind === 'fillet' ? [c.edge.radius] : []));
  return radii.length > 0 ? Math.min(...radii) : undefined;
}
