/** The sizes of the part, each with its place in the document, so that a value typed anew finds its way back. */
import type { Dimension } from '@sparewright/core/part/part-result';
import { featurePlaces, valueAt } from '../present/document-places.ts';
import type { SizeRow } from '../present/job-view.ts';
import { presentLength } from '../present/length.ts';
import type { PresentSettings } from '../present/settings.ts';

export function sizeRows(document: unknown, dimensions: readonly Dimension[], settings: PresentSettings): SizeRow[] {
  const places = featurePlaces(document);
  const decimals = settings.units === 'in' ? 4 : 3;
  return dimensions.map((d) => {
    const path = [...(places.get(d.feature) ?? []), d.id.slice(d.feature.length + 1)];
    const value = valueAt(document, path);
    return {
      id: d.id,
      feature: d.feature,
      title: d.title,
      entered: typeof value === 'string' || typeof value === 'number' ? String(value) : null,
      path,
      nominal: presentLength(d.nominal, settings.units, settings.decimalSign),
      least: presentLength(d.min, settings.units, settings.decimalSign, decimals),
      most: presentLength(d.max, settings.units, settings.decimalSign, decimals),
      basis: d.basis,
    };
  });
}
