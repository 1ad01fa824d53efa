/**
 * What a lathe is made of as far as a cut can feel it, and the shape of what is believed of each part.
 *
 * Knowledge: a chain of springs from the edge down to the bed and from the work back to the bed.
 */
import type { SourceKey } from '../sources/register.ts';

/** What gives way like a spring. */
export const springIds = [
  'spindleRadial',
  'spindleTilt',
  'spindleAxial',
  'grip',
  'tailstock',
  'toolPost',
  'topSlide',
  'crossSlide',
  'saddle',
] as const;

export const elementIds = [
  ...springIds,
  'toolAxialRatio',
  'toolTangentialRatio',
  'chuckMass',
  'axialMass',
  'toolMass',
  'toolDamping',
  'workDamping',
  'axialDamping',
  'toolTilt',
  'force',
  'rubbing',
  'alignment',
] as const;

export type ElementId = (typeof elementIds)[number];

/** What an alteration of the lathe can change: all but what belongs to the cut. */
export const alterableIds = elementIds.filter((id) => id !== 'force' && id !== 'rubbing');

/** One number for each element, in the element's unit. */
export type Values = Readonly<Record<ElementId, number>>;

/** What is believed of an element. */
export interface Belief {
  readonly id: ElementId;
  /** In trade words. */
  readonly what: string;
  readonly unit: string;
  /** `log`: the logarithm is normal, `spread` its standard deviation. `linear`: the value itself is normal. */
  readonly scale: 'log' | 'linear';
  readonly middle: number;
  readonly spread: number;
  /** How far the middle is to be trusted. */
  readonly basis: 'published' | 'computed' | 'common practice' | 'from memory' | 'nothing published';
  readonly source: SourceKey;
  readonly note: string;
}

/** Value of a belief at a coordinate of its normal distribution. */
export function valueAt(belief: Pick<Belief, 'scale' | 'middle'>, coordinate: number): number {
  return belief.scale === 'log' ? Math.exp(coordinate) : coordinate;
}

/** Coordinate of a belief's middle. */
export function coordinateOf(belief: Pick<Belief, 'scale' | 'middle'>): number {
  return belief.scale === 'log' ? Math.log(belief.middle) : belief.middle;
}
