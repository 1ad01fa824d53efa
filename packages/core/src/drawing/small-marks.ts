/** What is to be said about edges, threads and what is not turned. */
import type { Segment } from '../part/outline-types.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Edge, NotTurned } from '../part/schema.ts';
import type { LeaderMark, Mark } from './marks.ts';
import { fractionText, numberText, sizeText } from './numbers.ts';
import { lengthMark, nameOf, spots } from './section-marks.ts';
import type { Sizes } from './sizes.ts';
import { radiusAt } from './view.ts';

/** Chamfers, radii and reliefs; the same one at several places is told once, with its count. */
export function edgeMarks(part: PartResult, sizes: Sizes): Mark[] {
  const { outside, insideLeft, insideRight } = part.outline;
  const inside = [...insideLeft, ...insideRight];
  return [
    ...edgeNotes(
      part.outside.map((p) => p.feature),
      outside,
      sizes,
      false,
    ),
    ...edgeNotes(
      part.inside.map((p) => p.feature),
      inside,
      sizes,
      true,
    ),
  ];
}

interface HasEdges {
  readonly id: string;
  readonly name?: string | undefined;
  readonly startEdge?: Edge | undefined;
  readonly endEdge?: Edge | undefined;
}

function edgeNotes(features: readonly HasEdges[], chain: readonly Segment[], sizes: Sizes, inside: boolean): Mark[] {
  const groups = new Map<
    string,
    { readonly of: string; readonly title: string; readonly at: Segment[]; count: number }
  >();
  for (const feature of features) {
    for (const end of ['startEdge', 'endEdge'] as const) {
      const edge = feature[end];
      const at = chain.filter((s) => s.feature === `${feature.id}.${end}`);
      if (!edge || at.length === 0) continue;
      sizes.take(feature.id, end);
      const text = edgeText(edge, sizes);
      const title = `${nameOf(feature)}, ${edge.kind} at the ${end === 'startEdge' ? 'start' : 'end'}`;
      const group = groups.get(text) ?? { of: `${feature.id}.${end}`, title, at: [], count: 0 };
      group.at.push(...at.filter((s) => edge.kind !== 'fillet' || s.kind === 'arc'));
      group.count += 1;
      groups.set(text, group);
    }
  }
  return [...groups].map(([text, { of, title, at, count }]): LeaderMark => {
    const lines = [count > 1 ? `${count}× ${text}` : text];
    return { mark: 'leader', of, title, lines, points: spots(at).slice(0, 12), upperOnly: inside };
  });
}

function edgeText(edge: Edge, sizes: Sizes): string {
  const { style } = sizes;
  switch (edge.kind) {
    case 'chamfer':
      return `${fractionText(edge.size, style)}×${numberText(edge.angle ?? 45, 2, style)}°`;
    case 'fillet':
      return `R${fractionText(edge.radius, style)}`;
    case 'relief':
      return `relief ${fractionText(edge.width, style)}×${fractionText(edge.depth, style)}`;
  }
}

export function threadMarks(part: PartResult, sizes: Sizes): Mark[] {
  return part.threads.flatMap((placed) => {
    const inside = placed.side === 'internal';
    const radius = placed.thread.majorDiameter / 2;
    const points = [0.5, 0.3, 0.7].map((f) => ({ z: placed.from + f * (placed.to - placed.from), r: radius }));
    const title = `thread on ${placed.on.replaceAll('-', ' ')}`;
    const lines = [placed.thread.designation.replace(/(\d)x(?=[\d.])/g, '$1×')];
    const mark: Mark = { mark: 'leader', of: placed.id, title, lines, points, upperOnly: inside };
    const length = sizes.take(placed.id, 'length');
    if (!length) return [mark];
    const where = inside ? 'above' : 'below';
    const rank = inside ? 0 : 1;
    return [mark, lengthMark(length.id, `${title}, length`, sizes.text(length), placed.from, placed.to, where, rank)];
  });
}

/** Of what is not turned: what can be told on the main view. Sizes across flats stand at the end view. */
export function notTurnedMarks(part: PartResult, sizes: Sizes): Mark[] {
  return part.notTurned.flatMap((feature): Mark[] => {
    const on = 'on' in feature ? part.outside.find((p) => p.feature.id === feature.on) : undefined;
    const title = nameOf(feature);
    switch (feature.kind) {
      case 'hexagon socket':
      case 'slot': {
        const depth = sizes.take(feature.id, 'depth');
        if (!depth) return [];
        const { length } = part.outline;
        const [from, to] = feature.face === 'left' ? [0, depth.nominal] : [length - depth.nominal, length];
        return [lengthMark(depth.id, `${title}, depth`, sizes.text(depth), from, to, 'above', 0)];
      }
      case 'flats': {
        const marks: Mark[] = [];
        const start = (on?.from ?? 0) + (sizes.peek(feature.id, 'along')?.nominal ?? 0);
        const along = sizes.take(feature.id, 'along');
        if (along && on) {
          marks.push(lengthMark(along.id, `${title}, place`, sizes.text(along), on.from, start, 'below', 1));
        }
        const length = sizes.take(feature.id, 'length');
        if (length) {
          const to = start + length.nominal;
          marks.push(lengthMark(length.id, `${title}, length`, sizes.text(length), start, to, 'below', 1));
        }
        return marks;
      }
      case 'cross hole': {
        if (!on) return [];
        const marks: Mark[] = [];
        const along = sizes.peek(feature.id, 'along');
        const z = on.from + (along?.nominal ?? (on.to - on.from) / 2);
        if (along) {
          sizes.take(feature.id, 'along');
          marks.push(lengthMark(along.id, `${title}, place`, sizes.text(along), on.from, z, 'below', 1));
        }
        const hole = sizes.take(feature.id, 'diameter');
        if (hole) {
          const r = hole.nominal / 2;
          const lines = [`${sizes.text(hole, 'Ø')}${feature.through ? ' through' : ' one wall'}`];
          const points = [45, 135, 60, 120].map((a) => ({
            z: z + r * Math.cos((a * Math.PI) / 180),
            r: r * Math.sin((a * Math.PI) / 180),
          }));
          marks.push({ mark: 'leader', of: hole.id, title, lines, points });
        }
        return marks;
      }
      case 'knurl': {
        if (!on) return [];
        const z = (on.from + on.to) / 2;
        const points = [{ z, r: radiusAt(part.outline.outside, z) ?? on.largest / 2 }];
        return [{ mark: 'leader', of: feature.id, title, lines: [knurlText(feature, sizes)], points }];
      }
      default:
        return [];
    }
  });
}

function knurlText(feature: Extract<NotTurned, { kind: 'knurl' }>, sizes: Sizes): string {
  const pitch = feature.pitch === undefined ? '' : `, pitch ${sizeText(feature.pitch, sizes.style)}`;
  return `${feature.pattern} knurl${pitch}`;
}
