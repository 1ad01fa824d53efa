/** The drawing as a table: the same sizes, for who hears the sheet instead of seeing it. */
import type { Dimension, PartResult } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import { limitsText, type NumberStyle, numberText, sizeText } from './numbers.ts';
import { nameOf } from './section-marks.ts';

export interface AccessibleRow {
  /** Id of the dimension or feature, as in the picture. */
  readonly of: string;
  readonly dimension: string;
  readonly value: string;
  /** Class or deviations and the sizes they come to; what general tolerance holds; or that none is stated. */
  readonly limits: string;
}

/** In the order of the part: sizes, threads, then roughness and what is told without a size. */
export function drawingTable(part: PartResult, style: NumberStyle): AccessibleRow[] {
  return [
    ...part.dimensions.map((d) => dimensionRow(d, style)),
    ...part.threads.map((t) => {
      const dimension = `thread on the ${t.on.replaceAll('-', ' ')}`;
      return { of: t.id, dimension, value: t.thread.designation, limits: t.thread.toleranceClass ?? 'no class stated' };
    }),
    ...[...part.outside, ...part.inside, ...part.grooves].flatMap(({ feature }) => {
      if (feature.finish === undefined) return [];
      const value = `Ra ${numberText(feature.finish, 3, style)} µm`;
      return [{ of: feature.id, dimension: `roughness of the ${nameOf(feature)}`, value, limits: 'upper limit' }];
    }),
    ...part.notTurned.flatMap((feature) =>
      feature.kind === 'knurl'
        ? [{ of: feature.id, dimension: nameOf(feature), value: `${feature.pattern} knurl`, limits: '' }]
        : [],
    ),
  ];
}

function dimensionRow(dimension: Dimension, style: NumberStyle): AccessibleRow {
  const sign = dimension.kind.endsWith('diameter') ? 'Ø' : dimension.kind === 'radius' ? 'R' : '';
  const unit = style.units;
  const value = `${sign}${sizeText(dimension.nominal, style)} ${unit}`;
  return { of: dimension.id, dimension: dimension.title, value, limits: limits(dimension, style) };
}

function limits(dimension: Dimension, style: NumberStyle): string {
  const { min, max, basis } = dimension;
  if (max - min <= 0) return basis;
  const stated = limitsText(dimension, style);
  const size = (value: Mm) => sizeText(value, style);
  return `${stated === '' ? basis : stated}, ${size(min)} to ${size(max)} ${style.units}`;
}
