/**
 * Drafts what happens at the corners of the outside: chamfers, rounded edges, fillets and reliefs.
 */
import { DomainError } from '../errors.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { Edge, OutsideSection } from '../part/schema.ts';
import { infeedDepth } from '../standards/threads/cutting-geometry.ts';
import type { Thread } from '../standards/threads/thread.ts';
import type { Mm } from '../units/quantities.ts';
import { called, type Draft, inWords, lengthInWords, operation } from './draft.ts';
import type { Holding } from './hold.ts';
import type { Profile } from './profile.ts';
import { piecesOf } from './surfaces.ts';

/** An edge of a section, and where it is. */
interface Corner {
  readonly section: Placed<OutsideSection>;
  readonly edge: Edge;
  readonly at: 'start' | 'end';
  /** The neighbour stands higher: the edge lies in an inner corner. */
  readonly inner: boolean;
}

/** The chamfers of each thread, which come before it; reliefs, which are plunged; all other edges of the setup in one operation. */
export function draftEdges(part: PartResult, holding: Holding): Draft[] {
  const corners = holding.sections.flatMap((s) => cornersOf(part, s));
  const threaded = holding.sections.filter((s) =>
    part.threads.some((t) => t.side === 'external' && t.on === s.feature.id),
  );
  const shaped = corners.filter(
    (c) => c.edge.kind !== 'relief' && !(c.edge.kind === 'chamfer' && threaded.includes(c.section)),
  );
  return [
    ...corners.flatMap((c) => relief(part, holding, c)),
    ...threaded.map((s) => threadChamfer(part, holding, s)),
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

/** A thread that stops further from the end of its section than this runs out within it [mm]. */
const leastGap: Mm = 1;

function threadChamfer(part: PartResult, holding: Holding, section: Placed<OutsideSection>): Draft {
  const { id } = section.feature;
  const threads = part.threads.filter((t) => t.on === id && t.side === 'external');
  const root = Math.min(...threads.map((t) => rootOf(t.thread)));
  const reached = (end: Mm) => threads.some((t) => Math.min(Math.abs(t.from - end), Math.abs(t.to - end)) < leastGap);
  const relieved = part.grooves.some((g) => g.feature.on === id);
  const ends = relieved || (reached(section.from) && reached(section.to)) ? 'both ends' : 'the open end';
  return {
    ...operation(holding, 'chamfer', `thread-${id}`, [id], section.largest),
    title: `Chamfer ${ends} of ${called(part, id)} to below the root of the thread, ${inWords(root)}`,
    from: section.from,
    to: section.to,
    task: { does: 'plain' },
    removes: { cuts: 'outside', to: chamfersOf(part, section) },
  };
}

function chamfersOf(part: PartResult, { feature }: Placed<OutsideSection>): Profile {
  const names = (['start', 'end'] as const).flatMap((at) =>
    feature[`${at}Edge`]?.kind === 'chamfer' ? [`${feature.id}.${at}Edge`] : [],
  );
  return piecesOf(part, 'outside', names);
}

/** Diameter at the bottom of the groove; the basic minor diameter where the form's own tool does not fit the sizes. */
function rootOf(thread: Thread): Mm {
  try {
    return infeedDepth(thread, 'external').rootDiameter;
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return thread.minorDiameter;
  }
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
