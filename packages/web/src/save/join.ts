/** Brings together what was typed here and what was typed elsewhere. */
import { type Json, merge } from '@sparewright/core/job/merge';

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

/** Everything of both, and where they meet, mine: done by telling the merge that theirs never changed those things. */
export function mineOver(base: Json, mine: Json, theirs: Json): Json {
  const merged = merge(base, mine, theirs);
  if (merged.kind === 'merged') return merged.document;
  const again = merge(
    base,
    mine,
    merged.conflicts.reduce((document, c) => withAt(document, c.path, c.ours), theirs),
  );
  return again.kind === 'merged' ? again.document : mine;
}

/** Puts a value where the merge says the two met: `part.outside[guide].diameter`, records by their id. */
function withAt(document: Json, path: string, value: Json | undefined): Json {
  const steps = path.match(/[^.[\]]+/g) ?? [];
  return put(document, steps, value) ?? {};
}

function put(node: Json | undefined, [step, ...rest]: readonly string[], value: Json | undefined): Json | undefined {
  if (step === undefined) return value;
  if (Array.isArray(node)) {
    const at = node.findIndex((entry) => idOf(entry) === step);
    const inner = put(at < 0 ? undefined : node[at], rest, value);
    const others = inner === undefined ? [] : [inner];
    return at < 0 ? [...node, ...others] : [...node.slice(0, at), ...others, ...node.slice(at + 1)];
  }
  const fields = typeof node === 'object' && node !== null ? node : {};
  const { [step]: old, ...others } = fields;
  const inner = put(old, rest, value);
  return inner === undefined ? others : { ...fields, [step]: inner };
}

function idOf(entry: Json): Json | undefined {
  return typeof entry === 'object' && entry !== null && !Array.isArray(entry) ? entry.id : undefined;
}
