/** Where features and sizes stand in a job document, so that a value finds its way back to where it was typed. */
import type { DocumentPath } from './job-view.ts';

const lists: readonly DocumentPath[] = [
  ['part', 'outside'],
  ['part', 'inside', 'left'],
  ['part', 'inside', 'right'],
  ['part', 'grooves'],
  ['part', 'threads'],
  ['part', 'notTurned'],
];

/** Features of the part by id; of two with one id the first. */
export function featurePlaces(document: unknown): Map<string, DocumentPath> {
  const places = new Map<string, DocumentPath>();
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

export function valueAt(document: unknown, path: DocumentPath): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, step) ? Reflect.get(value, step) : undefined,
    document,
  );
}
