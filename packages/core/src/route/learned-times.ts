/**
 * How long operations take, learned from how long they took before: the person's own pace, and how widely it spreads.
 *
 * Knowledge: ratios of taken to planned time multiply, so their logarithms are averaged. A kind of operation of which little is known
 * leans on all the others, and all of them on the plan: a few entries move it a little, many decide it.
 */
import type { Second } from '../units/quantities.ts';
import type { Operation, Span } from './route-result.ts';

/** An operation done before. */
export interface TimeTaken {
  readonly kind: Operation['kind'];
  readonly planned: Second;
  readonly taken: Second;
}

/** Pace of a kind of operation: times are multiplied by it; `spread` is 1 where nothing is known. */
export interface Pace {
  readonly factor: number;
  readonly spread: number;
  /** Entries of this kind it rests on. */
  readonly entries: number;
  /** Entries of all kinds, this one included. */
  readonly all: number;
}

/** Published ranges of cutting times on hand-worked lathes are wide; `common practice`: seven tenths to nine fifths. */
const quick = 0.7;
const slow = 1.8;
/** Standard deviation of the logarithm behind that range. */
const usualSpread = Math.log(slow / quick) / 2 / 1.28;
/** Entries that the plan is worth against the log. */
const planWeight = 3;
/** Entries that all kinds together are worth against one kind. */
const allWeight = 2;

/**
 * The pace of every kind of operation.
 *
 * @param taken  operations done before, of any kind; entries without time are passed over
 * @returns a function from a kind to its pace
 */
export function paceFrom(taken: readonly TimeTaken[]): (kind: Operation['kind']) => Pace {
  const ratios = taken
    .filter((t) => t.planned > 0 && t.taken > 0)
    .map((t) => ({ kind: t.kind, log: Math.log(t.taken / t.planned) }));
  const all = ratios.reduce((sum, r) => sum + r.log, 0) / (ratios.length + planWeight);
  return (kind) => {
    const own = ratios.filter((r) => r.kind === kind);
    const mean = (own.reduce((sum, r) => sum + r.log, 0) + allWeight * all) / (own.length + allWeight);
    const about = own.reduce((sum, r) => sum + (r.log - mean) ** 2, 0);
    const variance = (planWeight * usualSpread ** 2 + about) / (planWeight + own.length);
    return {
      factor: Math.exp(mean),
      spread: Math.sqrt(variance) / usualSpread,
      entries: own.length,
      all: ratios.length,
    };
  };
}

/** A planned time at a pace: likely, and the range in which eight of ten end. */
export function spanAt(planned: Second, pace: Pace): Span {
  const likely = planned * pace.factor;
  return { low: likely * quick ** pace.spread, likely, high: likely * slow ** pace.spread };
}
