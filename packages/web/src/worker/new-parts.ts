/** Leaves out of a page what its reader has already, so that only what changed is copied and shown anew. */
import { same } from '@sparewright/core/job/memo';
import type { PageParts } from '@sparewright/output/page/job-page';

/** Remembers the last reader only: one page is open at a time. @returns a function that answers undefined when nothing is new */
export function newParts(): (reader: number, parts: PageParts) => PageParts | undefined {
  let last = { reader: 0, page: new Map<string, unknown>(), sheets: new Map<string, unknown>() };
  return (reader, { sheets, document: _, ...parts }) => {
    if (last.reader !== reader) last = { reader, page: new Map(), sheets: new Map() };
    const fresh = unlike(parts, last.page);
    const freshSheets = unlike(sheets ?? {}, last.sheets);
    if (!fresh && !freshSheets) return undefined;
    return { ...fresh, ...(freshSheets ? { sheets: freshSheets } : {}) };
  };
}

function unlike<T extends object>(parts: T, known: Map<string, unknown>): Partial<T> | undefined {
  const fresh = Object.entries(parts).filter(([key, value]) => !known.has(key) || !same(known.get(key), value));
  for (const [key, value] of fresh) known.set(key, value);
  if (fresh.length === 0) return undefined;
  const found: Partial<T> = {};
  for (const [key, value] of fresh) Reflect.set(found, key, value);
  return found;
}
