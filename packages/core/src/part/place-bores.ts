/** Where each inside section lies, measured from the face it is entered from. */
import type { Finding } from '../finding.ts';
import { type Mm, radians } from '../units/quantities.ts';
import { called, type Gaps } from './gaps.ts';
import type { PlacedSection } from './place-sections.ts';
import type { ReadThread } from './read-threads.ts';
import type { InsideSection, Part } from './schema.ts';

/** A stretch of a hole: its radius runs evenly from one depth to another. */
export interface Stretch {
  readonly section: string;
  /** Depths from the face. */
  readonly from: Mm;
  readonly to: Mm;
  readonly startRadius: Mm;
  readonly endRadius: Mm;
  readonly assumed: boolean;
}

export interface Hole {
  readonly sections: readonly PlacedSection<InsideSection>[];
  /** What each tool leaves open; where stretches overlap the widest counts. */
  readonly stretches: readonly Stretch[];
  readonly findings: readonly Finding[];
}

/** Usual included angle of a twist drill's point. */
const usualPoint = 118;

export function placeBores(
  part: Part,
  end: 'left' | 'right',
  length: Mm,
  largest: Mm,
  threads: readonly ReadThread[],
  gaps: Gaps,
): Hole {
  const entered = part.inside?.[end] ?? [];
  const findings: Finding[] = [];
  const depths = depthsOf(entered, length, gaps);
  const order = entered.map((section, i) => ({ section, depth: depths[i] ?? length }));
  const base = order.filter(({ section }) => section.kind !== 'undercut').sort((a, b) => a.depth - b.depth);
  const sections: PlacedSection<InsideSection>[] = [];
  const stretches: Stretch[] = [];
  const add = (section: InsideSection, from: Mm, to: Mm, startRadius: Mm, endRadius: Mm) => {
    const assumed = gaps.in(section);
    const [a, b] = end === 'left' ? [from, to] : [length - to, length - from];
    const [ra, rb] = end === 'left' ? [startRadius, endRadius] : [endRadius, startRadius];
    sections.push({ feature: section, from: a, to: b, startRadius: ra, endRadius: rb, side: `inside ${end}`, assumed });
    stretches.push({ section: section.id, from, to, startRadius, endRadius, assumed });
  };

  let reached = 0;
  let radius = largest / 4;
  for (const { section, depth } of base) {
    const [start, last] = radiiOf(section, radius, threads, gaps);
    if (depth - reached <= 1e-9) {
      findings.push(noLength(section, depth, reached));
      continue;
    }
    add(section, reached, depth, start, last);
    if (section.kind === 'drilled' && depth < length - 1e-9) {
      const point = last / Math.tan(radians(section.pointAngle ?? usualPoint) / 2);
      if (point > 1e-9) {
        const s = { section: section.id, from: depth, to: depth + point, startRadius: last, endRadius: 0 };
        stretches.push({ ...s, assumed: gaps.in(section) });
      }
    }
    reached = depth;
    radius = last;
  }
  for (const { section, depth } of order) {
    if (section.kind !== 'undercut') continue;
    const before = base.findLast((b) => b.depth < depth - 1e-9)?.depth ?? 0;
    const width = section.width?.nominal ?? (section.depth !== undefined ? depth - before : undefined);
    const from = depth - (width ?? gaps.assume(section, 'width', largest / 10));
    const [r] = radiiOf(section, 1.1 * radius, threads, gaps);
    if (from > reached + 1e-9 || from < -1e-9) findings.push(hangsFree(section, from, reached));
    add(section, Math.max(0, Math.min(from, reached)), depth, r, r);
  }
  return { sections, stretches, findings };
}

/** Depth of every section; a missing one lies beyond the one before, an undercut's by its own width. */
function depthsOf(sections: readonly InsideSection[], length: Mm, gaps: Gaps): Mm[] {
  const depths: Mm[] = [];
  for (const [i, section] of sections.entries()) {
    if (section.depth === 'through') depths.push(length);
    else if (section.depth) depths.push(section.depth.nominal);
    else {
      const before = depths.at(-1) ?? 0;
      const following = sections.slice(i + 1).find((s) => s.depth !== undefined)?.depth;
      const limit = following === undefined || following === 'through' ? length : following.nominal;
      const room = limit > before ? limit - before : length / 4;
      const isMeasured = section.kind === 'undercut' && section.width !== undefined;
      depths.push(
        isMeasured ? before + (section.width?.nominal ?? 0) : gaps.assume(section, 'depth', before + room / 2),
      );
    }
  }
  return depths;
}

function radiiOf(section: InsideSection, before: Mm, threads: readonly ReadThread[], gaps: Gaps): [Mm, Mm] {
  if (section.kind === 'cone') {
    const start = gaps.size(section, 'startDiameter', section.startDiameter, 2 * before);
    return [start / 2, gaps.size(section, 'endDiameter', section.endDiameter, 0.75 * start) / 2];
  }
  const tapped = threads.find((t) => t.feature.on === section.id)?.thread?.minorDiameter;
  const diameter = section.diameter?.nominal ?? tapped ?? gaps.assume(section, 'diameter', 2 * before);
  return [diameter / 2, diameter / 2];
}

function noLength(section: InsideSection, depth: Mm, reached: Mm): Finding {
  return {
    id: 'part.bore-section-without-length',
    level: 'stop',
    stage: 'part',
    at: `${section.id}.depth`,
    says: `The ${called(section)} ends where another section of the hole ends; nothing of it is left.`,
    because: [{ what: 'depth of its far end from the face', value: depth, unit: 'mm', limit: reached }],
    remedies: ['depths count from the face to the far end: enter a depth beyond the section before it', 'leave it out'],
  };
}

function hangsFree(section: InsideSection, from: Mm, reached: Mm): Finding {
  return {
    id: 'part.undercut-not-reached',
    level: 'stop',
    stage: 'part',
    at: `${section.id}.width`,
    says: `The undercut ${called(section)} does not begin in the hole that leads to it.`,
    because: [{ what: 'depth at which it begins', value: from, unit: 'mm', limit: from < 0 ? 0 : reached }],
    remedies: from < 0 ? ['make it narrower or deeper'] : ['make it wider', 'deepen the hole before it'],
  };
}

/** The widest of all stretches at every depth, as stretches that follow one another from the face on; none beyond the first gap. */
export function widest(stretches: readonly Stretch[]): Stretch[] {
  const cuts = [...new Set(stretches.flatMap((s) => [s.from, s.to]))].sort((a, b) => a - b);
  for (const [i, a] of stretches.entries()) for (const b of stretches.slice(i + 1)) cuts.push(...crossingDepth(a, b));
  cuts.sort((a, b) => a - b);
  const found: Stretch[] = [];
  for (const [i, to] of cuts.entries()) {
    const from = cuts[i - 1];
    if (from === undefined || to - from <= 1e-9) continue;
    const middle = (from + to) / 2;
    const covering = stretches.filter((s) => s.from <= middle && s.to >= middle);
    const top = covering.sort((a, b) => radiusOf(b, middle) - radiusOf(a, middle))[0];
    if (!top) break;
    const last = found.at(-1);
    const continues =
      last !== undefined && last.section === top.section && last.to >= from - 1e-9 && sameSlope(last, top);
    if (continues && last && Math.abs(last.endRadius - radiusOf(top, from)) < 1e-9) {
      found[found.length - 1] = { ...last, to, endRadius: radiusOf(top, to) };
    } else {
      found.push({ ...top, from, to, startRadius: radiusOf(top, from), endRadius: radiusOf(top, to) });
    }
  }
  return found;
}

function radiusOf(s: Stretch, depth: Mm): Mm {
  return s.startRadius + ((s.endRadius - s.startRadius) * (depth - s.from)) / (s.to - s.from);
}

const slope = (s: Stretch) => (s.endRadius - s.startRadius) / (s.to - s.from);
const sameSlope = (a: Stretch, b: Stretch) => Math.abs(slope(a) - slope(b)) < 1e-9;

function crossingDepth(a: Stretch, b: Stretch): Mm[] {
  if (sameSlope(a, b)) return [];
  const depth = a.from + (radiusOf(b, a.from) - a.startRadius) / (slope(a) - slope(b));
  return depth > Math.max(a.from, b.from) && depth < Math.min(a.to, b.to) ? [depth] : [];
}
