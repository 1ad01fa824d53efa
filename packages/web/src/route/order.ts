/** The order of operations that a person wants, as the list of those that are to stay one after another. */

export interface Placed {
  readonly id: string;
  readonly setup: string;
}

/**
 * The wished order after one operation was moved, or kept where it is.
 *
 * A wish says only what stands before what; so the neighbours between which the operation stands are named with it, and all that were
 * named before keep their order. Ids that this route does not have stay at the end, for their operations may come back.
 *
 * @param operations  as they stand now
 * @param order  wished so far
 * @param from  place of the operation
 * @param to  its place after it was taken out; within its own setup, for each setup is done whole
 */
export function orderWith(operations: readonly Placed[], order: readonly string[], from: number, to: number): string[] {
  const moved = operations[from];
  if (!moved) return [...order];
  const others = operations.filter((_, i) => i !== from);
  const sequence = [...others.slice(0, to), moved, ...others.slice(to)];
  const near = [sequence[to - 1], moved, sequence[to + 1]].filter((o) => o?.setup === moved.setup);
  const named = new Set([...order, ...near.flatMap((o) => (o ? [o.id] : []))]);
  const known = new Set(operations.map((o) => o.id));
  return [...sequence.filter((o) => named.has(o.id)).map((o) => o.id), ...order.filter((id) => !known.has(id))];
}

/** Whether an operation can go that way without leaving its setup. */
export function canMove(operations: readonly Placed[], from: number, to: number): boolean {
  const [moved, there] = [operations[from], operations[to]];
  return moved !== undefined && there !== undefined && from !== to && moved.setup === there.setup;
}
