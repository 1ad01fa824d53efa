/**
 * Brings together two changed copies of one document.
 *
 * Objects are merged by key, lists of records by their `id`, everything else whole: a size as typed is one thing, and so is
 * a list of points. What only one side changed is taken; what both changed differently is a conflict, never a guess.
 */

export type Json = null | boolean | number | string | Json[] | JsonObject;
export interface JsonObject {
  [key: string]: Json;
}

/** The same thing changed in two ways; what is undefined is not there. */
export interface Conflict {
  /** `part.outside[shank].diameter`: records by their id, for a place in a list says nothing once the list has changed. */
  readonly path: string;
  readonly base: Json | undefined;
  readonly ours: Json | undefined;
  readonly theirs: Json | undefined;
}

export type Merged =
  | { readonly kind: 'merged'; readonly document: Json }
  | { readonly kind: 'conflict'; readonly conflicts: readonly Conflict[] };

/**
 * Two copies of a document, changed apart from each other, made one.
 *
 * @param base  what both began with
 * @param ours  one copy
 * @param theirs  the other copy
 */
export function merge(base: Json, ours: Json, theirs: Json): Merged {
  const conflicts: Conflict[] = [];
  const document = mergeValue({ path: '', base, ours, theirs }, (conflict) => conflicts.push(conflict));
  return conflicts.length > 0 || document === undefined
    ? { kind: 'conflict', conflicts }
    : { kind: 'merged', document };
}

/** Where two documents differ: one path for each thing that {@link merge} would take whole. */
export function differingPaths(from: Json, to: Json): string[] {
  return differing('', from, to);
}

/** Whether two values say the same; the order of keys says nothing. */
export function same(a: Json | undefined, b: Json | undefined): boolean {
  if (a === b) return true;
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((value, i) => same(value, b[i]));
  if (!isObject(a) || !isObject(b)) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && same(a[key], b[key]));
}

type Report = (conflict: Conflict) => void;

/** The three versions of one thing. */
type Versions = Conflict;

function mergeValue(versions: Versions, report: Report): Json | undefined {
  const { base, ours, theirs } = versions;
  if (same(ours, theirs) || same(base, theirs)) return ours;
  if (same(base, ours)) return theirs;
  if (isObject(ours) && isObject(theirs) && (base === undefined || isObject(base)))
    return mergeObjects(versions.path, base ?? {}, ours, theirs, report);
  const lists = [base ?? [], ours, theirs].map(recordsById);
  const [b, o, t] = lists;
  if (b && o && t) return mergeRecords(versions.path, b, o, t, report);
  report(versions);
  return theirs;
}

function mergeObjects(
  path: string,
  base: JsonObject,
  ours: JsonObject,
  theirs: JsonObject,
  report: Report,
): JsonObject {
  const keys = new Set([...Object.keys(ours), ...Object.keys(theirs)]);
  return Object.fromEntries(
    [...keys].flatMap((key): [string, Json][] => {
      const at = child(path, key);
      const value = mergeValue(
        { path: at, base: own(base, key), ours: own(ours, key), theirs: own(theirs, key) },
        report,
      );
      return value === undefined ? [] : [[key, value]];
    }),
  );
}

type Records = ReadonlyMap<string, JsonObject>;

function mergeRecords(path: string, base: Records, ours: Records, theirs: Records, report: Report): Json[] {
  const merged = new Map<string, Json>();
  for (const id of new Set([...ours.keys(), ...theirs.keys()])) {
    const versions = { path: `${path}[${id}]`, base: base.get(id), ours: ours.get(id), theirs: theirs.get(id) };
    const value = mergeValue(versions, report);
    if (value !== undefined) merged.set(id, value);
  }
  const order = mergeOrder(base, ours, theirs, new Set(merged.keys()));
  if (order === undefined) {
    const ids = (records: Records) => [...records.keys()];
    report({ path: `${path}: order`, base: ids(base), ours: ids(ours), theirs: ids(theirs) });
  }
  return (order ?? [...merged.keys()]).flatMap((id) => merged.get(id) ?? []);
}

/** The order of the records that stay; undefined when both sides put the same records into different orders. */
function mergeOrder(base: Records, ours: Records, theirs: Records, stay: ReadonlySet<string>): string[] | undefined {
  const common = (records: Records) =>
    [...records.keys()].filter((id) => base.has(id) && ours.has(id) && theirs.has(id)).join(' ');
  const theirsMoved = common(theirs) !== common(base);
  if (theirsMoved && common(ours) !== common(base) && common(ours) !== common(theirs)) return undefined;
  const [leading, following] = theirsMoved ? [theirs, ours] : [ours, theirs];
  const order = [...leading.keys()].filter((id) => stay.has(id));
  // A record that only the other side has goes behind the one that stands before it there.
  let place = 0;
  for (const id of following.keys()) {
    const at = order.indexOf(id);
    if (at >= 0) place = at + 1;
    else if (stay.has(id)) order.splice(place++, 0, id);
  }
  return order;
}

function differing(path: string, from: Json | undefined, to: Json | undefined): string[] {
  if (same(from, to)) return [];
  if (isObject(from) && isObject(to)) {
    const keys = new Set([...Object.keys(from), ...Object.keys(to)]);
    return [...keys].flatMap((key) => differing(child(path, key), own(from, key), own(to, key)));
  }
  const before = recordsById(from);
  const after = recordsById(to);
  if (!before || !after) return [path];
  const ids = new Set([...before.keys(), ...after.keys()]);
  const inside = [...ids].flatMap((id) => differing(`${path}[${id}]`, before.get(id), after.get(id)));
  return inside.length > 0 ? inside : [`${path}: order`];
}

/** A list in which every entry is a record with an id of its own, by those ids; undefined for any other value. */
function recordsById(value: Json | undefined): Records | undefined {
  if (!Array.isArray(value)) return undefined;
  const records = new Map<string, JsonObject>();
  for (const entry of value) {
    if (!isObject(entry)) return undefined;
    const id = own(entry, 'id');
    if (typeof id !== 'string' || records.has(id)) return undefined;
    records.set(id, entry);
  }
  return records;
}

function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A key named like something every object inherits is not there unless it was written. */
function own(object: JsonObject, key: string): Json | undefined {
  return Object.hasOwn(object, key) ? object[key] : undefined;
}

function child(path: string, key: string): string {
  return path === '' ? key : `${path}.${key}`;
}
