/** How the work is wished to be held, put into the job document and taken out again. */
import type { Json } from '@sparewright/core/job/merge';
import type { HoldingWayView } from '@sparewright/output/present/job-view';
import { withValue } from '../document.ts';

/** Wishes of the route that say how the work is held. */
export const holdingKeys = ['firstEndOut', 'tailstock', 'hold', 'holdOn'] as const;

/** All of them as this way has them: what it does not name is left open. */
export function heldSo(document: Json, wish: HoldingWayView['wish']): Json {
  return holdingKeys.reduce<Json>((d, key) => withValue(d, ['route', key], wish[key]), document);
}

export function heldAsPlanned(document: Json): Json {
  return heldSo(document, {});
}
