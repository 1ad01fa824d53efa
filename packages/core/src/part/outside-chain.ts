/** The bare outside of the part: faces, steps and the surface of every section, before edges and grooves. */
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import { curveThrough } from './biarc.ts';
import { called, type Gaps } from './gaps.ts';
import type { Point, Segment } from './outline-types.ts';
import { crownEnd, type PlacedSection } from './place-sections.ts';
import type { OutsideSection } from './schema.ts';
import {
  arcLeaving,
  bounds,
  distance,
  isSame,
  type Label,
  label,
  line,
  minus,
  reversed,
  tidy,
  unit,
} from './segment.ts';

interface Surface {
  readonly segments: readonly Segment[];
  readonly findings: readonly Finding[];
}

export function outsideChain(sections: readonly PlacedSection<OutsideSection>[], gaps: Gaps): Surface {
  const segments: Segment[] = [];
  const findings: Finding[] = [];
  let at: Point = { z: 0, r: 0 };
  let last: PlacedSection<OutsideSection> | undefined;
  for (const [i, section] of sections.entries()) {
    const start: Point = { z: section.from, r: section.startRadius };
    segments.push(line(at, start, step(last, section, at.r)));
    const surface = surfaceOf(section, i, sections.length, gaps);
    segments.push(...surface.segments);
    findings.push(...surface.findings);
    at = { z: section.to, r: section.endRadius };
    last = section;
  }
  if (last) segments.push(line(at, { z: at.z, r: 0 }, label(last.feature.id, last.assumed, true)));
  return { segments: tidy(segments), findings };
}

/** A shoulder belongs to the larger of the two sections. */
function step(before: PlacedSection | undefined, after: PlacedSection, radius: Mm): Label {
  const owner = before && radius > after.startRadius ? before : after;
  return label(owner.feature.id, owner.assumed, true);
}

function surfaceOf(placed: PlacedSection<OutsideSection>, i: number, sections: number, gaps: Gaps): Surface {
  const section = placed.feature;
  const from: Point = { z: placed.from, r: placed.startRadius };
  const to: Point = { z: placed.to, r: placed.endRadius };
  const labels = label(section.id, placed.assumed);
  const straight = line(from, to, labels);
  switch (section.kind) {
    case 'cylinder':
    case 'cone':
      return { segments: [straight], findings: [] };
    case 'crown': {
      const end = crownEnd(i, sections);
      if (end === undefined) return { segments: [straight], findings: [crownAstray(section)] };
      const upright = { z: 0, r: 1 };
      const dome =
        end === 'left' ? arcLeaving(from, upright, to, labels) : reversed(arcLeaving(to, upright, from, labels));
      return { segments: [dome], findings: [] };
    }
    case 'arc':
      return arcOf(section, from, to, labels, gaps);
    case 'curve':
      return curveOf(section, placed, labels);
  }
}

type ArcSection = Extract<OutsideSection, { kind: 'arc' }>;

function arcOf(section: ArcSection, from: Point, to: Point, bare: Label, gaps: Gaps): Surface {
  const chord = distance(from, to);
  // The smallest radius whose arc does not reach beyond the two ends of its section.
  const least = Math.max(chord / 2, (chord * chord) / (2 * (to.z - from.z)));
  const radius = section.radius?.nominal ?? gaps.assume(section, 'radius', Math.max(1.2 * least, chord));
  const labels = label(bare.feature, bare.assumed === true || section.radius === undefined);
  const half = Math.asin(Math.min(1, chord / (2 * radius)));
  const turn = section.bulge === 'outward' ? half : -half;
  const u = unit(minus(to, from));
  const tangent = { z: u.z * Math.cos(turn) - u.r * Math.sin(turn), r: u.z * Math.sin(turn) + u.r * Math.cos(turn) };
  const arc = arcLeaving(from, tangent, to, labels);
  const refuse = (says: string, limit: Mm): Surface => ({
    segments: [line(from, to, labels)],
    findings: [arcImpossible(section, says, radius, limit)],
  });
  if (radius < least * (1 - 1e-9)) {
    return refuse(
      radius < chord / 2 ? 'cannot reach from one end to the other' : 'would reach beyond the ends of its section',
      least,
    );
  }
  if (bounds(arc).min.r < -1e-9) return refuse('would cut through the axis', leastClearRadius(from, to));
  return { segments: [arc], findings: [] };
}

/** Radius of the inward arc through both points that just touches the axis. */
function leastClearRadius(from: Point, to: Point): Mm {
  const dz = to.z - from.z;
  let low = distance(from, to) / 2;
  let high = 1e6;
  // The lowest point of the arc rises steadily with its radius.
  for (let i = 0; i < 80; i++) {
    const radius = (low + high) / 2;
    const chord = distance(from, to);
    const rise = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
    const centre = (from.r + to.r) / 2 + (rise * dz) / chord;
    if (centre - radius < 0) low = radius;
    else high = radius;
  }
  return high;
}

type CurveSection = Extract<OutsideSection, { kind: 'curve' }>;

function curveOf(section: CurveSection, placed: PlacedSection<OutsideSection>, labels: Label): Surface {
  const length = placed.to - placed.from;
  const findings: Finding[] = [];
  const alongs = section.points.map((p) => p.along);
  const misplaced = alongs.findIndex((along, i) => i > 0 && along <= (alongs[i - 1] ?? 0));
  if (misplaced > 0) findings.push(outOfOrder(section, alongs[misplaced] ?? 0, alongs[misplaced - 1] ?? 0));
  const reach = Math.max(...alongs);
  if (reach > length + 1e-9) findings.push(beyondSection(section, reach, length));
  const points = section.points
    .filter((p) => p.along <= length + 1e-9)
    .map((p): Point => ({ z: placed.from + p.along, r: p.diameter / 2 }))
    .sort((a, b) => a.z - b.z)
    .filter((p, i, all) => i === 0 || p.z - (all[i - 1]?.z ?? 0) > 1e-6);
  const start: Point = { z: placed.from, r: placed.startRadius };
  const end: Point = { z: placed.to, r: placed.endRadius };
  const smooth = points.length < 2 ? [] : curveThrough(points, labels);
  const stray = smooth.find((s) => bounds(s).min.r < -1e-9 || foldsBack(s));
  if (stray) findings.push(curveCrosses(section, stray.from.z - placed.from));
  const between = stray ? points.slice(1).map((p, i) => line(points[i] ?? p, p, labels)) : smooth;
  const first = points[0] ?? start;
  const last = points.at(-1) ?? start;
  const lead = isSame(start, first) ? [] : [line(start, first, labels)];
  const tail = isSame(last, end) ? [] : [line(last, end, labels)];
  return { segments: [...lead, ...between, ...tail], findings };
}

function foldsBack(segment: Segment): boolean {
  const { min, max } = bounds(segment);
  const slack = 1e-9;
  return (
    min.z < Math.min(segment.from.z, segment.to.z) - slack ||
    max.z > segment.to.z + slack ||
    segment.to.z < segment.from.z - slack
  );
}

function stop(id: string, at: string, says: string, because: Finding['because'], remedies: readonly string[]): Finding {
  return { id, level: 'stop', stage: 'part', at, says, because, remedies };
}

function crownAstray(section: OutsideSection): Finding {
  return stop(
    'part.crown-not-at-an-end',
    section.id,
    `The crown ${called(section)} has sections on both sides; a crown closes an end of the part. It is drawn as a plain cylinder.`,
    [],
    ['move it to the left or right end', 'make it an arc'],
  );
}

function arcImpossible(section: ArcSection, says: string, radius: Mm, limit: Mm): Finding {
  return stop(
    'part.arc-impossible',
    `${section.id}.radius`,
    `An arc of this radius through both ends of the ${called(section)} ${says}; it is drawn straight.`,
    [
      {
        what: 'radius of the arc, against the smallest possible',
        value: radius,
        unit: 'mm',
        limit: Math.ceil(limit * 1e4) / 1e4,
      },
    ],
    ['make the radius larger', 'check the two diameters and the length of the section', 'enter it as a free curve'],
  );
}

function outOfOrder(section: CurveSection, along: Mm, before: Mm): Finding {
  return stop(
    'part.curve-points-out-of-order',
    `${section.id}.points`,
    `The points of the ${called(section)} do not follow one another from left to right; they are drawn in order.`,
    [{ what: 'position of a point, against the point before it', value: along, unit: 'mm', limit: before }],
    ['enter the points from left to right, each at a place of its own', 'make a step by starting a new section'],
  );
}

function beyondSection(section: CurveSection, reach: Mm, length: Mm): Finding {
  return stop(
    'part.curve-longer-than-section',
    `${section.id}.points`,
    `Points of the ${called(section)} lie beyond its end; they are left out of the drawing.`,
    [
      {
        what: 'position of the last point, against the length of the section',
        value: reach,
        unit: 'mm',
        limit: length,
      },
    ],
    ['make the section longer', 'take the points away', 'leave the length out: it follows from the points'],
  );
}

function curveCrosses(section: CurveSection, along: Mm): Finding {
  return stop(
    'part.outline-crosses-itself',
    `${section.id}.points`,
    `A smooth curve through the points of the ${called(section)} folds back or crosses the axis; the points are joined by straight lines.`,
    [
      {
        what: 'position at which it goes astray, from the left end of the section',
        value: Math.round(along * 1000) / 1000,
        unit: 'mm',
      },
    ],
    [
      'check the points for a slip of the pen',
      'add points where the curve bends hard',
      'split the curve where it has a corner',
    ],
  );
}
