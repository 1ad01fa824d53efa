/**
 * The work as it is at a moment: the bar less all that has been cut so far, outside and inside.
 *
 * Finished surfaces stand at their nominal size; where exactly the last cut is aimed is said with its table.
 */
import type { Outline, Segment } from '../part/outline-types.ts';
import type { BeamSection } from '../structure/stepped-beam.ts';
import type { Mm } from '../units/quantities.ts';
import { chainOf, cutDown, cutOpen, flat, type Profile, profileOf, radiusOf, within } from './profile.ts';
import type { WorkOutline } from './route-result.ts';

export interface Workpiece {
  readonly outside: Profile;
  /** Holes; a stretch that is solid has no piece. */
  readonly inside: Profile;
}

/** What an operation takes off: down to a profile, open to one, or all beyond a place. */
export type Removal =
  | { readonly cuts: 'outside' | 'inside'; readonly to: Profile }
  | { readonly cuts: 'end'; readonly end: 'left' | 'right'; readonly at: Mm }
  | { readonly cuts: 'nothing' };

/** Feature of what is still as the bar came. */
const asBought = 'bar';

/** A plain bar. */
export function bar(from: Mm, to: Mm, diameter: Mm): Workpiece {
  return { outside: flat(from, to, diameter / 2, asBought), inside: [] };
}

/** The part as it is to be; worked out once for an outline. */
export function finishedWork(outline: Outline): Workpiece {
  const known = finished.get(outline);
  if (known) return known;
  const work = {
    outside: profileOf(outline.outside),
    inside: profileOf([...outline.insideLeft, ...outline.insideRight]),
  };
  finished.set(outline, work);
  return work;
}

const finished = new WeakMap<Outline, Workpiece>();

export function after(work: Workpiece, removal: Removal): Workpiece {
  switch (removal.cuts) {
    case 'outside':
      return { ...work, outside: cutDown(work.outside, removal.to) };
    case 'inside': {
      const first = work.outside[0]?.from ?? 0;
      const last = work.outside.at(-1)?.to ?? 0;
      return { ...work, inside: cutOpen(work.inside, within(removal.to, first, last)) };
    }
    case 'end':
      return removal.end === 'left'
        ? cutToLength(work, removal.at, Number.POSITIVE_INFINITY)
        : cutToLength(work, Number.NEGATIVE_INFINITY, removal.at);
    case 'nothing':
      return work;
  }
}

/** The same removal, ended at another diameter all along. */
export function endedAt(removal: Removal, diameter: Mm | undefined): Removal {
  if (diameter === undefined || (removal.cuts !== 'outside' && removal.cuts !== 'inside')) return removal;
  return { ...removal, to: removal.to.flatMap((p) => flat(p.from, p.to, diameter / 2, p.of.feature)) };
}

/** What lies between two places. */
export function cutToLength(work: Workpiece, from: Mm, to: Mm): Workpiece {
  return { outside: within(work.outside, from, to), inside: within(work.inside, from, to) };
}

/** Largest diameter between two places. */
export function largestBetween(work: Workpiece, from: Mm, to: Mm): Mm {
  let largest = 0;
  for (const p of within(work.outside, from, to)) {
    const { of } = p;
    const apex = of.kind === 'arc' && of.centre.z > p.from && of.centre.z < p.to ? radiusOf(p, of.centre.z) : 0;
    largest = Math.max(largest, radiusOf(p, p.from), radiusOf(p, p.to), apex);
  }
  return 2 * largest;
}

/** Steps that a sloping stretch of the work counts as. */
const slopeSteps = 3;
/** Thinner than this is left for nothing to bend [mm]. */
const thinnest: Mm = 0.2;

/** The work standing out of the jaws as a beam measured from the jaw faces. */
export function beamOut(work: Workpiece, jaw: Mm, endOut: 'left' | 'right'): BeamSection[] {
  const right = endOut === 'right';
  const out = right
    ? cutToLength(work, jaw, Number.POSITIVE_INFINITY)
    : cutToLength(work, Number.NEGATIVE_INFINITY, jaw);
  const places = new Set<Mm>();
  for (const p of [...out.outside, ...out.inside]) {
    const sloped = p.of.kind === 'arc' || Math.abs(p.of.to.r - p.of.from.r) > 1e-9;
    const steps = sloped ? slopeSteps : 1;
    for (let i = 0; i <= steps; i++) places.add(p.from + ((p.to - p.from) * i) / steps);
  }
  const stops = [...places].toSorted((a, b) => a - b);
  const sections: BeamSection[] = [];
  for (const [i, to] of stops.entries()) {
    const from = stops[i - 1];
    if (from === undefined || to - from < 1e-6) continue;
    const middle = (from + to) / 2;
    const outer = 2 * (radiusAtMiddle(out.outside, middle) ?? 0);
    const inner = 2 * (radiusAtMiddle(out.inside, middle) ?? 0);
    const outerDiameter = Math.max(outer, thinnest);
    const hollow = inner > 0 ? { innerDiameter: Math.min(inner, outerDiameter - thinnest / 2) } : {};
    sections.push({
      from: right ? from - jaw : jaw - to,
      to: right ? to - jaw : jaw - from,
      outerDiameter,
      ...(hollow.innerDiameter !== undefined && hollow.innerDiameter > 0 ? hollow : {}),
    });
  }
  return right ? sections : sections.toReversed();
}

/** Radius of the hole at a place; 0 where the work is solid. */
export function holeAt(work: Workpiece, z: Mm): Mm {
  return radiusAtMiddle(work.inside, z) ?? 0;
}

function radiusAtMiddle(profile: Profile, z: Mm): Mm | undefined {
  const piece = profile.find((p) => p.from <= z && p.to >= z);
  return piece && radiusOf(piece, z);
}

/**
 * The same beam in no more than so many stretches: neighbours most alike become one that bends as far as both.
 *
 * A bench part has fewer as it is; this keeps the time for parts of dozens of features within bounds.
 */
export function simplified(sections: readonly BeamSection[], most: number): readonly BeamSection[] {
  if (sections.length <= most) return sections;
  const kept = [...sections];
  const loss = (a: BeamSection, b: BeamSection) =>
    Math.abs(Math.log(slack(a) / slack(b))) * Math.min(a.to - a.from, b.to - b.from);
  const losses = kept.slice(1).map((b, i) => loss(kept[i] ?? b, b));
  while (kept.length > most) {
    let least = 0;
    for (let i = 1; i < losses.length; i++) if ((losses[i] ?? 0) < (losses[least] ?? 0)) least = i;
    const [a, b] = [kept[least], kept[least + 1]];
    if (!a || !b) return kept;
    const one = joined(a, b);
    kept.splice(least, 2, one);
    losses.splice(least, 1);
    const [before, next] = [kept[least - 1], kept[least + 1]];
    if (before) losses[least - 1] = loss(before, one);
    if (next) losses[least] = loss(one, next);
  }
  return kept;
}

/** How far a stretch bends for its length. */
function slack({ outerDiameter, innerDiameter = 0 }: BeamSection): number {
  return 1 / (outerDiameter ** 4 - innerDiameter ** 4);
}

function joined(a: BeamSection, b: BeamSection): BeamSection {
  const [la, lb] = [a.to - a.from, b.to - b.from];
  const bends = (la * slack(a) + lb * slack(b)) / (la + lb);
  const innerDiameter = (la * (a.innerDiameter ?? 0) + lb * (b.innerDiameter ?? 0)) / (la + lb);
  const outerDiameter = (1 / bends + innerDiameter ** 4) ** 0.25;
  return { from: a.from, to: b.to, outerDiameter, ...(innerDiameter > 0 ? { innerDiameter } : {}) };
}

/** As it is drawn: the outside closed at both ends, the holes as they lie. */
export function outlineOf(work: Workpiece): WorkOutline {
  return {
    from: work.outside[0]?.from ?? 0,
    to: work.outside.at(-1)?.to ?? 0,
    outside: chainOf(work.outside, 0),
    inside: holesOf(work),
  };
}

/** Each hole on its own, closed at its bottom; open where it comes out at an end. */
function holesOf(work: Workpiece): Segment[] {
  const [start, end] = [work.outside[0]?.from ?? 0, work.outside.at(-1)?.to ?? 0];
  const runs: Profile[] = [];
  let run: Profile = [];
  for (const p of work.inside) {
    const last = run.at(-1);
    if (last && p.from - last.to > 1e-6) {
      runs.push(run);
      run = [];
    }
    run = [...run, p];
  }
  if (run.length > 0) runs.push(run);
  return runs.flatMap((r) => {
    const chain = chainOf(r, 0);
    const opensLeft = (r[0]?.from ?? 0) <= start + 1e-6;
    const opensRight = (r.at(-1)?.to ?? 0) >= end - 1e-6;
    return chain.slice(opensLeft && chain[0]?.face ? 1 : 0, opensRight && chain.at(-1)?.face ? -1 : undefined);
  });
}
