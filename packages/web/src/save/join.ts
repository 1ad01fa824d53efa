/** Brings together what was typed here and what was typed elsewhere. */
import { type Json, merge } from '@sparewright/core/job/merge';
import { isObject } from '../document.ts';

export interface Difference {
  /** Records by their id: `part.outside[guide].diameter`. */
  readonly path: string;
  readonly mine: Json | undefined;
  readonly theirs: Json | undefined;
}

/** Where both changed the same thing. When each is sound but not both together, that is the whole document. */
export function differences(base: Json, mine: Json, theirs: Json): Difference[] {
  const merged = merge(base, mine, theirs);
  if (merged.kind === 'merged') return [{ path: '', mine, theirs }];
  return merged.conflicts.map((c) => ({ path: c.path, mine: c.ours, theirs: c.theirs }));
}

/** Both changes where they do not meet; where they do, what is in hand, which the server will then ask about. */
export function joinedWith(base: Json, mine: Json, theirs: Json): Json {
  const merged = merge(base, mine, theirs);
  return merged.kind === 'merged' ? merged.document : mine;
}

export type Side = 'mine' | 'theirs';

/**
 * Everything of both, and where they meet, the side that is chosen: done by telling the merge that the other side never changed
 * that place.
 *
 * @returns undefined when the two still do not go together
 */
export function settled(base: Json, mine: Json, theirs: Json, choice: (path: string) => Side): Json | undefined {
  const merged = merge(base, mine, theirs);
  if (merged.kind === 'merged') return choice('') === 'mine' ? merged.document : theirs;
  const of = (side: Side) => merged.conflicts.filter((c) => choice(c.path) === side);
  const again = merge(
    base,
    of('theirs').reduce((document, c) => takenOver(document, theirs, c.path), mine),
    of('mine').reduce((document, c) => takenOver(document, mine, c.path), theirs),
  );
  return again.kind === 'merged' ? again.document : undefined;
}

/** Takes what lies at a place over from another document; records go by their id: `part.outside[guide].diameter`. */
function takenOver(document: Json, from: Json, path: string): Json {
  const [where = '', order] = path.split(': ');
  const take = order === undefined ? (_: Json | undefined, other: Json | undefined) => other : inOrder;
  return put(document, from, where.match(/[^.[\]]+/g) ?? [], take) ?? {};
}

type Take = (mine: Json | undefined, other: Json | undefined) => Json | undefined;

/** The same records in the order of the other list; those it does not have go behind. */
function inOrder(list: Json | undefined, other: Json | undefined): Json | undefined {
  if (!Array.isArray(list) || !Array.isArray(other)) return list;
  const named = other.flatMap((like) => list.filter((entry) => idOf(entry) === idOf(like)));
  return [...named, ...list.filter((entry) => !named.includes(entry))];
}

function put(
  node: Json | undefined,
  other: Json | undefined,
  [step, ...rest]: readonly string[],
  take: Take,
): Json | undefined {
  if (step === undefined) return take(node, other);
  if (Array.isArray(node)) {
    const others = Array.isArray(other) ? other : [];
    const at = node.findIndex((entry) => idOf(entry) === step);
    const like = others.findIndex((entry) => idOf(entry) === step);
    const inner = put(at < 0 ? undefined : node[at], others[like], rest, take);
    const entries = inner === undefined ? [] : [inner];
    if (at >= 0) return [...node.slice(0, at), ...entries, ...node.slice(at + 1)];
    const place = placeFor(node, others.slice(0, Math.max(like, 0)));
    return [...node.slice(0, place), ...entries, ...node.slice(place)];
  }
  const fields = isObject(node) ? node : {};
  const { [step]: old, ...rests } = fields;
  const inner = put(old, isObject(other) ? other[step] : undefined, rest, take);
  return inner === undefined ? rests : { ...fields, [step]: inner };
}

/** Behind the nearest of those that stand before it in the other list: the order of sections is the part. */
function placeFor(list: readonly Json[], before: readonly Json[]): number {
  const ids = new Set(before.map(idOf));
  return list.findLastIndex((entry) => ids.has(idOf(entry))) + 1;
}

function idOf(entry: Json): Json | undefined {
  return isObject(entry) ? entry.id : undefined;
}
