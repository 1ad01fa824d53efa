/** Where grooves lie: sizes assumed where missing, and what does not fit. */
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import { called, type Gaps } from './gaps.ts';
import type { GrooveCut } from './grooves.ts';
import type { PlacedSection } from './place-sections.ts';
import type { Groove, Part } from './schema.ts';

export interface PlacedGroove {
  readonly feature: Groove;
  readonly section: PlacedSection;
  /** Left and right end along the part. */
  readonly cut: GrooveCut;
}

export function placeGrooves(
  part: Part,
  sections: readonly PlacedSection[],
  gaps: Gaps,
): { grooves: PlacedGroove[]; findings: Finding[] } {
  const grooves: PlacedGroove[] = [];
  const findings: Finding[] = [];
  for (const groove of part.grooves ?? []) {
    const section = sections.find((s) => s.feature.id === groove.on);
    if (!section) continue;
    const placed = place(groove, section, gaps);
    const misfit = sticksOut(placed) ?? overlaps(placed, grooves);
    if (misfit) findings.push(misfit);
    else grooves.push(placed);
  }
  return { grooves, findings };
}

function place(groove: Groove, section: PlacedSection, gaps: Gaps): PlacedGroove {
  const room = section.to - section.from;
  const diameter = section.startRadius + section.endRadius;
  const width = gaps.size(groove, 'width', groove.width, Math.min(room / 3, diameter / 4));
  const shallow = section.side === 'outside' ? 0.85 * diameter : 1.15 * diameter;
  const floor = gaps.size(groove, 'floorDiameter', groove.floorDiameter, shallow) / 2;
  const along = groove.along?.nominal ?? gaps.assume(groove, 'along', Math.max((room - width) / 2, 1e-6));
  const isMirrored = section.side === 'inside right';
  const from = isMirrored ? section.to - along - width : section.from + along;
  const to = from + width;
  const rims = [from > section.from + 1e-9, to < section.to - 1e-9] as const;
  const radii = { floorRadius: groove.floorRadius ?? 0, edgeRadius: groove.edgeRadius ?? 0 };
  return {
    feature: groove,
    section,
    cut: { id: groove.id, from, to, floor, ...radii, rims, assumed: gaps.in(groove) },
  };
}

function stop(
  groove: Groove,
  id: string,
  field: string,
  says: string,
  because: Finding['because'],
  remedies: readonly string[],
): Finding {
  return { id, level: 'stop', stage: 'part', at: `${groove.id}.${field}`, says, because, remedies };
}

function sticksOut({ feature, section, cut }: PlacedGroove): Finding | undefined {
  const over = Math.max(section.from - cut.from, cut.to - section.to);
  if (over <= 1e-9) return undefined;
  const far = section.side === 'inside right' ? section.to - cut.from : cut.to - section.from;
  return stop(
    feature,
    'part.groove-wider-than-section',
    'width',
    `The groove ${called(feature)} reaches beyond the ${called(section.feature)}; it is left out of the drawing.`,
    [
      {
        what: `far wall of the groove, against the length of the ${called(section.feature)}`,
        value: round(far),
        unit: 'mm',
        limit: round(section.to - section.from),
      },
    ],
    ['move the groove', 'make it narrower', `make the ${called(section.feature)} longer`],
  );
}

function overlaps({ feature, section, cut }: PlacedGroove, others: readonly PlacedGroove[]): Finding | undefined {
  const other = others.find(
    (o) => o.section.side === section.side && o.cut.from < cut.to - 1e-9 && o.cut.to > cut.from + 1e-9,
  );
  if (!other) return undefined;
  const overlap = Math.min(cut.to, other.cut.to) - Math.max(cut.from, other.cut.from);
  return stop(
    feature,
    'part.grooves-overlap',
    'along',
    `The grooves ${called(feature)} and ${called(other.feature)} run into each other; the first is left out of the drawing.`,
    [{ what: 'overlap', value: round(overlap), unit: 'mm', limit: 0 }],
    ['move one of them', 'make one groove of the two'],
  );
}

/** A groove whose floor does not lie below the surface. */
export function withoutDepth({ feature, section, cut }: PlacedGroove, surface: Mm): Finding {
  const isOutside = section.side === 'outside';
  return stop(
    feature,
    'part.groove-without-depth',
    'floorDiameter',
    `The floor of the groove ${called(feature)} does not lie ${isOutside ? 'below' : 'outside'} the surface of the ${called(section.feature)}; it is left out of the drawing.`,
    [
      {
        what: 'diameter at the floor, against the surface',
        value: round(2 * cut.floor),
        unit: 'mm',
        limit: round(2 * surface),
      },
    ],
    [`make the floor diameter ${isOutside ? 'smaller' : 'larger'} than the surface`],
  );
}

/** An inside groove that opens to the face is a counterbore. */
export function opensToFace({ feature }: PlacedGroove): Finding {
  return stop(
    feature,
    'part.groove-open-to-face',
    'along',
    `The groove ${called(feature)} opens to the face; it is left out of the drawing.`,
    [{ what: 'distance from the face', value: 0, unit: 'mm', limit: 0 }],
    ['enter it as a section of the hole: a counterbore', 'move it inward'],
  );
}

/** A groove that meets an edge which turns back on itself, as the rim of a hole in a dome may. */
export function runsIntoEdge({ feature, section, cut }: PlacedGroove): Finding {
  return stop(
    feature,
    'part.groove-runs-into-edge',
    'along',
    `The groove ${called(feature)} runs into the edge of the ${called(section.feature)}; it is left out of the drawing.`,
    [{ what: 'position of its near wall along the part', value: round(cut.from), unit: 'mm' }],
    ['move the groove', 'make the edge smaller'],
  );
}

/** A radius of a groove for which there is no room. */
export function radiusMisfit({ feature, cut }: PlacedGroove, field: 'floorRadius' | 'edgeRadius', room: Mm): Finding {
  const words = field === 'floorRadius' ? 'radius at the floor' : 'radius on the edges';
  return stop(
    feature,
    'part.edge-larger-than-section',
    field,
    `The ${words} of the groove ${called(feature)} does not fit; it is left out of the drawing.`,
    [{ what: words, value: cut[field], unit: 'mm', limit: round(room) }],
    [`make the ${words} smaller`, 'make the groove wider or deeper'],
  );
}

const round = (value: number) => Math.round(value * 1e4) / 1e4;
