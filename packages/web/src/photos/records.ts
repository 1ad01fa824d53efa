/** The photographs in a job document. */
import type { Json } from '@sparewright/core/job/merge';
import type { JobPage } from '@sparewright/output/present/job-view';
import { listAt, type Path, textAt, withValue } from '../document.ts';
import { alongFeature, type Pointed } from '../evidence/place-on-part.ts';

export const photographs: Path = ['photographs'];

/** A new one; one that is there already, for another window has sent it, stays as it is. */
export function addPhotograph(document: Json, id: string, file: string): Json {
  const all = listAt(document, photographs);
  if (all.some((record) => textAt(record, ['id']) === id)) return document;
  return withValue(document, photographs, [...all, { id, file }]);
}

/** Where a photograph was taken, as a place on the part. */
export interface PhotographPlace {
  /** Feature or dimension. */
  readonly of: string;
  /** From the left end of the feature [mm]; undefined for the whole of it. */
  readonly along: number | undefined;
}

/** @returns undefined where what was pointed at is nothing of the part */
export function photographPlace(
  { mark, fromLeft }: Pointed,
  page: Pick<JobPage, 'sizes' | 'spans'>,
): PhotographPlace | undefined {
  const size = page.sizes.find((row) => row.id === mark);
  const feature = size?.feature ?? mark.split('.')[0] ?? mark;
  if (!page.sizes.some((row) => row.feature === feature)) return undefined;
  return { of: size?.id ?? feature, along: alongFeature(feature, fromLeft, page) };
}

/** Puts a photograph in a place; the place that it had before is forgotten. */
export function withPlace(document: Json, id: string, of: string, along: string | undefined): Json {
  const at = listAt(document, photographs).findIndex((record) => textAt(record, ['id']) === id);
  if (at < 0) return document;
  const placed = withValue(document, [...photographs, at, 'of'], of);
  return withValue(placed, [...photographs, at, 'along'], along);
}
