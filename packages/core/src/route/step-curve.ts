/**
 * Takes a curved section of the outline and lays it out from the free end, as the steps need it.
 */
import type { Arc, Point, Segment, Vector } from '../part/outline-types.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { OutsideSection } from '../part/schema.ts';
import type { Mm } from '../units/quantities.ts';
import type { End } from './hold.ts';
import type { StepCurve } from './tables/curve-steps.ts';

export interface CurveFromFreeEnd {
  /** As far as the curve widens away from the free end: what facing cuts from there can reach; undefined when they reach none of it. */
  readonly curve: StepCurve | undefined;
  /** Something of the curve is left over: it narrows towards the chuck, or stands behind thicker work. */
  readonly hidden: boolean;
}

/** The curve seen from the free end, cut where facing cuts from there no longer reach it. */
export function stepCurveOf(part: PartResult, section: Placed<OutsideSection>, endOut: End): CurveFromFreeEnd {
  const own = part.outline.outside.filter(
    (s) => s.feature === section.feature.id && !s.face && Math.abs(s.to.z - s.from.z) > 1e-9,
  );
  const pieces =
    endOut === 'right' ? own.toReversed().map((s) => turned(s, section.to)) : own.map((s) => shifted(s, section.from));
  const first = pieces[0];
  if (!first || behindThicker(part, section, endOut, first.from.r)) return { curve: undefined, hidden: true };
  const rising: Segment[] = [];
  for (const piece of pieces) {
    const part = risingPart(piece);
    if (part) rising.push(part);
    if (part !== piece) break;
  }
  const last = rising.at(-1);
  if (!last) return { curve: undefined, hidden: true };
  return {
    curve: { pieces: [...before(part, section, endOut, first.from.r), ...rising], depth: last.to.z },
    hidden: last.to.z < section.to - section.from - 1e-6,
  };
}

/** What is already turned between the free end and the curve: the nose of the cutter must not sink into it. */
function before(part: PartResult, section: Placed<OutsideSection>, endOut: End, r: Mm): Segment[] {
  const length = endOut === 'right' ? part.outline.length - section.to : section.from;
  return length > 1e-6 ? [{ kind: 'line', from: { z: -length, r }, to: { z: 0, r }, feature: section.feature.id }] : [];
}

/** The cutter comes in from the free end: work that stands thicker there is in its way. */
function behindThicker(part: PartResult, section: Placed<OutsideSection>, endOut: End, startRadius: Mm): boolean {
  const at = part.outside.indexOf(section);
  const between = endOut === 'right' ? part.outside.slice(at + 1) : part.outside.slice(0, at);
  return between.some((s) => s.largest / 2 > startRadius + 1e-6);
}

/** The stretch at the start of a piece over which its radius does not fall; the piece itself when that is all of it. */
function risingPart(piece: Segment): Segment | undefined {
  if (piece.kind === 'line') return piece.to.r >= piece.from.r - 1e-9 ? piece : undefined;
  const out = (piece.from.r + piece.to.r) / 2 >= piece.centre.r;
  const turnsInside = piece.centre.z > piece.from.z + 1e-9 && piece.centre.z < piece.to.z - 1e-9;
  if (!turnsInside) return piece.to.r >= piece.from.r - 1e-9 ? piece : undefined;
  if (!out) return undefined;
  const apex: Point = { z: piece.centre.z, r: piece.centre.r + piece.radius };
  const share = (apex.z - piece.from.z) / (piece.to.z - piece.from.z);
  // The sweep is carried along for completeness; the steps only use ends, centre and radius.
  return { ...piece, to: apex, sweep: piece.sweep * share };
}

function shifted(s: Segment, origin: Mm): Segment {
  const move = (p: Point): Point => ({ ...p, z: p.z - origin });
  if (s.kind === 'line') return { ...s, from: move(s.from), to: move(s.to) };
  return { ...s, from: move(s.from), to: move(s.to), centre: { ...s.centre, z: s.centre.z - origin } };
}

/** Seen from the right end: z runs the other way and the piece is walked backwards; an arc's turn keeps its sign under both. */
function turned(s: Segment, end: Mm): Segment {
  const flip = <P extends Vector>(p: P): P => ({ ...p, z: end - p.z });
  if (s.kind === 'line') return { ...s, from: flip(s.to), to: flip(s.from) };
  const arc: Arc = { ...s, from: flip(s.to), to: flip(s.from), centre: flip(s.centre) };
  return arc;
}
