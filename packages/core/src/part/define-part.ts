/** The part stage: from what was entered to outline, limits, threads, mass and what is wrong or missing. */
import { InputError } from '../errors.ts';
import { type Finding, worstFirst } from '../finding.ts';
import { findMaterial } from '../materials/find.ts';
import type { Material } from '../materials/material.ts';
import type { Mm } from '../units/quantities.ts';
import { dimensionsOf } from './dimensions.ts';
import { feasibility } from './feasibility.ts';
import { Gaps } from './gaps.ts';
import { massOf } from './mass.ts';
import { buildOutline } from './outline.ts';
import type { Outline } from './outline-types.ts';
import type { Dimension, PartResult, Placed } from './part-result.ts';
import { placeBores } from './place-bores.ts';
import { type PlacedGroove, placeGrooves } from './place-grooves.ts';
import { type PlacedSection, placeOutside } from './place-sections.ts';
import { placeThreads } from './place-threads.ts';
import { readThreads } from './read-threads.ts';
import type { Groove, InsideSection, OutsideSection, Part } from './schema.ts';
import { bounds } from './segment.ts';

/** Answers for every part the schema lets through, however little is entered. */
export function definePart(part: Part): PartResult {
  const gaps = new Gaps(part.leftOpen);
  const { threads, findings: unread } = readThreads(part);
  const outside = placeOutside(part, threads, gaps);
  const length = outside.at(-1)?.to ?? 0;
  const largest = 2 * Math.max(0, ...outside.map((s) => Math.max(s.startRadius, s.endRadius)));
  const isThere = outside.length > 0;
  const left = isThere ? placeBores(part, 'left', length, largest, threads, gaps) : noHole;
  const right = isThere ? placeBores(part, 'right', length, largest, threads, gaps) : noHole;
  const sections = [...outside, ...left.sections, ...right.sections];
  const { grooves, findings: misplaced } = placeGrooves(part, sections, gaps);
  const built = buildOutline({ outside, left, right, grooves }, gaps);
  const placedThreads = placeThreads(threads, outside, [...left.sections, ...right.sections]);
  const { material, findings: unknown } = materialOf(part);
  const impossible = feasibility({ part, sections, threads: placedThreads, built });
  const isSound = built.missed.length === 0 && !impossible.some((f) => crossing.has(f.id));
  const mass = isThere && isSound ? massOf(part, built.outline, material) : undefined;
  const dimensions = dimensionsOf(part, threads);
  const findings = [
    ...(isThere ? [] : [nothingEntered]),
    ...unread,
    ...left.findings,
    ...right.findings,
    ...misplaced,
    ...built.findings,
    ...impossible,
    ...unknown,
    ...(isThere && isSound && !mass ? [noMetal] : []),
    ...(mass?.findings ?? []),
    ...unsized(part),
    ...unlimited(dimensions),
    ...leftOpen(dimensions),
    ...gaps.findings,
  ];
  return {
    name: part.name,
    material,
    outline: built.outline,
    dimensions,
    outside: outside.map((s) => asPlaced(s, built.outline)),
    inside: [...left.sections, ...right.sections].map((s) => asPlaced(s, built.outline)),
    grooves: built.grooves.map(grooveAsPlaced),
    threads: placedThreads,
    notTurned: part.notTurned ?? [],
    mass: mass?.properties,
    complete: isThere && !findings.some((f) => f.id === 'part.size-missing' || f.id === 'part.size-open'),
    findings: worstFirst(findings),
  };
}

const noHole = { sections: [], stretches: [], findings: [] } as const;

/** Findings after which the outline encloses no body. */
const crossing = new Set(['part.bore-through-outside', 'part.groove-deeper-than-wall']);

function asPlaced<T extends OutsideSection | InsideSection>(s: PlacedSection<T>, outline: Outline): Placed<T> {
  const radii = [s.startRadius, s.endRadius, ...belly(s, outline)];
  return {
    feature: s.feature,
    from: s.from,
    to: s.to,
    largest: 2 * Math.max(...radii),
    smallest: 2 * Math.max(0, Math.min(...radii)),
    side: s.side,
  };
}

/** Least and largest radius of a curved section between its ends, read off the outline. */
function belly({ feature, side }: PlacedSection, outline: Outline): Mm[] {
  if (side !== 'outside' || feature.kind === 'cylinder' || feature.kind === 'cone') return [];
  const boxes = outline.outside.filter((piece) => piece.feature === feature.id && !piece.face).map(bounds);
  return boxes.flatMap(({ min, max }) => [min.r, max.r]);
}

function grooveAsPlaced({ feature, section, cut }: PlacedGroove): Placed<Groove> {
  const surface = Math.max(section.startRadius, section.endRadius);
  const radii = [cut.floor, surface];
  const { from, to } = cut;
  return { feature, from, to, largest: 2 * Math.max(...radii), smallest: 2 * Math.min(...radii), side: section.side };
}

function materialOf(part: Part): { material: Material | undefined; findings: Finding[] } {
  if (part.material === undefined) return { material: undefined, findings: [] };
  try {
    return { material: findMaterial(part.material), findings: [] };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const issue = error.issues[0];
    const finding: Finding = {
      id: 'part.material-unknown',
      level: 'caution',
      stage: 'part',
      at: 'part.material',
      says: `The material “${part.material}” is not known here: mass, strength and cuts cannot be worked out.`,
      because: [],
      remedies: [
        `enter ${issue?.expected ?? 'a known material'}${issue?.example === undefined ? '' : `, for example ${issue.example}`}`,
      ],
    };
    return { material: undefined, findings: [finding] };
  }
}

/** Sizes of what is not turned that are still missing; nothing of it is in the outline. */
function unsized(part: Part): Finding[] {
  const wanted = {
    'hexagon socket': ['acrossFlats', 'depth'],
    hexagon: ['acrossFlats'],
    flats: ['acrossFlats', 'along', 'length'],
    'cross hole': ['diameter', 'along'],
    slot: ['width', 'depth'],
    knurl: ['pitch'],
  } as const;
  return (part.notTurned ?? []).flatMap((feature) => {
    const have = new Set(Object.entries(feature).flatMap(([key, value]) => (value === undefined ? [] : [key])));
    return wanted[feature.kind]
      .filter((field) => !have.has(field))
      .map((field): Finding => {
        const words = field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
        const name = feature.name ?? feature.id.replaceAll('-', ' ');
        return {
          id: 'part.size-missing',
          level: 'note',
          stage: 'part',
          at: `${feature.id}.${field}`,
          says: `The ${words} of the ${name} is not entered.`,
          because: [],
          remedies: [`enter the ${words} of the ${name}`],
        };
      });
  });
}

/** Sizes that were left open; one that the part does not have is passed over. */
function leftOpen(dimensions: readonly Dimension[]): Finding[] {
  return dimensions
    .filter((d) => d.open)
    .map((d) => ({
      id: 'part.size-open',
      level: 'note',
      stage: 'part',
      at: d.id,
      says: `The ${d.title} is left open; it is drawn in pencil until it is settled.`,
      because: [{ what: 'as it is drawn', value: d.nominal, unit: 'mm' }],
      remedies: ['settle it at the evidence stage, or type it anew'],
    }));
}

const noMetal: Finding = {
  id: 'part.no-metal',
  level: 'stop',
  stage: 'part',
  at: 'part',
  says: 'The sections as entered enclose no metal.',
  because: [{ what: 'volume', value: 0, unit: 'mm³', limit: 0 }],
  remedies: ['check the diameters: some are 0', 'check the holes'],
};

/** Sizes that state no limits, in a part without a general tolerance: the work cannot be judged by them. */
function unlimited(dimensions: readonly Dimension[]): Finding[] {
  const bare = dimensions.filter((d) => d.kind !== 'edge' && d.kind !== 'radius' && d.max <= d.min);
  if (bare.length === 0) return [];
  return [
    {
      id: 'part.no-limits',
      level: 'note',
      stage: 'part',
      at: bare[0]?.id ?? 'part',
      says: `${bare.length === 1 ? 'A size has' : `${bare.length} sizes have`} no limits: they cannot be inspected, and no stop point is given for them.`,
      because: [],
      remedies: ['choose a general tolerance for the part', 'state limits at the sizes that matter'],
    },
  ];
}

const nothingEntered: Finding = {
  id: 'part.no-sections',
  level: 'note',
  stage: 'part',
  at: 'part',
  says: 'No outside section is entered yet: there is nothing to draw.',
  because: [],
  remedies: ['enter the first section of the part, with a diameter and a length'],
};
