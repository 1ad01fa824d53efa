/** Where each outside section lies along the part, and what is assumed where the part does not say. */
import type { Mm } from '../units/quantities.ts';
import type { Gaps } from './gaps.ts';
import type { ReadThread } from './read-threads.ts';
import type { InsideSection, OutsideSection, Part } from './schema.ts';

/** A section with its ends. Inside sections of the right end run from `to` (at the mouth) to `from`. */
export interface PlacedSection<T extends OutsideSection | InsideSection = OutsideSection | InsideSection> {
  readonly feature: T;
  readonly from: Mm;
  readonly to: Mm;
  /** Radius at the left end. */
  readonly startRadius: Mm;
  /** Radius at the right end. */
  readonly endRadius: Mm;
  readonly side: 'outside' | 'inside left' | 'inside right';
  /** Some of its sizes were assumed. */
  readonly assumed: boolean;
}

/** Drawn where nothing at all is known. */
const anyDiameter: Mm = 10;

interface Ends {
  readonly start: Mm | undefined;
  readonly end: Mm | undefined;
}

export function placeOutside(part: Part, threads: readonly ReadThread[], gaps: Gaps): PlacedSection<OutsideSection>[] {
  const known = part.outside.map((section, i) => knownEnds(section, i, part.outside.length, threads));
  const lengths = part.outside.flatMap((s) => entered(s) ?? []);
  const usual = lengths.length === 0 ? undefined : lengths.reduce((sum, l) => sum + l, 0) / lengths.length;
  const placed: PlacedSection<OutsideSection>[] = [];
  let from = 0;
  for (const [i, section] of part.outside.entries()) {
    const next = known.slice(i + 1).find((k) => k.start !== undefined)?.start;
    const before = placed.at(-1)?.endRadius;
    const neighbour = before !== undefined && before > 0 ? 2 * before : (next ?? anyDiameter);
    const { start, end } = diameters(section, known[i] ?? { start: undefined, end: undefined }, neighbour, next, gaps);
    const length =
      entered(section) ?? gaps.assume(section, 'length', assumedLength(section, Math.max(start, end), usual));
    const ends = { startRadius: start / 2, endRadius: end / 2 };
    placed.push({ feature: section, from, to: from + length, ...ends, side: 'outside', assumed: gaps.in(section) });
    from += length;
  }
  return placed;
}

/** The end a crown closes: the first of several sections domes to the left, the last to the right; none between them. */
export function crownEnd(index: number, sections: number): 'left' | 'right' | undefined {
  if (index === sections - 1) return 'right';
  return index === 0 ? 'left' : undefined;
}

function knownEnds(section: OutsideSection, i: number, sections: number, threads: readonly ReadThread[]): Ends {
  switch (section.kind) {
    case 'cylinder': {
      const threaded = threads.find((t) => t.feature.on === section.id)?.thread?.majorDiameter;
      const diameter = section.diameter?.nominal ?? threaded;
      return { start: diameter, end: diameter };
    }
    case 'cone':
    case 'arc':
      return { start: section.startDiameter?.nominal, end: section.endDiameter?.nominal };
    case 'crown': {
      const foot = section.diameter?.nominal;
      const end = crownEnd(i, sections);
      return { start: end === 'left' ? 0 : foot, end: end === 'right' ? 0 : foot };
    }
    case 'curve': {
      const points = section.points.toSorted((a, b) => a.along - b.along);
      return { start: points[0]?.diameter, end: points.at(-1)?.diameter };
    }
  }
}

function diameters(
  section: OutsideSection,
  known: Ends,
  neighbour: Mm,
  next: Mm | undefined,
  gaps: Gaps,
): { start: Mm; end: Mm } {
  switch (section.kind) {
    case 'cylinder': {
      const diameter = known.start ?? gaps.assume(section, 'diameter', neighbour);
      return { start: diameter, end: diameter };
    }
    case 'cone': {
      const start = known.start ?? gaps.assume(section, 'startDiameter', neighbour);
      return { start, end: known.end ?? gaps.assume(section, 'endDiameter', next ?? 0.75 * start) };
    }
    case 'arc': {
      const start = known.start ?? gaps.assume(section, 'startDiameter', neighbour);
      return { start, end: known.end ?? gaps.assume(section, 'endDiameter', next ?? start) };
    }
    case 'crown': {
      const nearest = known.start === 0 ? (next ?? anyDiameter) : neighbour;
      const foot = section.diameter?.nominal ?? gaps.assume(section, 'diameter', nearest);
      return { start: known.start === 0 ? 0 : foot, end: known.end === 0 ? 0 : foot };
    }
    case 'curve':
      return { start: known.start ?? 0, end: known.end ?? 0 };
  }
}

/** Length as entered; a curve is as long as its points reach. */
function entered(section: OutsideSection): Mm | undefined {
  const length = section.length?.nominal;
  if (length !== undefined || section.kind !== 'curve') return length;
  const reach = Math.max(...section.points.map((p) => p.along));
  return reach > 0 ? reach : undefined;
}

function assumedLength(section: OutsideSection, diameter: Mm, usual: Mm | undefined): Mm {
  if (section.kind === 'crown') return diameter / 8;
  return usual ?? diameter;
}
