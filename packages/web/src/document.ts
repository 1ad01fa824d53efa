/** Reads and changes JSON documents by path, leaving the document itself as it was. */
import type { Json, JsonObject } from '@sparewright/core/job/merge';

export type Path = readonly (string | number)[];

export function valueAt(document: Json | undefined, path: Path): Json | undefined {
  return path.reduce<Json | undefined>((value, step) => child(value, step), document);
}

/** The list at a place; empty when there is none. */
export function listAt(document: Json | undefined, path: Path): readonly Json[] {
  const list = valueAt(document, path);
  return Array.isArray(list) ? list : [];
}

export function textAt(document: Json | undefined, path: Path): string {
  const value = valueAt(document, path);
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? String(value) : '';
}

/** The document with a value in its place; undefined takes out what is there, and what holds nothing else. */
export function withValue(document: Json | undefined, path: Path, value: Json | undefined): Json {
  return changed(document, path, value) ?? {};
}

function changed(node: Json | undefined, [step, ...rest]: Path, value: Json | undefined): Json | undefined {
  if (step === undefined) return value;
  const inner = changed(child(node, step), rest, value);
  if (typeof step === 'number') {
    const list = Array.isArray(node) ? node : [];
    if (inner === undefined) return list.filter((_, i) => i !== step);
    return step < list.length ? list.map((entry, i) => (i === step ? inner : entry)) : [...list, inner];
  }
  const { [step]: _, ...others } = isObject(node) ? node : {};
  if (inner !== undefined) return isObject(node) ? { ...node, [step]: inner } : { [step]: inner };
  return Object.keys(others).length === 0 && rest.length === 0 && node !== undefined ? undefined : others;
}

/** A list with one of its entries in another place. */
export function moved(list: readonly Json[], from: number, to: number): Json[] {
  const others = list.filter((_, i) => i !== from);
  return [...others.slice(0, to), ...list.slice(from, from + 1), ...others.slice(to)];
}

/** `part.outside[2].diameter`, as the server names places in its refusals. */
export function pathText(path: Path): string {
  return path
    .map((step) => (typeof step === 'number' ? `[${step}]` : `.${step}`))
    .join('')
    .replace(/^\./, '');
}

/** A name for a new entry of a list that no other entry has. */
export function freeId(stem: string, taken: readonly Json[]): string {
  const ids = new Set(taken.map((entry) => textAt(entry, ['id'])));
  let n = 1;
  while (ids.has(`${stem}-${n}`)) n += 1;
  return `${stem}-${n}`;
}

export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function child(node: Json | undefined, step: string | number): Json | undefined {
  if (Array.isArray(node)) return typeof step === 'number' ? node[step] : undefined;
  return isObject(node) && typeof step === 'string' && Object.hasOwn(node, step) ? node[step] : undefined;
}
