/**
 * How long operations took, by the times at which readings and notes were written into the log of the bench.
 *
 * Knowledge: nobody presses a button when an operation begins. An operation is taken to begin with the last entry of the one before it,
 * in the same setup, and to end with its own last entry. Operations in between of which nothing was written share that time. Where the
 * begin is not known, or a pause lies in it, it is left out rather than guessed.
 */
import type { OperationKind } from '../route/operation-kinds.ts';
import type { Second } from '../units/quantities.ts';

/** An entry of the log: when, and about which operation. */
export interface LogEntry {
  /** Time of day and date in one count of seconds. */
  readonly at: Second;
  readonly of: string;
}

/** An operation as planned, in the order of the route. */
export interface PlannedOperation {
  readonly id: string;
  readonly setup: string;
  readonly kind: OperationKind;
  /** Before anything was learned. */
  readonly planned: Second;
}

export interface TimedOperation {
  readonly of: string;
  /** Of the longest of the operations the time is for. */
  readonly kind: OperationKind;
  readonly planned: Second;
  readonly taken: Second;
  /** Operations before it of which nothing was written: planned and taken hold them too. */
  readonly with: readonly string[];
}

/** Why an operation of the log has no time. */
export type NotTimed = 'nothing tells when it began' | 'a pause lies in it' | 'it may still be under way';

export interface LoggedTimes {
  readonly timed: readonly TimedOperation[];
  readonly notTimed: readonly { readonly of: string; readonly why: NotTimed }[];
}

/** Between two entries: this many times what was planned, and a quarter of an hour, is a pause; `common practice`. */
const pauseOver = { times: 3, more: 900 } as const;

/**
 * Times of operations by a log.
 *
 * @param entries  entries that stand, in any order; operations that are not planned are passed over
 * @param operations  the route, in its order
 * @param now  when the log is looked at: an operation written about less than a pause ago may still be under way
 */
export function loggedTimes(
  entries: readonly LogEntry[],
  operations: readonly PlannedOperation[],
  now: Second,
): LoggedTimes {
  const places = new Map(operations.map((o, i) => [o.id, i]));
  const log = entries.filter((e) => places.has(e.of)).toSorted((a, b) => a.at - b.at);
  const kept = new Map<string, Kept>();
  for (const [i, entry] of log.entries()) {
    const own = kept.get(entry.of) ?? { taken: 0, with: new Set<string>(), why: undefined };
    kept.set(entry.of, own);
    const before = log[i - 1];
    const between = before && operationsBetween(before.of, entry.of, operations, places);
    if (!before || !between) {
      own.why ??= 'nothing tells when it began';
      continue;
    }
    const [planned, passed] = [sumOf(between), entry.at - before.at];
    if (passed > pauseOver.times * planned + pauseOver.more) own.why ??= 'a pause lies in it';
    own.taken += passed;
    for (const o of between) if (o.id !== entry.of) own.with.add(o.id);
  }
  const last = log.at(-1);
  const latest = last && kept.get(last.of);
  if (last && latest && now - last.at < pauseOver.more) latest.why ??= 'it may still be under way';
  return gathered(kept, operations);
}

interface Kept {
  taken: Second;
  readonly with: Set<string>;
  why: NotTimed | undefined;
}

/** What was done between two entries: one operation again, or those after the first up to the second; undefined across setups. */
function operationsBetween(
  before: string,
  after: string,
  operations: readonly PlannedOperation[],
  places: ReadonlyMap<string, number>,
): PlannedOperation[] | undefined {
  const [from, to] = [places.get(before) ?? 0, places.get(after) ?? 0];
  if (operations[from]?.setup !== operations[to]?.setup) return undefined;
  // Gone back to: only that one was done.
  return from < to ? operations.slice(from + 1, to + 1) : operations.slice(to, to + 1);
}

function gathered(kept: ReadonlyMap<string, Kept>, operations: readonly PlannedOperation[]): LoggedTimes {
  const timed: TimedOperation[] = [];
  const notTimed: { of: string; why: NotTimed }[] = [];
  for (const operation of operations) {
    const own = kept.get(operation.id);
    if (!own) continue;
    // What was written about has a time of its own.
    const held = operations.filter((o) => o === operation || (own.with.has(o.id) && !kept.has(o.id)));
    const longest = held.reduce((a, b) => (b.planned > a.planned ? b : a));
    if (own.why) notTimed.push({ of: operation.id, why: own.why });
    else if (own.taken > 0 && sumOf(held) > 0)
      timed.push({
        of: operation.id,
        kind: longest.kind,
        planned: sumOf(held),
        taken: own.taken,
        with: held.filter((o) => o !== operation).map((o) => o.id),
      });
  }
  return { timed, notTimed };
}

function sumOf(operations: readonly PlannedOperation[]): Second {
  return operations.reduce((sum, o) => sum + o.planned, 0);
}
