/** Grooves: noted on the view where they are large enough to see, otherwise shown enlarged. */
import type { PartResult, Placed } from '../part/part-result.ts';
import type { Groove } from '../part/schema.ts';
import type { Mm } from '../units/quantities.ts';
import type { LeaderMark, Mark } from './marks.ts';
import { sizeText } from './numbers.ts';
import { lengthMark, nameOf } from './section-marks.ts';
import type { Sizes } from './sizes.ts';

/** Grooves with the same sizes. */
export interface GrooveGroup {
  readonly grooves: readonly Placed<Groove>[];
  readonly width: string | undefined;
  readonly floor: string | undefined;
  readonly floorRadius: string | undefined;
  readonly edgeRadius: string | undefined;
  readonly finish: number | undefined;
}

/** Narrower or shallower than this on paper, a groove cannot be dimensioned where it is. */
const legible: Mm = 3;
const legibleDepth: Mm = 0.8;

export function grooveGroups(part: PartResult, sizes: Sizes): GrooveGroup[] {
  const groups = new Map<string, { group: GrooveGroup; grooves: Placed<Groove>[] }>();
  for (const placed of part.grooves) {
    const { feature } = placed;
    const width = sizes.take(feature.id, 'width');
    const floor = sizes.take(feature.id, 'floorDiameter');
    const radius = (field: 'floorRadius' | 'edgeRadius') => {
      const size = sizes.take(feature.id, field);
      return size && `R${sizeText(size.nominal, sizes.style)}`;
    };
    const group = {
      width: width && sizes.text(width),
      floor: floor && sizes.text(floor, 'Ø'),
      floorRadius: radius('floorRadius'),
      edgeRadius: radius('edgeRadius'),
      finish: feature.finish,
    };
    const key = JSON.stringify([group, placed.side]);
    const known = groups.get(key);
    if (known) known.grooves.push(placed);
    else groups.set(key, { group: { ...group, grooves: [] }, grooves: [placed] });
  }
  return [...groups.values()].map(({ group, grooves }) => ({ ...group, grooves }));
}

export function needsDetail(group: GrooveGroup, scale: number): boolean {
  const first = group.grooves[0];
  if (!first) return false;
  const radii = group.floorRadius !== undefined || group.edgeRadius !== undefined;
  const depth = (first.largest - first.smallest) / 2;
  const width = (first.to - first.from) * scale;
  return width < legible || depth * scale < legibleDepth || (radii && width < 2 * legible);
}

/** How far along each groove lies, wherever its own sizes are told. */
export function groovePlaces(part: PartResult, sizes: Sizes): Mark[] {
  return part.grooves.flatMap((placed) => {
    const along = sizes.take(placed.feature.id, 'along');
    if (!along) return [];
    const title = `${nameOf(placed.feature)}, place`;
    if (placed.side === 'outside') {
      const start = placed.from - along.nominal;
      return [lengthMark(along.id, title, sizes.text(along), start, placed.from, 'below', 1)];
    }
    const left = placed.side === 'inside left';
    const [from, to] = left ? [placed.from - along.nominal, placed.from] : [placed.to, placed.to + along.nominal];
    return [lengthMark(along.id, title, sizes.text(along), from, to, 'above', 0)];
  });
}

/** Width by floor diameter, with the radii, at the groove itself. */
export function grooveNote(group: GrooveGroup): LeaderMark[] {
  const first = group.grooves[0];
  if (!first) return [];
  const count = group.grooves.length > 1 ? `${group.grooves.length}× ` : '';
  const radii = [group.floorRadius, group.edgeRadius && `edges ${group.edgeRadius}`].filter((r) => r !== undefined);
  const lines = [
    `${count}${[group.width, group.floor].filter((t) => t !== undefined).join(' × ')}`,
    ...(radii.length > 0 ? [radii.join(', ')] : []),
  ];
  if (lines[0] === count) return [];
  const outside = first.side === 'outside';
  const points = group.grooves.flatMap((g) =>
    [0.5, 0.35, 0.65].map((f) => ({ z: g.from + f * (g.to - g.from), r: (outside ? g.smallest : g.largest) / 2 })),
  );
  const of = first.feature.id;
  return [{ mark: 'leader', of, title: nameOf(first.feature), lines, points, upperOnly: !outside }];
}
