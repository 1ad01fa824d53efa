/**
 * Drafts the work inside: centring, drilling, boring, inner cones, undercuts, grooves, threads and the chamfer at the mouth.
 */
import type { Workshop } from '../lathe/schema.ts';
import { innerRadiusAt } from '../part/outline-queries.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { Edge, InsideSection } from '../part/schema.ts';
import type { Mm } from '../units/quantities.ts';
import { band, called, type Draft, dimensionOf, inWords, lengthInWords, middle } from './draft.ts';
import { type Drilled, drillHoles, type Hole } from './draft-holes.ts';
import { draftThreadMouths } from './draft-thread-mouth.ts';
import { type End, type Holding, throughBore } from './hold.ts';
import { boreFinishingAllowance, shoulderAllowance } from './practice.ts';
import { flat } from './profile.ts';
import { clearInsideTo, isInPart, piecesOf, sectionInside } from './surfaces.ts';
import { crestAim } from './tables/thread-aim.ts';

type Common = Pick<Draft, 'setup' | 'atFreeEnd' | 'working' | 'removes' | 'why' | 'cautions'>;

/** Drafts for the bores entered from the end that stands out in this setup. */
export function draftInside(part: PartResult, holding: Holding, workshop: Workshop): Draft[] {
  const side = holding.setup.endOut === 'right' ? 'inside right' : 'inside left';
  const face = holding.setup.endOut === 'right' ? part.outline.length : 0;
  const bored = tooWide(part);
  const through = throughBore(part);
  const withOutside = through !== undefined && !bored.has(through.feature.id) && holding.boresFirst;
  const entered = (s: Placed<InsideSection>) => (withOutside ? holding.setup.number === 1 : s.side === side);
  const holes = part.inside
    .filter((s) => entered(s) && isInPart(part, s) && !bored.has(s.feature.id))
    .map((section): Hole => {
      const depth = Math.max(Math.abs(section.from - face), Math.abs(section.to - face));
      return { section, depth, through: depth >= part.outline.length - 1e-6, fromLeft: face === 0 };
    });
  const common: Common = {
    setup: holding.setup.id,
    atFreeEnd: false,
    working: false,
    removes: { cuts: 'nothing' },
    why: [],
    cautions: [],
  };
  const mouthsHere = withOutside ? mouths(part, [mouthOf(through, face)], common, holding.setup.endOut) : undefined;
  if (holes.length === 0) return mouthsHere ?? [];
  const centre: Draft = {
    ...common,
    id: `centre-for-drill-${holding.setup.endOut}`,
    kind: 'centre',
    features: holes.map((h) => h.section.feature.id),
    diameter: 0,
    title: 'Centre for the drill',
    from: face,
    to: face,
    task: { does: 'centre' },
  };
  const drilled = drillHoles(part, holes, workshop.drills, workshop.lathe, common);
  return [
    centre,
    ...drilled.drafts,
    ...holes.flatMap((hole) => boring(part, hole, drilled, common, face)),
    ...grooves(part, holes, common),
    ...threads(part, holes, common),
    ...draftThreadMouths(part, holes, common, face, workshop),
    ...(mouthsHere ??
      mouths(
        part,
        holes.flatMap(({ section }) => bothMouths(section)),
        common,
        holding.setup.endOut,
      )),
  ];
}

/** An edge of a bore that is shaped in a setup. */
interface Mouth {
  readonly section: Placed<InsideSection>;
  readonly at: 'startEdge' | 'endEdge';
}

const bothMouths = (section: Placed<InsideSection>): Mouth[] => [
  { section, at: 'startEdge' },
  { section, at: 'endEdge' },
];

/** The edge at a face: a section begins at the face it is entered from. */
function mouthOf(section: Placed<InsideSection>, face: Mm): Mouth {
  return { section, at: (section.side === 'inside left') === (face === 0) ? 'startEdge' : 'endEdge' };
}

function boring(part: PartResult, hole: Hole, drilled: Drilled, common: Common, face: Mm): Draft[] {
  const { section } = hole;
  const { feature } = section;
  const at = { features: [feature.id], from: section.from, to: section.to };
  const start = drilled.holeAt(feature.id);
  switch (feature.kind) {
    case 'drilled':
      return [];
    case 'undercut':
      return [
        {
          ...common,
          ...at,
          id: `groove-${feature.id}`,
          kind: 'groove',
          diameter: section.largest,
          title: `Cut ${called(part, feature.id)} inside to ${inWords(section.largest)}`,
          task: {
            does: 'groove',
            width: section.to - section.from,
            floor: section.largest,
            outer: Math.min(section.largest, hole.depth > 0 ? boreBefore(part, hole, face) : section.largest),
            internal: true,
          },
          removes: { cuts: 'inside', to: sectionInside(part, section) },
        },
      ];
    case 'cone': {
      const [near, far] = endDiameters(part, hole, face);
      return [
        {
          ...common,
          ...at,
          id: `turn-cone-${feature.id}`,
          kind: 'turn cone',
          diameter: section.largest,
          title: `Bore ${called(part, feature.id)} with the top slide set over`,
          task: {
            does: 'cone',
            where: 'bore',
            startDiameter: start,
            cone: { startDiameter: section.largest, endDiameter: section.smallest, length: section.to - section.from },
            thinEnd: near < far ? 'free' : 'chuck',
          },
          removes: { cuts: 'inside', to: sectionInside(part, section) },
        },
      ];
    }
    case 'bored':
      return boredOut(part, hole, drilled, common, face);
  }
}

/** In one operation, or roughed first when much is to come out. */
function boredOut(part: PartResult, hole: Hole, drilled: Drilled, common: Common, face: Mm): Draft[] {
  const { section, depth } = hole;
  const { feature } = section;
  const id = feature.id;
  const start = drilled.holeAt(id);
  const thread = part.threads.find((t) => t.on === id && t.side === 'internal');
  const crest = thread && crestAim(thread.thread, 'internal');
  const dimension = dimensionOf(part, id, 'diameter');
  const target = crest?.aim ?? middle(dimension, section.largest);
  const tolerance = crest ? crest.max - crest.min : band(dimension);
  const at = { ...common, kind: 'bore' as const, features: [id], from: section.from, to: section.to };
  const roughed = Number((target - boreFinishingAllowance).toFixed(3));
  const rough = roughed - start > boreFinishingAllowance;
  const turn = { does: 'turn', where: 'bore', reach: depth } as const;
  return [
    ...(rough
      ? [
          {
            ...at,
            id: `rough-bore-${id}`,
            diameter: roughed,
            title: `Open ${called(part, id)} to ${inWords(roughed)}`,
            task: {
              ...turn,
              target: roughed,
              stage: 'rough' as const,
              startDiameter: start,
              tolerance: undefined,
              finish: undefined,
            },
            ...roughBore(part, hole, roughed, face),
          },
        ]
      : []),
    {
      ...at,
      id: `bore-${id}`,
      diameter: section.largest,
      working: feature.role === 'sliding' || feature.role === 'sealing',
      title: `${/\bbore\b/i.test(called(part, id)) ? 'Finish' : 'Bore'} ${called(part, id)} to ${inWords(target)}`,
      task: {
        ...turn,
        target,
        stage: 'finish' as const,
        startDiameter: rough ? roughed : start,
        cone: drilled.coneAt(id),
        tolerance,
        finish: feature.finish,
      },
      removes: { cuts: 'inside', to: sectionInside(part, section) },
    },
  ];
}

/** Where a bore is opened and what that leaves: short of its floor, so that the last cuts face it, and clear of fillets. */
function roughBore(
  part: PartResult,
  { section, through }: Hole,
  diameter: Mm,
  face: Mm,
): Pick<Draft, 'from' | 'to' | 'removes'> {
  const fromLeft = Math.abs(section.from - face) < Math.abs(section.to - face);
  const [near, floor] = fromLeft ? [section.from, section.to] : [section.to, section.from];
  const short = through ? 0 : Math.min(shoulderAllowance, (section.to - section.from) / 2);
  const far = clearInsideTo(part, diameter / 2, near, floor + (fromLeft ? -short : short));
  const [from, to] = [Math.min(near, far), Math.max(near, far)];
  return { from, to, removes: { cuts: 'inside', to: flat(from, to, diameter / 2, section.feature.id) } };
}

/** Inside sections of a hole that is wider than the end it opens in: nothing there can be made. */
function tooWide(part: PartResult): ReadonlySet<string> {
  const mouths = part.findings.filter((f) => f.id === 'part.bore-through-outside').map((f) => f.at);
  const sides = part.inside.filter((s) => mouths.includes(s.feature.id)).map((s) => s.side);
  return new Set(part.inside.filter((s) => sides.includes(s.side)).map((s) => s.feature.id));
}

/** Diameters of a bore at the end nearer the face and at its far end. */
function endDiameters(part: PartResult, { section }: Hole, face: Mm): [Mm, Mm] {
  const inset = 0.02 * (section.to - section.from);
  const left = 2 * innerRadiusAt(part.outline, section.from + inset);
  const right = 2 * innerRadiusAt(part.outline, section.to - inset);
  return Math.abs(section.from - face) < Math.abs(section.to - face) ? [left, right] : [right, left];
}

/** Diameter of the hole just in front of a section. */
function boreBefore(part: PartResult, { section }: Hole, face: Mm): Mm {
  const nearer = Math.abs(section.from - face) < Math.abs(section.to - face) ? section.from : section.to;
  const step = 0.01 * (section.to - section.from);
  const before = nearer + (face < nearer ? -step : step);
  return 2 * innerRadiusAt(part.outline, before);
}

function grooves(part: PartResult, holes: readonly Hole[], common: Common): Draft[] {
  return part.grooves.flatMap((g): Draft[] => {
    const hole = holes.find((h) => h.section.feature.id === g.feature.on);
    if (!hole || g.side === 'outside') return [];
    const width = middle(dimensionOf(part, g.feature.id, 'width'), g.to - g.from);
    const floor = middle(dimensionOf(part, g.feature.id, 'floorDiameter'), g.largest);
    return [
      {
        ...common,
        id: `groove-${g.feature.id}`,
        kind: 'groove',
        features: [g.feature.id, g.feature.on],
        diameter: g.largest,
        title: `Cut ${called(part, g.feature.id)} inside, ${lengthInWords(width)} wide, to ${inWords(floor)}`,
        from: g.from,
        to: g.to,
        task: { does: 'groove', width, floor, outer: g.smallest, internal: true },
        removes: { cuts: 'inside', to: piecesOf(part, 'inside', [g.feature.id]) },
      },
    ];
  });
}

function threads(part: PartResult, holes: readonly Hole[], common: Common): Draft[] {
  return part.threads.flatMap((t): Draft[] => {
    const hole = holes.find((h) => h.section.feature.id === t.on);
    if (!hole || t.side !== 'internal') return [];
    return [
      {
        ...common,
        id: `thread-${t.id}`,
        kind: 'thread',
        features: [t.id, t.on],
        diameter: hole.section.largest,
        title: `Cut the thread ${t.thread.designation} inside`,
        from: t.from,
        to: t.to,
        task: { does: 'thread', thread: t },
        cautions: ['Slowest speed; mark on the bar how far it may go in before the half-nuts are opened.'],
      },
    ];
  });
}

/** All these edges of bores in one operation. */
function mouths(part: PartResult, asked: readonly Mouth[], common: Common, end: End): Draft[] {
  const edged = asked.flatMap(({ section, at }) => {
    const edge = section.feature[at];
    return edge ? [{ section, at, edge }] : [];
  });
  if (edged.length === 0) return [];
  const sections = [...new Set(edged.map((e) => e.section))];
  const pieces = piecesOf(
    part,
    'inside',
    edged.map((e) => `${e.section.feature.id}.${e.at}`),
  );
  const words = sections.map((section) => {
    const sizes = edged.filter((e) => e.section === section).map((e) => edgeInWords(e.edge));
    return `${called(part, section.feature.id)} ${sizes.join(' and ')}`;
  });
  return [
    {
      ...common,
      id: `chamfer-inside-${end}`,
      kind: 'chamfer',
      features: sections.map((s) => s.feature.id),
      diameter: Math.max(...sections.map((s) => s.largest)),
      title: `Shape the edges inside: ${words.join(', ')}`,
      from: pieces[0]?.from ?? Math.min(...sections.map((s) => s.from)),
      to: pieces.at(-1)?.to ?? Math.max(...sections.map((s) => s.to)),
      task: { does: 'plain' },
      removes: { cuts: 'inside', to: pieces },
    },
  ];
}

function edgeInWords(edge: Edge): string {
  if (edge.kind === 'chamfer') return `${lengthInWords(edge.size)} × ${edge.angle ?? 45}°`;
  if (edge.kind === 'fillet') return `radius ${lengthInWords(edge.radius)}`;
  return `relief ${lengthInWords(edge.width)} by ${lengthInWords(edge.depth)} deep`;
}
