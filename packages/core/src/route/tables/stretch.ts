/** Where along the work a table's cuts lie, measured from the end that stands out of the chuck. */
import type { Mm } from '../../units/quantities.ts';

export interface Stretch {
  /** Finished end of the part from which both places are measured. */
  readonly end: 'left' | 'right';
  /** Nearest to that end and furthest from it. */
  readonly near: Mm;
  readonly far: Mm;
}

/** A stretch of the part, seen from the end that stands out. */
export function stretchFrom(place: { readonly from: Mm; readonly to: Mm }, length: Mm, end: 'left' | 'right'): Stretch {
  const [near, far] = end === 'right' ? [length - place.to, length - place.from] : [place.from, place.to];
  return { end, near, far };
}

export function stretchNote({ end, near, far }: Stretch): string {
  return near < 5e-4
    ? `Along: from the ${end} end of the part to ${inMm(far)} from it.`
    : `Along: from ${inMm(near)} to ${inMm(far)}, measured from the ${end} end of the part.`;
}

/** To a thousandth, without trailing noughts. */
export function inMm(length: Mm): string {
  return `${Number(length.toFixed(3))} mm`;
}
