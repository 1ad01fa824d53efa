/**
 * Which lengths of the main view are cut open above the axis. A solid shaft is not sectioned along its length
 * (ISO 128-3, from memory); where only a short hole is to be seen in a long part, the view is cut open as far as the hole
 * goes and a little beyond, and ends there in a freehand line.
 */
import type { Outline, Segment } from '../part/outline-types.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';

export interface Opening {
  readonly from: Mm;
  readonly to: Mm;
  /** Where it ends within the part; the cut goes through to the face elsewhere. */
  readonly breaks: readonly Mm[];
}

/** Solid metal beyond the floor of a hole that is cut open with it, as a share of the largest diameter. */
const beyond = 0.12;
/** A part of which more than this share would be opened is opened altogether. */
const mostOpened = 0.6;

export function openings(part: PartResult): readonly Opening[] {
  const { outline } = part;
  const { length } = outline;
  if (outline.insideLeft.length === 0 && outline.insideRight.length === 0) return [];
  const margin = beyond * outline.largestDiameter;
  const left = depth(part, 'left');
  const right = depth(part, 'right');
  const to = left > 0 ? pastFeatures(part, left + margin, 1) : 0;
  const from = right > 0 ? pastFeatures(part, length - right - margin, -1) : length;
  if (to >= from || to + length - from > mostOpened * length) return [{ from: 0, to: length, breaks: [] }];
  return [
    ...(to > 0 ? [{ from: 0, to, breaks: [to] }] : []),
    ...(from < length ? [{ from, to: length, breaks: [from] }] : []),
  ];
}

/** Whether a place along the part is cut open. */
export function isOpen(opened: readonly Opening[], z: Mm): boolean {
  return opened.some(({ from, to }) => z >= from - 1e-9 && z <= to + 1e-9);
}

/** How far the deepest hole or socket goes in from a face. */
function depth({ outline, notTurned, dimensions }: PartResult, face: 'left' | 'right'): Mm {
  const chain = face === 'left' ? outline.insideLeft : outline.insideRight;
  if (chain.length === 0) return 0;
  const pockets = notTurned.filter((f) => 'face' in f && f.face === face);
  const depths = pockets.map((f) => dimensions.find((d) => d.id === `${f.id}.depth`)?.nominal ?? 0);
  return Math.max(reach(chain, outline, face), ...depths);
}

function reach(chain: readonly Segment[], { length }: Outline, face: 'left' | 'right'): Mm {
  const ends = chain.flatMap((s) => [s.from.z, s.to.z]);
  return Math.max(...ends.map((z) => (face === 'left' ? z : length - z)));
}

/** A break through a thread, a groove or a face that is not turned would hide what it is: it goes beyond them. */
function pastFeatures(part: PartResult, z: Mm, way: 1 | -1): Mm {
  const clear = 0.04 * part.outline.largestDiameter;
  const stretches = [
    ...part.threads.filter((t) => t.side === 'external'),
    ...part.grooves.filter((g) => g.side === 'outside'),
    ...part.outside.filter((s) => part.notTurned.some((f) => 'on' in f && f.on === s.feature.id)),
  ];
  let at = z;
  for (const { from, to } of stretches.toSorted((a, b) => way * (a.from - b.from)))
    if (at > from - clear && at < to + clear) at = way === 1 ? to + clear : from - clear;
  return Math.min(Math.max(at, 0), part.outline.length);
}
