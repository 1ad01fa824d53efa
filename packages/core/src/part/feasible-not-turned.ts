/** Hexagons, flats, slots and cross holes that do not fit where they are put. */
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import { round, stop } from './finding-words.ts';
import { called } from './gaps.ts';
import { innerRadiusAt, radiusAt } from './outline-queries.ts';
import type { Outline } from './outline-types.ts';
import type { PlacedSection } from './place-sections.ts';
import type { NotTurned } from './schema.ts';
import type { ToJudge } from './to-judge.ts';

export function judgeNotTurned({ part, sections, built }: ToJudge): Finding[] {
  const { outline } = built;
  if (outline.length === 0) return [];
  return (part.notTurned ?? []).flatMap((feature) => judgeOne(feature, sections, outline));
}

function judgeOne(feature: NotTurned, sections: readonly PlacedSection[], outline: Outline): Finding[] {
  const section = 'on' in feature ? sections.find((s) => s.feature.id === feature.on) : undefined;
  switch (feature.kind) {
    case 'hexagon socket':
      return socket(feature, outline);
    case 'hexagon':
      return section && feature.acrossFlats ? across(feature, section, feature.acrossFlats.nominal, outline, 2) : [];
    case 'flats':
      return section ? flats(feature, section, outline) : [];
    case 'cross hole':
      return section ? crossHole(feature, section) : [];
    case 'slot':
      return slot(feature, outline);
    case 'knurl':
      return [];
  }
}

type Of<K extends NotTurned['kind']> = Extract<NotTurned, { kind: K }>;

/** Smallest outside and largest inside radius between two places. */
function between(outline: Outline, from: Mm, to: Mm): { outside: Mm; inside: Mm } {
  const places = Array.from({ length: 41 }, (_, i) => from + 1e-6 + ((to - from - 2e-6) * i) / 40);
  return {
    outside: Math.min(...places.map((z) => radiusAt(outline, z))),
    inside: Math.max(...places.map((z) => innerRadiusAt(outline, z))),
  };
}

function socket(feature: Of<'hexagon socket'>, outline: Outline): Finding[] {
  const flat = feature.acrossFlats?.nominal;
  const depth = feature.depth?.nominal;
  if (depth !== undefined && depth >= outline.length) return [tooDeep(feature, depth, outline.length)];
  if (flat === undefined) return [];
  const reach = depth ?? Math.min(flat, outline.length) / 2;
  const [from, to] = feature.face === 'left' ? [0, reach] : [outline.length - reach, outline.length];
  // A domed end is narrower at its tip: the socket begins where the dome is wide enough, so only the far half counts there.
  const half = feature.face === 'left' ? [to - reach / 2, to] : [from, from + reach / 2];
  const { outside } = between(outline, half[0] ?? from, half[1] ?? to);
  const corners = (2 * flat) / Math.sqrt(3);
  const bottom = feature.face === 'left' ? to : from;
  const behind = innerRadiusAt(outline, bottom);
  const found: Finding[] = [];
  if (corners >= 2 * outside) found.push(hexagonTooLarge(feature, corners, 2 * outside, 'across corners'));
  const isOwnHole = innerRadiusAt(outline, feature.face === 'left' ? 1e-6 : outline.length - 1e-6) > 0;
  if (behind > 0 && !isOwnHole) {
    found.push(
      stop(
        'part.bores-meet',
        `${feature.id}.depth`,
        `The ${called(feature)} breaks into the hole from the other end.`,
        [{ what: 'depth of the socket', value: round(reach), unit: 'mm' }],
        ['make the socket less deep', 'make the hole less deep'],
      ),
    );
  }
  return found;
}

function hexagonTooLarge(feature: NotTurned, value: Mm, limit: Mm, what: string): Finding {
  return stop(
    'part.hexagon-larger-than-section',
    `${feature.id}.acrossFlats`,
    `The hexagon ${called(feature)} does not fit into the diameter it is made in.`,
    [{ what: `hexagon ${what}, against the diameter there`, value: round(value), unit: 'mm', limit: round(limit) }],
    ['make the hexagon smaller', 'make the diameter larger'],
  );
}

/** A hexagon or a pair of flats on a section: each flat stands `flat / parts` from the axis. */
function across(
  feature: Of<'hexagon'> | Of<'flats'>,
  section: PlacedSection,
  flat: Mm,
  outline: Outline,
  parts: 1 | 2,
): Finding[] {
  const diameter = 2 * Math.min(section.startRadius, section.endRadius);
  if (flat >= diameter - 1e-9) {
    if (feature.kind === 'hexagon') return [hexagonTooLarge(feature, flat, diameter, 'across flats')];
    return [
      stop(
        'part.flats-larger-than-section',
        `${feature.id}.acrossFlats`,
        `The flats ${called(feature)} lie outside the ${called(section.feature)}: nothing would be cut.`,
        [{ what: 'across flats, against the diameter', value: round(flat), unit: 'mm', limit: round(diameter) }],
        ['make them nearer the axis', 'make the diameter larger'],
      ),
    ];
  }
  const bore = between(outline, section.from, section.to).inside;
  const stands = parts === 2 ? flat / 2 : flat - diameter / 2;
  if (bore === 0 || stands > bore) return [];
  return [
    stop(
      'part.flats-into-bore',
      `${feature.id}.acrossFlats`,
      `The flats of the ${called(feature)} cut into the hole.`,
      [
        {
          what: 'distance of a flat from the axis, against the radius of the hole',
          value: round(stands),
          unit: 'mm',
          limit: round(bore),
        },
      ],
      ['make them farther apart', 'make the hole smaller'],
    ),
  ];
}

function flats(feature: Of<'flats'>, section: PlacedSection, outline: Outline): Finding[] {
  const room = section.to - section.from;
  const far = (feature.along?.nominal ?? 0) + (feature.length?.nominal ?? 0);
  const flat = feature.acrossFlats?.nominal;
  return [
    ...(far > room + 1e-9 ? [offSection(feature, section, far, room, 'length')] : []),
    ...(flat === undefined ? [] : across(feature, section, flat, outline, feature.count === 1 ? 1 : 2)),
  ];
}

function crossHole(feature: Of<'cross hole'>, section: PlacedSection): Finding[] {
  const hole = feature.diameter?.nominal;
  if (hole === undefined) return [];
  const room = section.to - section.from;
  const diameter = 2 * Math.min(section.startRadius, section.endRadius);
  const at = feature.along?.nominal ?? room / 2;
  const found: Finding[] = [];
  if (at + hole / 2 > room + 1e-9) found.push(offSection(feature, section, at + hole / 2, room, 'along'));
  else if (at - hole / 2 < -1e-9) found.push(offSection(feature, section, at - hole / 2, 0, 'along'));
  if (hole >= diameter) {
    found.push(
      stop(
        'part.cross-hole-larger-than-section',
        `${feature.id}.diameter`,
        `The cross hole ${called(feature)} is as wide as the ${called(section.feature)}: it would cut the part in two.`,
        [{ what: 'diameter of the hole, against the section', value: round(hole), unit: 'mm', limit: round(diameter) }],
        ['make the hole smaller'],
      ),
    );
  }
  return found;
}

function offSection(feature: NotTurned, section: PlacedSection, value: Mm, limit: Mm, field: string): Finding {
  return stop(
    'part.feature-off-section',
    `${feature.id}.${field}`,
    `The ${called(feature)} reaches beyond the ${called(section.feature)}.`,
    [
      {
        what: "its edge, from the section's left end, against the end of the section",
        value: round(value),
        unit: 'mm',
        limit: round(limit),
      },
    ],
    ['move it', 'make it smaller', `make the ${called(section.feature)} longer`],
  );
}

function slot(feature: Of<'slot'>, outline: Outline): Finding[] {
  const width = feature.width?.nominal;
  const depth = feature.depth?.nominal;
  if (depth !== undefined && depth >= outline.length) return [tooDeep(feature, depth, outline.length)];
  const reach = depth ?? 0;
  const z = feature.face === 'left' ? reach : outline.length - reach;
  const diameter = 2 * radiusAt(outline, z);
  if (width === undefined || width < diameter) return [];
  return [
    stop(
      'part.slot-wider-than-face',
      `${feature.id}.width`,
      `The slot ${called(feature)} is as wide as the end it is cut in.`,
      [{ what: 'width of the slot, against the diameter', value: round(width), unit: 'mm', limit: round(diameter) }],
      ['make the slot narrower'],
    ),
  ];
}

function tooDeep(feature: NotTurned, depth: Mm, length: Mm): Finding {
  return stop(
    'part.feature-deeper-than-part',
    `${feature.id}.depth`,
    `The ${called(feature)} is deeper than the part is long.`,
    [{ what: 'depth, against the length of the part', value: round(depth), unit: 'mm', limit: round(length) }],
    ['make it less deep'],
  );
}
