/** What is to be said about the outside and inside sections. */
import type { Segment } from '../part/outline-types.ts';
import type { Dimension, PartResult, Placed } from '../part/part-result.ts';
import type { InsideSection, OutsideSection } from '../part/schema.ts';
import { isVertical, pointAt } from '../part/segment.ts';
import { degrees, type Mm } from '../units/quantities.ts';
import type { LengthMark, Mark, Touch } from './marks.ts';
import { numberText, sizeText } from './numbers.ts';
import { hasOwnLimits, type Sizes } from './sizes.ts';
import { headingAt } from './view.ts';

export function outsideMarks(part: PartResult, sizes: Sizes): Mark[] {
  return part.outside.flatMap((placed) => [
    ...outsideDiameters(part, placed, sizes),
    ...outsideLength(placed, sizes),
    ...shapeNotes(part, placed, sizes),
    ...finishMark(placed, sizes),
  ]);
}

function outsideDiameters(part: PartResult, placed: Placed<OutsideSection>, sizes: Sizes): Mark[] {
  const { id } = placed.feature;
  const title = nameOf(placed.feature);
  const stretch = { mark: 'diameter', from: placed.from, to: placed.to, side: 'outside' } as const;
  const marks: Mark[] = [];
  const whole = sizes.peek(id, 'diameter');
  const at = placed.feature.kind === 'crown' ? crownFoot(part, placed) : undefined;
  const isTold = whole && (isToldByThread(part, placed, whole) || isToldByNeighbour(part, placed, whole, at));
  if (whole && !isTold) {
    sizes.take(id, 'diameter');
    const radius = whole.nominal / 2;
    marks.push({ ...stretch, of: whole.id, title: `${title}, diameter`, text: sizes.text(whole, 'Ø'), radius, at });
  } else if (whole) sizes.take(id, 'diameter');
  for (const [field, at] of [
    ['startDiameter', placed.from],
    ['endDiameter', placed.to],
  ] as const) {
    const end = sizes.take(id, field);
    if (!end || isToldByNeighbour(part, placed, end, at)) continue;
    const which = field === 'startDiameter' ? 'left' : 'right';
    const radius = end.nominal / 2;
    marks.push({ ...stretch, of: end.id, title: `${title}, ${which} end`, text: sizes.text(end, 'Ø'), radius, at });
  }
  return marks;
}

/** A thread over the whole section tells its diameter; saying it again would be to dimension twice. */
function isToldByThread(part: PartResult, placed: Placed<OutsideSection>, diameter: Dimension) {
  return part.threads.some(
    (t) =>
      t.side === 'external' &&
      t.on === placed.feature.id &&
      Math.abs(t.thread.majorDiameter - diameter.nominal) < 1e-6 &&
      !hasOwnLimits(diameter),
  );
}

/** Where a cone, arc or dome runs on from a cylinder or another shape of the same size, that one tells it. */
function isToldByNeighbour(
  part: PartResult,
  placed: Placed<OutsideSection>,
  diameter: Dimension,
  at: Mm | undefined,
): boolean {
  if (at === undefined || hasOwnLimits(diameter)) return false;
  const index = part.outside.indexOf(placed);
  const neighbour = part.outside[at <= placed.from + 1e-9 ? index - 1 : index + 1];
  if (!neighbour) return false;
  const { id, kind } = neighbour.feature;
  const isEarlier = part.outside.indexOf(neighbour) < index;
  const field = kind === 'cylinder' || kind === 'crown' ? 'diameter' : isEarlier ? 'endDiameter' : 'startDiameter';
  // Of two ends that meet, the left one tells it; a cylinder always does.
  if (kind !== 'cylinder' && !isEarlier) return false;
  const other = part.dimensions.find((d) => d.id === `${id}.${field}`);
  return other !== undefined && Math.abs(other.nominal - diameter.nominal) < 1e-9;
}

/** The dome's foot is at the end where the section is widest. */
function crownFoot(part: PartResult, placed: Placed<OutsideSection>): Mm {
  return placed.from <= 1e-9 && placed.to < part.outline.length ? placed.to : placed.from;
}

function outsideLength(placed: Placed<OutsideSection>, sizes: Sizes): Mark[] {
  const length = sizes.take(placed.feature.id, 'length');
  if (!length) return [];
  const title = `${nameOf(placed.feature)}, length`;
  return [lengthMark(length.id, title, sizes.text(length), placed.from, placed.to, 'below', 0)];
}

function shapeNotes(part: PartResult, placed: Placed<OutsideSection>, sizes: Sizes): Mark[] {
  const { feature } = placed;
  const own = part.outline.outside.filter((s) => s.feature === feature.id);
  const title = nameOf(feature);
  if (feature.kind === 'arc') {
    const radius = sizes.take(feature.id, 'radius');
    if (!radius) return [];
    const lines = [`R${sizes.text(radius)}`];
    return [{ mark: 'leader', of: radius.id, title: `${title}, radius`, lines, points: spots(own) }];
  }
  if (feature.kind === 'crown') {
    const dome = own.find((s) => s.kind === 'arc');
    if (dome?.kind !== 'arc' || dome.assumed) return [];
    // Foot and height define the dome; the radius is there to help, hence the brackets.
    const lines = [`(SR${sizeText(round(dome.radius), sizes.style)})`];
    return [{ mark: 'leader', of: feature.id, title: `${title}, radius of the dome`, lines, points: spots([dome]) }];
  }
  if (feature.kind === 'cone') return coneNote(feature.id, title, own, sizes);
  return [];
}

function coneNote(id: string, title: string, own: readonly Segment[], sizes: Sizes): Mark[] {
  const flank = own.find((s) => s.kind === 'line' && !isVertical(s));
  if (!flank || flank.assumed) return [];
  const half = Math.atan2(Math.abs(flank.to.r - flank.from.r), Math.abs(flank.to.z - flank.from.z));
  if (half === 0) return [];
  const lines = [`(${numberText(2 * degrees(half), 2, sizes.style)}°)`];
  return [{ mark: 'leader', of: id, title: `${title}, included angle`, lines, points: spots([flank]) }];
}

export function insideMarks(part: PartResult, sizes: Sizes): Mark[] {
  return part.inside.flatMap((placed) => {
    const { feature } = placed;
    const side = placed.side === 'inside right' ? 'inside right' : 'inside left';
    const title = nameOf(feature);
    const fromLeft = side === 'inside left';
    const near = fromLeft ? placed.from : placed.to;
    const far = fromLeft ? placed.to : placed.from;
    const own = insideChain(part, side).filter((s) => s.feature === feature.id);
    const marks: Mark[] = [];
    for (const [field, at] of [
      ['diameter', undefined],
      ['startDiameter', near],
      ['endDiameter', far],
    ] as const) {
      const size = sizes.take(feature.id, field);
      if (!size) continue;
      const text = sizes.text(size, 'Ø');
      const called = field === 'diameter' ? 'diameter' : field === 'startDiameter' ? 'mouth' : 'far end';
      if (feature.kind === 'undercut') {
        const lines = [text];
        const points = spots(own);
        marks.push({ mark: 'leader', of: size.id, title: `${title}, ${called}`, lines, points, upperOnly: true });
      } else {
        const radius = size.nominal / 2;
        const { from, to } = placed;
        marks.push({ mark: 'diameter', of: size.id, title: `${title}, ${called}`, text, from, to, radius, side, at });
      }
    }
    const depth = sizes.take(feature.id, 'depth');
    if (depth) {
      const [from, to] = fromLeft ? [0, depth.nominal] : [part.outline.length - depth.nominal, part.outline.length];
      marks.push(lengthMark(depth.id, `${title}, depth`, sizes.text(depth), from, to, 'above', 1));
    }
    const width = sizes.take(feature.id, 'width');
    if (width)
      marks.push(lengthMark(width.id, `${title}, width`, sizes.text(width), placed.from, placed.to, 'above', 0));
    if (feature.kind === 'cone') marks.push(...coneNote(feature.id, title, own, sizes).map(upperOnly));
    if (feature.kind === 'drilled') marks.push(...pointNote(feature, title, own));
    return [...marks, ...finishMark(placed, sizes)];
  });
}

function pointNote(feature: InsideSection, title: string, own: readonly Segment[]): Mark[] {
  if (feature.kind !== 'drilled' || feature.pointAngle === undefined || feature.pointAngle === 180) return [];
  const cone = own.filter((s) => Math.abs(s.to.z - s.from.z) > 1e-9 && Math.abs(s.to.r - s.from.r) > 1e-9);
  if (cone.length === 0) return [];
  const lines = [`${feature.pointAngle}° point`];
  return [{ mark: 'leader', of: feature.id, title: `${title}, point`, lines, points: spots(cone), upperOnly: true }];
}

function upperOnly(mark: Mark): Mark {
  return mark.mark === 'leader' ? { ...mark, upperOnly: true } : mark;
}

function finishMark(placed: Placed<OutsideSection | InsideSection>, sizes: Sizes): Mark[] {
  const { feature, from, to } = placed;
  if (feature.finish === undefined) return [];
  const text = `Ra ${numberText(feature.finish, 3, sizes.style)}`;
  const side = placed.side === 'outside' ? 'outside' : 'inside';
  return [{ mark: 'finish', of: feature.id, title: `${nameOf(feature)}, roughness`, text, from, to, side }];
}

export function insideChain(part: PartResult, side: 'inside left' | 'inside right'): readonly Segment[] {
  return side === 'inside left' ? part.outline.insideLeft : part.outline.insideRight;
}

export function lengthMark(
  of: string,
  title: string,
  text: string,
  from: Mm,
  to: Mm,
  where: LengthMark['where'],
  rank: number,
): LengthMark {
  return { mark: 'length', of, title, text, from, to, where, rank };
}

/** Places along segments where an arrow may touch them, the middle first. */
export function spots(segments: readonly Segment[]): Touch[] {
  return [0.5, 0.3, 0.7].flatMap((f) => segments.map((s) => ({ ...pointAt(s, f), run: headingAt(s, f) })));
}

export function nameOf(feature: { readonly id: string; readonly name?: string | undefined }): string {
  return feature.name ?? feature.id.replaceAll('-', ' ');
}

function round(value: Mm): Mm {
  return Math.round(value * 100) / 100;
}
