/**
 * Puts operations in the legal order that costs least.
 *
 * What an order costs is a sum over neighbours and over pairs, so that of two beginnings with the same operations and the same last one
 * only the cheaper can lead to the best order. Beginnings are made longer one operation at a time; as long as no more of them are kept
 * than `widest`, the answer is the best there is, beyond that the best of those that looked best.
 */
import type { Second } from '../units/quantities.ts';
import { costOfBefore, costOfChange, totalCost } from './order-cost.ts';
import { reasonsToStand } from './order-reasons.ts';
import { type Between, type Ordered, rulesAmong } from './precedence.ts';
import type { BrokenRule } from './route-result.ts';

export interface InOrder<T> {
  readonly operation: T;
  readonly reasons: readonly string[];
  /** Rules that a wish for this order breaks here. */
  readonly breaks: readonly BrokenRule[];
}

/**
 * Operations in order: by setup, within it by the rules, and where they leave a choice as it costs least.
 *
 * @param operations  of all setups; setups keep the order of `setups`
 * @param setups  ids in the order they are done
 * @param wished  ids in the order a person wants them, whatever the rules say; the rules still place all others
 * @returns the operations in order, each with the reasons for its place and the rules its place breaks
 */
export function inOrder<T extends Ordered>(
  operations: readonly T[],
  setups: readonly string[],
  wished: readonly string[] = [],
): InOrder<T>[] {
  return setups.flatMap((setup) => {
    const own = operations.filter((o) => o.setup === setup);
    const between = rulesAmong(own);
    const must = precedenceOf(own, wished, between);
    const { order } = cheapestOrder(own, must);
    const placed = order.flatMap((i) => own[i] ?? []);
    return placed.map((operation, at) => ({
      operation,
      reasons: reasonsToStand(placed, at, wished, between),
      breaks: brokenAt(placed, at, between),
    }));
  });
}

/** For every operation those that must come before it; as bits of words of 30, directly and through others. */
export type Precedence = readonly Bits[];

type Bits = readonly number[];

const wordSize = 30;

/**
 * The rules between operations, after the wishes of a person: where the two go round in a circle, the rule gives way.
 *
 * @internal for tests beside {@link inOrder}
 */
export function precedenceOf(
  operations: readonly Ordered[],
  wished: readonly string[],
  between: Between = rulesAmong(operations),
): Precedence {
  const n = operations.length;
  const words = Math.ceil(n / wordSize) || 1;
  const before = operations.map(() => new Array<number>(words).fill(0));
  const has = (b: number, a: number) => ((before[b]?.[Math.floor(a / wordSize)] ?? 0) >> (a % wordSize)) & 1;
  const add = (a: number, b: number) => {
    if (has(b, a)) return;
    const gained = (before[a] ?? []).slice();
    gained[Math.floor(a / wordSize)] = (gained[Math.floor(a / wordSize)] ?? 0) | (1 << (a % wordSize));
    for (const [c, own] of before.entries()) {
      if (c !== b && !has(c, b)) continue;
      for (const [w, bits] of gained.entries()) own[w] = (own[w] ?? 0) | bits;
    }
  };
  const chain = wished.flatMap((id) => {
    const at = operations.findIndex((o) => o.id === id);
    return at < 0 ? [] : [at];
  });
  for (const [i, b] of chain.entries()) {
    const a = chain[i - 1];
    if (a !== undefined && a !== b && !has(a, b)) add(a, b);
  }
  for (const [b, later] of operations.entries()) {
    for (const [a, earlier] of operations.entries()) {
      if (a === b || between(earlier, later).length === 0) continue;
      if (!has(a, b)) add(a, b);
      else if (chain.length === 0) throw new Error('the rules of precedence go round in a circle');
    }
  }
  return before;
}

interface Beginning {
  readonly done: Bits;
  readonly last: number;
  readonly cost: Second;
  readonly before: Beginning | undefined;
}

/** So many beginnings of one length are kept; fewer for many operations, since each of them has more ways to go on. */
function widest(n: number): number {
  return Math.max(24, Math.round(3000 / Math.max(1, n)));
}

/**
 * The cheapest order that keeps the precedence.
 *
 * @returns places in `operations`, the cost of the order, and whether no other can be cheaper
 *
 * @internal for tests beside {@link inOrder}
 */
export function cheapestOrder(
  operations: readonly Ordered[],
  must: Precedence,
  keep = widest(operations.length),
): { readonly order: readonly number[]; readonly cost: Second; readonly best: boolean } {
  const n = operations.length;
  const change = operations.map((b) => operations.map((a) => totalCost(costOfChange(a, b))));
  const pair = operations.map((a) => operations.map((b) => (a === b ? 0 : totalCost(costOfBefore(a, b)))));
  const none = (must[0] ?? [0]).map(() => 0);
  let layer: Beginning[] = [{ done: none, last: -1, cost: 0, before: undefined }];
  let best = true;
  for (let placed = 0; placed < n; placed++) {
    const next = new Map<number | string, Beginning>();
    for (const beginning of layer) {
      for (let b = 0; b < n; b++) {
        if (isIn(beginning.done, b) || !covers(beginning.done, must[b] ?? none)) continue;
        const done = beginning.done.slice();
        done[Math.floor(b / wordSize)] = (done[Math.floor(b / wordSize)] ?? 0) | (1 << (b % wordSize));
        // All that is still to do comes after this one, so that is known now.
        let cost = beginning.cost + (beginning.last < 0 ? 0 : (change[b]?.[beginning.last] ?? 0));
        for (let c = 0; c < n; c++) if (!isIn(done, c)) cost += pair[b]?.[c] ?? 0;
        const key = done.length === 1 ? (done[0] ?? 0) * 32 + b : `${done.join()},${b}`;
        const known = next.get(key);
        if (!known || cost < known.cost - 1e-9) next.set(key, { done, last: b, cost, before: beginning });
      }
    }
    layer = [...next.values()];
    if (layer.length > keep) {
      best = false;
      layer = layer.toSorted((a, b) => a.cost - b.cost).slice(0, keep);
    }
  }
  const [cheapest] = layer.toSorted((a, b) => a.cost - b.cost);
  const order: number[] = [];
  for (let b = cheapest; b && b.last >= 0; b = b.before) order.unshift(b.last);
  if (order.length < n) throw new Error('no order keeps the precedence');
  return { order, cost: cheapest?.cost ?? 0, best };
}

function isIn(bits: Bits, i: number): boolean {
  return (((bits[Math.floor(i / wordSize)] ?? 0) >> (i % wordSize)) & 1) === 1;
}

function covers(done: Bits, wanted: Bits): boolean {
  return wanted.every((w, i) => ((done[i] ?? 0) & w) === w);
}

/** Rules by which something later in the order ought to have come before the one at a place. */
function brokenAt(placed: readonly Ordered[], at: number, between: Between): BrokenRule[] {
  const own = placed[at];
  if (!own) return [];
  return placed
    .slice(at + 1)
    .flatMap((later) => between(later, own).map((r) => ({ rule: r.id, why: r.why, other: later.id })));
}
