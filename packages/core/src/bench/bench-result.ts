/** What the bench stage answers: where to stop cutting, and what to do from there to the size. */
import type { Worked } from '../duty/duty-result.ts';
import type { Finding } from '../finding.ts';
import type { Micrometre, Mm } from '../units/quantities.ts';

/** How to come to one close size. */
export interface StopPoint {
  readonly dimension: string;
  readonly operation: string;
  readonly max: Mm;
  readonly min: Mm;
  /** Size to aim the last cut at. */
  readonly stopAt: Mm;
  /** What is left for abrasive paper, on diameter; 0 when it is finished by the cutter. */
  readonly leave: Mm;
  readonly finishRa: Micrometre | undefined;
  /** Chance that a last cut aimed there ends within the limits, with the dial and gauge at hand. */
  readonly chance: number;
  /** How the chance comes about. */
  readonly worked: Worked;
  readonly steps: readonly string[];
}

export interface BenchResult {
  readonly stopPoints: readonly StopPoint[];
  readonly findings: readonly Finding[];
}
