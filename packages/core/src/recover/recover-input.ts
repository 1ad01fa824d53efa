/** What the recovery of a design is given, and one size on its way through it. */
import type { Weighed } from '../evidence/evidence-result.ts';
import type { Evidence, Gauge } from '../evidence/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import type { RecoverFeature, RecoverMate } from './features.ts';
import type { Turn } from './posterior.ts';
import type { SizeEvidence } from './size.ts';

export interface RecoverInput {
  readonly evidence: Evidence | undefined;
  readonly gauges: readonly Gauge[];
  readonly part?: PartResult | undefined;
  /** Sizes to recover when there is no part yet, or beside it. */
  readonly features?: readonly RecoverFeature[] | undefined;
  readonly mates?: readonly RecoverMate[] | undefined;
  readonly machine?: { readonly country?: string | undefined; readonly decade?: number | undefined } | undefined;
}

/** One size with its readings screened, and what they say of it. */
export interface Measured {
  readonly feature: RecoverFeature;
  readonly turn: Turn;
  readonly kept: readonly Weighed[];
  readonly evidence: SizeEvidence;
  readonly mate?: RecoverMate | undefined;
}
