/** A place pointed at on the drawing, as a place on the part. */
import type { LengthUnit } from '@sparewright/core/units/length';
import type { JobPage } from '@sparewright/output/present/job-view';

/** What was pointed at: the mark of the drawing, and how far from the left face where an outline was hit [mm]. */
export interface Pointed {
  readonly mark: string;
  readonly fromLeft?: number | undefined;
}

export interface PlaceOnPart {
  /** Dimension that a reading there is most likely of. */
  readonly of: string;
  /** From the left end of its feature [mm]. */
  readonly along?: number | undefined;
}

/** The size measured at a place: the mark itself where it is one, else the diameter of the feature; undefined where nothing is measured. */
export function placeOnPart(
  { mark, fromLeft }: Pointed,
  page: Pick<JobPage, 'sizes' | 'spans'>,
): PlaceOnPart | undefined {
  const exact = page.sizes.find((row) => row.id === mark);
  const own = page.sizes.filter((row) => row.feature === mark);
  const of = (exact ?? own.find((row) => /diameter$/i.test(row.id)) ?? own[0])?.id;
  if (of === undefined) return undefined;
  const along = alongFeature(exact?.feature ?? mark, fromLeft, page);
  return along === undefined ? { of } : { of, along };
}

/** How far from the left end of its feature a place lies, and no farther than its right end [mm]; undefined where it is not known. */
export function alongFeature(
  feature: string,
  fromLeft: number | undefined,
  { spans }: Pick<JobPage, 'spans'>,
): number | undefined {
  const span = spans.find((s) => s.feature === feature);
  if (fromLeft === undefined || !span) return undefined;
  return Math.min(Math.max(fromLeft - span.from, 0), span.to - span.from);
}

/** A length as it is put into a field: no finer than anyone points. */
export function pointedText(mm: number, units: LengthUnit): string {
  return units === 'in' ? String(Number((mm / 25.4).toFixed(2))) : String(Number(mm.toFixed(1)));
}
