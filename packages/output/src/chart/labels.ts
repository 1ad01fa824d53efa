/** Words beside lines, moved apart so that none covers another. */
import type { TextItem } from '@sparewright/core/drawing/scene';
import type { Mm } from '@sparewright/core/units/quantities';
import { figureHeight } from './axes.ts';

export interface Label {
  readonly text: string;
  readonly x: Mm;
  readonly y: Mm;
  readonly tone: TextItem['tone'];
  readonly of: string | undefined;
}

/** From the baseline of one to the next [mm]. */
const lineFeed = 1.6 * figureHeight;

/** The same labels from the top down, each at least a line below the one before it, and none below the floor while there is room. */
export function apartDownwards(labels: readonly Label[], floor: Mm): Label[] {
  const placed: Label[] = [];
  for (const label of [...labels].sort((a, b) => a.y - b.y)) {
    const above = placed.at(-1);
    placed.push(above && label.y - above.y < lineFeed ? { ...label, y: above.y + lineFeed } : label);
  }
  let below = floor + lineFeed;
  return placed
    .toReversed()
    .map((label) => {
      const y = Math.min(label.y, below - lineFeed);
      below = y;
      return { ...label, y };
    })
    .toReversed();
}
