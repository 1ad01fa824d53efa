/** What the log of the bench teaches about one job: how sizes come out against what was asked. */
import type { Mm } from '../units/quantities.ts';

/** A pass: the size that was aimed at and the size that was read after it. */
export interface Pass {
  readonly asked: Mm;
  readonly read: Mm;
}

export interface AskedAndRead {
  readonly passes: number;
  /** Plus when sizes come out larger than asked. */
  readonly mean: Mm;
  /** Standard deviation of a single pass about that mean; undefined for one pass. */
  readonly scatter: Mm | undefined;
}

/**
 * How sizes came out against what was asked: the mean of the differences, and how a single pass scatters about it.
 *
 *     d = read − asked;   mean = Σ d / n;   scatter = √(Σ (d − mean)² / (n − 1))
 *
 * @param passes  sizes asked and read [mm]
 * @returns count [-], mean and scatter [mm]; undefined without a pass
 * @source GUM
 * @valid passes of one kind on one lathe; a scatter of fewer than five says little
 * @example askedAndRead([{ asked: 12, read: 12.03 }, { asked: 10, read: 10.01 }])?.mean → 0.02
 */
export function askedAndRead(passes: readonly Pass[]): AskedAndRead | undefined {
  const n = passes.length;
  if (n === 0) return undefined;
  const differences = passes.map(({ asked, read }) => read - asked);
  const mean = differences.reduce((sum, d) => sum + d, 0) / n;
  const squares = differences.reduce((sum, d) => sum + (d - mean) ** 2, 0);
  return { passes: n, mean, scatter: n === 1 ? undefined : Math.sqrt(squares / (n - 1)) };
}
