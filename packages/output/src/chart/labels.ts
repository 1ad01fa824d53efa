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

/** The same labels from the top down, each at least a line below the one before it. */
export function apartDownwards(labels: readonly Label[]): Label[] {
  const placed: Label[] = [];
  for (const label of [...labels].sort((a, b) => a.y - b.y)) {
    const above = placed.at(-1);
    placed.push(above && label.y - above.y < lineFeed ? { ...label, y: above.y + lineFeed } : label);
  }
  return placed;
}
