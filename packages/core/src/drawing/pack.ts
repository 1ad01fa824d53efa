/** Finds room on a sheet for a view or table beside what is already there. */
import type { Mm } from '../units/quantities.ts';
import { type Box, boxAt, boxHeight, boxWidth, grown, overlap } from './box.ts';

const step: Mm = 3;

/** Where a box of this size may stand, searched from the bottom left; undefined when it fits nowhere. */
export function findRoom(size: Box, region: Box, taken: readonly Box[], clear: Mm = 4): Box | undefined {
  const [width, height] = [boxWidth(size), boxHeight(size)];
  const blocked = taken.map((box) => grown(box, clear));
  for (let bottom = region.bottom; bottom - height >= region.top; bottom -= step) {
    for (let left = region.left; left + width <= region.right; left += step) {
      const place = boxAt(left, bottom - height, width, height);
      if (!blocked.some((box) => overlap(box, place))) return place;
    }
  }
  return undefined;
}
