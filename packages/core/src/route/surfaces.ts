/** What operations leave of the outline of the part: surfaces of sections before their grooves and edges are cut, and those themselves. */
import type { PartResult, Placed } from '../part/part-result.ts';
import type { InsideSection, OutsideSection } from '../part/schema.ts';
import type { Mm } from '../units/quantities.ts';
import { cutDown, cutOpen, flat, type Piece, type Profile, radiusOf, sloping, within } from './profile.ts';
import { finishedWork } from './workpiece.ts';

/** The finished pieces that carry one of these names: a groove, or an edge (`head.startEdge`). */
export function piecesOf(part: PartResult, side: 'outside' | 'inside', features: readonly string[]): Profile {
  return finishedWork(part.outline)[side].filter((p) => features.includes(p.of.feature));
}

/** The outside of a section as its finishing cut leaves it: fillets are in it, grooves and broken edges are still to come. */
export function sectionOutside(part: PartResult, section: Placed<OutsideSection>): Profile {
  const own = within(finishedWork(part.outline).outside, section.from, section.to);
  return higher(own, bareOutside(own, section));
}

/** The hole of a section as boring leaves it: fillets in its corners stand, grooves and edges are still to come. */
export function sectionInside(part: PartResult, section: Placed<InsideSection>): Profile {
  const own = within(finishedWork(part.outline).inside, section.from, section.to);
  const { kind, id } = section.feature;
  if (kind === 'undercut') return piecesOf(part, 'inside', [id]);
  const bare = kind === 'cone' ? bridged(own, id, section) : flat(section.from, section.to, section.largest / 2, id);
  return cutDown(own, bare);
}

/** Is anything of this inside section left in the part, or does another hole swallow all of it? */
export function isInPart(part: PartResult, section: Placed<InsideSection>): boolean {
  return finishedWork(part.outline).inside.some((p) => p.of.feature === section.feature.id);
}

function bareOutside(own: Profile, section: Placed<OutsideSection>): Profile {
  const { id, kind } = section.feature;
  return kind === 'cylinder' ? flat(section.from, section.to, section.largest / 2, id) : bridged(own, id, section);
}

/** The pieces of a section alone, run on straight where grooves and edges are missing from it. */
function bridged(own: Profile, id: string, { from, to }: { from: Mm; to: Mm }): Profile {
  const pieces = own.filter((p) => p.of.feature === id);
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (!first || !last) return own;
  const between = pieces.slice(1).flatMap((p, i): Profile => {
    const before = pieces[i];
    return before && p.from - before.to > 1e-6
      ? sloping(before.to, p.from, radiusOf(before, before.to), radiusOf(p, p.from), id)
      : [];
  });
  const lead = sloping(from, first.from, runOn(first, from), radiusOf(first, first.from), id);
  const tail = sloping(last.to, to, radiusOf(last, last.to), runOn(last, to), id);
  return [...lead, ...pieces, ...between, ...tail].toSorted((a, b) => a.from - b.from);
}

/** Radius at a place beyond a piece, straight on from its nearer end. */
function runOn(piece: Piece, z: Mm): Mm {
  const inset = 0.01 * (piece.to - piece.from);
  const [end, near] = z < piece.from ? [piece.from, piece.from + inset] : [piece.to, piece.to - inset];
  const slope = (radiusOf(piece, near) - radiusOf(piece, end)) / (near - end);
  // Never thinner than nothing, nor steeper than a chamfer that would undercut its neighbour.
  return Math.max(0, radiusOf(piece, end) + Math.max(-2, Math.min(2, slope)) * (z - end));
}

/** The higher of two profiles, where either has a surface. */
function higher(a: Profile, b: Profile): Profile {
  return cutOpen(a, b);
}

/**
 * How far towards its end a straight cut of one radius may go before it enters the finished surface.
 *
 * @param near  where the cut begins
 * @param far  where it would end
 * @returns the place nearest to `far` up to which nothing finished stands above the radius
 */
export function clearTo(part: PartResult, radius: Mm, near: Mm, far: Mm): Mm {
  const { outside } = finishedWork(part.outline);
  return firstMeeting(outside, (r) => r > radius + 1e-6, near, far);
}

/** As {@link clearTo} inside: up to where the hole is nowhere narrower than the radius. */
export function clearInsideTo(part: PartResult, radius: Mm, near: Mm, far: Mm): Mm {
  const { inside } = finishedWork(part.outline);
  return firstMeeting(inside, (r) => r < radius - 1e-6, near, far);
}

function firstMeeting(profile: Profile, enters: (r: Mm) => boolean, near: Mm, far: Mm): Mm {
  const pieces = near <= far ? profile : profile.toReversed();
  const [low, high] = [Math.min(near, far), Math.max(near, far)];
  for (const piece of pieces) {
    const [from, to] = [Math.max(piece.from, low), Math.min(piece.to, high)];
    if (to - from <= 1e-6) continue;
    const [start, end] = near <= far ? [from, to] : [to, from];
    const steps = 64;
    for (let i = 0; i <= steps; i++) {
      const z = start + ((end - start) * i) / steps;
      if (!enters(radiusOf(piece, z))) continue;
      if (i === 0) return start;
      return bisected(piece, enters, start + ((end - start) * (i - 1)) / steps, z);
    }
  }
  return far;
}

function bisected(piece: Piece, enters: (r: Mm) => boolean, clear: Mm, blocked: Mm): Mm {
  let [good, bad] = [clear, blocked];
  for (let i = 0; i < 30; i++) {
    const z = (good + bad) / 2;
    if (enters(radiusOf(piece, z))) bad = z;
    else good = z;
  }
  return good;
}
