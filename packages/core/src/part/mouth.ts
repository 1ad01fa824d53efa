/** Where a hole opens: the outside chain and the hole cut to the line on which they meet. */

import { meetings } from './meet.ts';
import type { Segment } from './outline-types.ts';
import { fractionOf, isVertical, labelOf, line, reversed, stretch, tidy } from './segment.ts';

export interface Opened {
  readonly outside: readonly Segment[];
  readonly inside: readonly Segment[];
  /** The hole is wider than the end it opens in. */
  readonly missed: boolean;
}

/** Both chains begin at the left end; the outside chain on the axis, the hole at its own radius. */
export function openMouth(outside: readonly Segment[], inside: readonly Segment[]): Opened {
  const end = outside[0];
  const wall = inside[0];
  if (!end || !wall) return { outside, inside, missed: false };
  const candidates = isVertical(end) ? [end] : outside;
  for (const [i, a] of candidates.entries()) {
    const found = inside
      .flatMap((b, j) => meetings(a, b).map((p) => ({ j, t: fractionOf(a, p), s: fractionOf(b, p) })))
      .sort((p, q) => p.t - q.t)[0];
    const b = found && inside[found.j];
    if (!found || !b || found.t >= 1 - 1e-12) continue;
    return {
      outside: [stretch(a, found.t, 1), ...outside.slice(i + 1)],
      inside: tidy([stretch(b, found.s, 1), ...inside.slice(found.j + 1)]),
      missed: false,
    };
  }
  return { outside: [line(wall.from, end.to, labelOf(end)), ...outside.slice(1)], inside, missed: true };
}

/** The end of the part in which the hole opens, then the hole: what edges at the mouth are made on. */
export function withEnd(opened: Opened): Segment[] {
  const end = opened.outside[0];
  return end ? [reversed(end), ...opened.inside] : [...opened.inside];
}

/** Takes {@link withEnd} apart again after edges were made. */
export function withoutEnd(chain: readonly Segment[], outside: readonly Segment[]): Opened {
  const [end, first] = [outside[0], chain[0]];
  if (!end || !first) return { outside, inside: chain, missed: false };
  const isLeft = first.feature === end.feature && first.face === end.face;
  return {
    outside: isLeft ? [reversed(first), ...outside.slice(1)] : outside.slice(1),
    inside: isLeft ? chain.slice(1) : chain,
    missed: false,
  };
}
