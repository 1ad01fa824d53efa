import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import type { Side } from './record.ts';

/** Greatest and least size. */
export interface Band {
  readonly max: Mm;
  readonly min: Mm;
}

/** An end of a band that the standard leaves open; the figure given there is where the form itself ends. */
export type OpenEnd = 'major.max' | 'major.min' | 'minor.max' | 'minor.min';

export interface ThreadLimits {
  readonly side: Side;
  readonly toleranceClass: string;
  readonly major: Band;
  readonly pitch: Band;
  readonly minor: Band;
  /** Bolts: how far the greatest size lies below basic. Nuts: how far the least lies above. */
  readonly allowance: Mm;
  /** Ends that the standard does not set. */
  readonly notSet: readonly OpenEnd[];
  /** Bolts with a flat-rooted form: greatest minor diameter if the root is left flat. */
  readonly minorFlatMax?: Mm;
  readonly remark?: string;
  readonly sources: readonly SourceKey[];
}

/** A band to a hundredth of a micrometre, which takes the binary dust off a sum. */
export function band(max: Mm, min: Mm): Band {
  return { max: Number(max.toFixed(5)), min: Number(min.toFixed(5)) };
}
