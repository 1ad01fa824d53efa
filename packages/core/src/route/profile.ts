/**
 * A surface of the work as a radius over the axis: pieces side by side from left to right, each a stretch of a line or an arc.
 * Faces, which stand square to the axis, are what lies between two pieces.
 */
import type { Arc, Segment } from '../part/outline-types.ts';
import { fractionOf, isVertical, line, reversed } from '../part/segment.ts';
import type { Mm } from '../units/quantities.ts';

export interface Piece {
  readonly from: Mm;
  readonly to: Mm;
  /** What it is a stretch of, running from left to right. */
  readonly of: Segment;
}

export type Profile = readonly Piece[];

/** Shorter than this is no piece. */
const short: Mm = 1e-7;

/** One radius from one place to another. */
export function flat(from: Mm, to: Mm, radius: Mm, feature: string): Profile {
  return sloping(from, to, radius, radius, feature);
}

export function sloping(from: Mm, to: Mm, left: Mm, right: Mm, feature: string): Profile {
  if (to - from <= short) return [];
  return [{ from, to, of: line({ z: from, r: left }, { z: to, r: right }, { feature }) }];
}

/** The surface of a chain of the outline, whichever way the chain runs. */
export function profileOf(chain: readonly Segment[]): Profile {
  return chain
    .filter((s) => !isVertical(s))
    .map((s) => (s.from.z <= s.to.z ? s : reversed(s)))
    .filter((s) => s.to.z - s.from.z > short)
    .map((of) => ({ from: of.from.z, to: of.to.z, of }))
    .toSorted((a, b) => a.from - b.from);
}

/** Radius of a piece at a place within it. */
export function radiusOf({ of }: Piece, z: Mm): Mm {
  if (of.kind === 'line') {
    const { from, to } = of;
    return from.r + ((to.r - from.r) * (z - from.z)) / (to.z - from.z);
  }
  const across = z - of.centre.z;
  const rise = Math.sqrt(Math.max(0, (of.radius - across) * (of.radius + across)));
  return of.centre.r + (isUpper(of) ? rise : -rise);
}

/** The arc lies on the far side of its centre from the axis. */
function isUpper(arc: Arc): boolean {
  return (arc.from.r + arc.to.r) / 2 >= arc.centre.r;
}

/** What lies between two places. */
export function within(profile: Profile, from: Mm, to: Mm): Profile {
  return profile
    .filter((p) => p.to > from + short && p.from < to - short)
    .map((p) => (p.from >= from && p.to <= to ? p : { ...p, from: Math.max(p.from, from), to: Math.min(p.to, to) }));
}

/** The profile as a cut leaves it that takes off what stands above the cut; where there is nothing to cut, nothing comes. */
export function cutDown(profile: Profile, cut: Profile): Profile {
  return meet(profile, cut, (own, other) => other < own, false);
}

/** The hole as a cut leaves it that takes out what the hole does not reach; where there was no hole, the cut's is there now. */
export function cutOpen(profile: Profile, cut: Profile): Profile {
  return meet(profile, cut, (own, other) => other > own, true);
}

function meet(profile: Profile, cut: Profile, takes: (own: Mm, other: Mm) => boolean, adds: boolean): Profile {
  if (cut.length === 0) return profile;
  const places = new Set<Mm>();
  for (const p of [...profile, ...cut]) places.add(p.from).add(p.to);
  for (const c of cut)
    for (const p of profile)
      if (p.from < c.to && c.from < p.to && p.of !== c.of) for (const z of crossings(p, c)) places.add(z);
  const stops = [...places].toSorted((a, b) => a - b);
  const out: Piece[] = [];
  let [own, other] = [0, 0];
  for (const [i, to] of stops.entries()) {
    const from = stops[i - 1];
    if (from === undefined || to - from <= short) continue;
    const middle = (from + to) / 2;
    while ((profile[own]?.to ?? Number.POSITIVE_INFINITY) < middle) own++;
    while ((cut[other]?.to ?? Number.POSITIVE_INFINITY) < middle) other++;
    const p = at(profile[own], middle);
    const c = at(cut[other], middle);
    const taken = c && (p ? takes(radiusOf(p, middle), radiusOf(c, middle)) : adds) ? c : p;
    if (taken) append(out, { from, to, of: taken.of });
  }
  return out;
}

function at(piece: Piece | undefined, z: Mm): Piece | undefined {
  return piece && piece.from <= z && piece.to >= z ? piece : undefined;
}

function append(out: Piece[], piece: Piece): void {
  const last = out.at(-1);
  const joins = last && Math.abs(last.to - piece.from) <= short && (last.of === piece.of || alike(last, piece));
  if (joins) out[out.length - 1] = { ...last, of: widened(last.of, piece.of), to: piece.to };
  else out.push(piece);
}

/** Two flats of one radius. */
function alike({ of: a }: Piece, { of: b }: Piece): boolean {
  const r = a.from.r;
  return (
    a.kind === 'line' &&
    b.kind === 'line' &&
    a.feature === b.feature &&
    [a.to.r, b.from.r, b.to.r].every((other) => Math.abs(other - r) < 1e-9)
  );
}

function widened(a: Segment, b: Segment): Segment {
  if (a === b || a.kind === 'arc') return a;
  return { ...a, to: b.to };
}

/** Places inside both pieces where one crosses the other. */
function crossings(a: Piece, b: Piece): Mm[] {
  const from = Math.max(a.from, b.from);
  const to = Math.min(a.to, b.to);
  if (a.of.kind === 'line' && b.of.kind === 'line') {
    const start = radiusOf(a, from) - radiusOf(b, from);
    const end = radiusOf(a, to) - radiusOf(b, to);
    return start * end < 0 ? [from + ((to - from) * start) / (start - end)] : [];
  }
  // A line and an arc, or two arcs, cross twice at most; the place between them is where the gap is least.
  return roots((z) => radiusOf(a, z) - radiusOf(b, z), from, to);
}

const samples = 16;

function roots(gap: (z: Mm) => number, from: Mm, to: Mm): Mm[] {
  const found: Mm[] = [];
  let [z0, g0] = [from, gap(from)];
  for (let i = 1; i <= samples; i++) {
    const z1 = from + ((to - from) * i) / samples;
    const g1 = gap(z1);
    if (g0 * g1 < 0) found.push(bisected(gap, z0, z1, g0));
    [z0, g0] = [z1, g1];
  }
  return found;
}

function bisected(gap: (z: Mm) => number, from: Mm, to: Mm, start: number): Mm {
  let [low, high] = [from, to];
  for (let i = 0; i < 40; i++) {
    const z = (low + high) / 2;
    if (gap(z) * start > 0) low = z;
    else high = z;
  }
  return (low + high) / 2;
}

/** The profile drawn from left to right, with the faces between its pieces and down to `end` at both ends. */
export function chainOf(profile: Profile, ends: Mm | undefined): Segment[] {
  const chain: Segment[] = [];
  let last: Segment['from'] | undefined;
  const face = (to: Segment['from'], feature: string) => {
    if (last && Math.hypot(to.r - last.r, to.z - last.z) > short) chain.push(line(last, to, { feature, face: true }));
  };
  for (const piece of profile) {
    const drawn = drawnPiece(piece);
    if (last === undefined && ends !== undefined) last = { z: drawn.from.z, r: ends };
    if (last && drawn.from.z - last.z <= short) face(drawn.from, piece.of.feature);
    chain.push(drawn);
    last = drawn.to;
  }
  if (last && ends !== undefined) face({ z: last.z, r: ends }, profile.at(-1)?.of.feature ?? '');
  return chain;
}

function drawnPiece(piece: Piece): Segment {
  const { of, from, to } = piece;
  if (from - of.from.z <= short && of.to.z - to <= short) return of;
  const a = { z: from, r: radiusOf(piece, from) };
  const b = { z: to, r: radiusOf(piece, to) };
  if (of.kind === 'line') return { ...of, from: a, to: b };
  const share = Math.min(1, fractionOf(of, b)) - Math.max(0, fractionOf(of, a));
  return { ...of, from: a, to: b, sweep: of.sweep * share };
}
