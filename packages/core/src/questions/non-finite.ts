/** Finds numbers that are none, before anybody sees them. */
import { pathText } from '../job/read-document.ts';

/** Place of the first number in plain data that is not finite; undefined when all are. */
export function nonFiniteAt(value: unknown, path: readonly PropertyKey[] = []): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : pathText(path);
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = nonFiniteAt(inner, [...path, Array.isArray(value) ? Number(key) : key]);
    if (found !== undefined) return found;
  }
  return undefined;
}
