/** What the inspection stage answers. */
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';

export type Decision = 'conforms' | 'does not conform' | 'cannot be decided' | 'not measured';

export interface InspectionRow {
  readonly dimension: string;
  readonly title: string;
  readonly nominal: Mm;
  readonly max: Mm;
  readonly min: Mm;
  /** Gauge to use, the best on hand; undefined when none serves. */
  readonly gauge: string | undefined;
  /** Expanded uncertainty (k = 2) with that gauge. */
  readonly expanded: Mm | undefined;
  /** Limits drawn in by the guard band: read within these and it conforms. */
  readonly acceptMax: Mm | undefined;
  readonly acceptMin: Mm | undefined;
  readonly measured: readonly Mm[];
  readonly value: Mm | undefined;
  /** Probability that the true size lies within the limits. */
  readonly probability: number | undefined;
  readonly decision: Decision;
}

/** A test of the finished part beyond its sizes. */
export interface ProofTest {
  readonly id: string;
  readonly title: string;
  readonly how: string;
  readonly acceptance: string;
  readonly why: string;
}

export interface InspectionResult {
  readonly rows: readonly InspectionRow[];
  readonly proofTests: readonly ProofTest[];
  readonly findings: readonly Finding[];
}
