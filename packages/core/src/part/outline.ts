/** The exact outline: bare sections, then edges, then grooves, outside and in. */
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import { makeEdge } from './edges.ts';
import { called, type Gaps } from './gaps.ts';
import { cutGroove, radiusBetween } from './grooves.ts';
import { insideChain, mirrored, mirroredStretches, upTo } from './inside-chain.ts';
import { openMouth, withEnd, withoutEnd } from './mouth.ts';
import type { Outline, Segment } from './outline-types.ts';
import { outsideChain } from './outside-chain.ts';
import { type Hole, type Stretch, widest } from './place-bores.ts';
import { opensToFace, type PlacedGroove, radiusMisfit, runsIntoEdge, withoutDepth } from './place-grooves.ts';
import type { PlacedSection } from './place-sections.ts';
import type { OutsideSection } from './schema.ts';
import { bounds, reversed, reversedChain, tidy } from './segment.ts';

export interface Placement {
  readonly outside: readonly PlacedSection<OutsideSection>[];
  readonly left: Hole;
  readonly right: Hole;
  readonly grooves: readonly PlacedGroove[];
}

export interface BuiltOutline {
  readonly outline: Outline;
  /** Grooves that were really cut. */
  readonly grooves: readonly PlacedGroove[];
  /** How deep each hole reaches, drill point included. */
  readonly reach: { readonly left: Mm; readonly right: Mm };
  /** Ends at which a hole is wider than the end it opens in. */
  readonly missed: readonly ('left' | 'right')[];
  readonly findings: readonly Finding[];
}

interface Work {
  readonly length: Mm;
  readonly findings: Finding[];
  readonly cut: PlacedGroove[];
}

interface Body {
  readonly outside: readonly Segment[];
  readonly insideLeft: readonly Segment[];
  readonly insideRight: readonly Segment[];
  readonly through: boolean;
  readonly missed: readonly ('left' | 'right')[];
}

export function buildOutline(placement: Placement, gaps: Gaps): BuiltOutline {
  const length = placement.outside.at(-1)?.to ?? 0;
  const work: Work = { length, findings: [], cut: [] };
  const bare = outsideChain(placement.outside, gaps);
  work.findings.push(...bare.findings);
  const edged = withEdges(bare.segments, placement.outside, 'outside', () => 'first', work);
  const outside = withGrooves(
    edged,
    placement.grooves.filter((g) => g.section.side === 'outside'),
    work,
  );
  const left = widest(placement.left.stretches);
  const right = widest(placement.right.stretches);
  const reach = { left: left.at(-1)?.to ?? 0, right: right.at(-1)?.to ?? 0 };
  const isThrough =
    Math.max(reach.left, reach.right) > 0 &&
    Math.max(reach.left, reach.right, reach.left + reach.right - 1e-9) >= length - 1e-9;
  const body = isThrough
    ? boredThrough(
        outside,
        placement,
        widest([...left, ...mirroredStretches(right, length)].flatMap(within(length))),
        work,
      )
    : boredBlind(outside, placement, left, right, work);
  const largest = Math.max(0, ...body.outside.map((s) => bounds(s).max.r));
  const { missed, ...chains } = body;
  const outline = { ...chains, length, largestDiameter: 2 * largest };
  return { outline, grooves: work.cut, reach, missed, findings: work.findings };
}

const within = (length: Mm) => (s: Stretch) =>
  mirroredStretches(upTo(mirroredStretches(upTo([s], length), length), length), length);

function boredBlind(
  outside: readonly Segment[],
  placement: Placement,
  left: readonly Stretch[],
  right: readonly Stretch[],
  work: Work,
): Body {
  const fromLeft = bore(outside, left, placement.left.sections, placement.grooves, work);
  const seenFromRight = reversedChain(mirrored(fromLeft.outside, work.length));
  const swapped = placement.grooves.map((g) => ({
    ...g,
    cut: {
      ...g.cut,
      from: work.length - g.cut.to,
      to: work.length - g.cut.from,
      rims: [g.cut.rims[1], g.cut.rims[0]] as const,
    },
  }));
  const fromRight = bore(seenFromRight, right, placement.right.sections, swapped, work);
  return {
    outside: reversedChain(mirrored(fromRight.outside, work.length)),
    insideLeft: fromLeft.inside,
    insideRight: mirrored(fromRight.inside, work.length),
    through: false,
    missed: [...(fromLeft.missed ? (['left'] as const) : []), ...(fromRight.missed ? (['right'] as const) : [])],
  };
}

/** A blind hole into the left end. */
function bore(
  outside: readonly Segment[],
  stretches: readonly Stretch[],
  sections: readonly PlacedSection[],
  grooves: readonly PlacedGroove[],
  work: Work,
) {
  if (stretches.length === 0) return { outside, inside: [], missed: false };
  const opened = openMouth(outside, insideChain(stretches, false));
  const edged = withEdges(withEnd(opened), sections, 'inside', () => 'first', work);
  const parted = withoutEnd(edged, opened.outside);
  const own = grooves.filter((g) => g.section.side === sections[0]?.side);
  return { ...parted, inside: withGrooves(parted.inside, own, work), missed: opened.missed };
}

function boredThrough(
  outside: readonly Segment[],
  placement: Placement,
  stretches: readonly Stretch[],
  work: Work,
): Body {
  const { length } = work;
  const turn = (chain: readonly Segment[]) => reversedChain(mirrored(chain, length));
  const atLeft = openMouth(outside, insideChain(stretches, true));
  const atRight = openMouth(turn(atLeft.outside), turn(atLeft.inside));
  const opened = { outside: turn(atRight.outside), inside: turn(atRight.inside) };
  const exit = opened.outside.at(-1);
  const whole = [...withEnd({ ...opened, missed: false }), ...(exit ? [reversed(exit)] : [])];
  const sections = [...placement.left.sections, ...placement.right.sections];
  const first = (s: PlacedSection) => (s.side === 'inside right' ? 'last' : 'first');
  const edged = withEdges(whole, sections, 'inside', first, work);
  const withoutEntry = withoutEnd(edged, opened.outside);
  const withoutExit = withoutEnd(turn(withoutEntry.inside), turn(withoutEntry.outside));
  const inner = placement.grooves.filter((g) => g.section.side !== 'outside');
  return {
    outside: turn(withoutExit.outside),
    insideLeft: withGrooves(turn(withoutExit.inside), inner, work),
    insideRight: [],
    through: true,
    missed: [...(atLeft.missed ? (['left'] as const) : []), ...(atRight.missed ? (['right'] as const) : [])],
  };
}

/** Makes the edges of all sections; `startIs` tells at which end of a section's segments its start lies. */
function withEdges(
  chain: readonly Segment[],
  sections: readonly PlacedSection[],
  side: 'outside' | 'inside',
  startIs: (section: PlacedSection) => 'first' | 'last',
  work: Work,
): readonly Segment[] {
  let edged = chain;
  for (const section of sections) {
    const { feature } = section;
    const start = startIs(section);
    const other = start === 'first' ? 'last' : 'first';
    for (const [end, at, edge] of [
      ['start', start, feature.startEdge],
      ['end', other, feature.endEdge],
    ] as const) {
      if (!edge) continue;
      const made = makeEdge(edged, { section: feature.id, called: called(feature), end, at, side }, edge);
      if ('finding' in made) work.findings.push(made.finding);
      else edged = made.chain;
    }
  }
  return edged;
}

function withGrooves(chain: readonly Segment[], grooves: readonly PlacedGroove[], work: Work): Segment[] {
  let grooved = [...chain];
  for (const groove of grooves) {
    const { cut, section } = groove;
    const surface = radiusBetween(grooved, cut.from, cut.to);
    const isOutside = section.side === 'outside';
    const edge = isOutside ? surface?.min : surface?.max;
    const hasDepth = edge !== undefined && (isOutside ? cut.floor < edge - 1e-9 : cut.floor > edge + 1e-9);
    if (!isOutside && (cut.from <= 1e-9 || cut.to >= work.length - 1e-9)) work.findings.push(opensToFace(groove));
    else if (!hasDepth)
      work.findings.push(withoutDepth(groove, edge ?? Math.max(section.startRadius, section.endRadius)));
    else {
      const made = cutGroove(grooved, cut);
      if (!made) {
        work.findings.push(runsIntoEdge(groove));
        continue;
      }
      grooved = made.chain;
      for (const { field, room } of made.misfits) work.findings.push(radiusMisfit(groove, field, room));
      work.cut.push(groove);
    }
  }
  return tidy(grooved);
}
