/** A published limit on a gland, and what it means to be outside it. */
import type { Level } from '../finding.ts';
import type { SourceKey } from '../sources/register.ts';
import type { Standing } from '../standards/small-parts/standing.ts';

export interface HeldLimit {
  /** `squeeze-nominal`, `gap-diametral`… */
  readonly id: string;
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly least?: number;
  readonly most?: number;
  readonly source: SourceKey;
  readonly standing: Standing;
  readonly holds: boolean;
  /** Level of the finding when it does not hold. */
  readonly level: Level;
  /** What being under or over it means. */
  readonly under: string;
  readonly over: string;
  readonly remedies: readonly string[];
}

export type Rule = Omit<HeldLimit, 'holds'>;

export const looseSqueeze = 'the ring presses too lightly to seal when cold, worn or eccentric';
