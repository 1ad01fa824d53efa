/** The sizes of the part, each with its place in the document, so that a value typed anew finds its way back. */
import type { Dimension } from '@sparewright/core/part/part-result';
import type { SizeRow } from '../present/job-view.ts';
import { presentLength } from '../present/length.ts';
import type { PresentSettings } from '../present/settings.ts';

type Path = readonly (string | number)[];

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

const lists: readonly Path[] = [
  ['part', 'outside'],
  ['part', 'inside', 'left'],
  ['part', 'inside', 'right'],
  ['part', 'grooves'],
  ['part', 'threads'],
  ['part', 'notTurned'],
];

function featurePlaces(document: unknown): Map<string, Path> {
  const places = new Map<string, Path>();
  for (const list of lists) {
    const features = valueAt(document, list);
    if (!Array.isArray(features)) continue;
    features.forEach((_, i) => {
      const id = valueAt(features, [i, 'id']);
      if (typeof id === 'string' && !places.has(id)) places.set(id, [...list, i]);
    });
  }
  return places;
}

function valueAt(document: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, step) ? Reflect.get(value, step) : undefined,
    document,
  );
}
