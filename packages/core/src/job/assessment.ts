/** What assess() answers: every stage, and all findings worst first. */
import type { BenchResult } from '../bench/bench-result.ts';
import type { DutyResult } from '../duty/duty-result.ts';
import type { EvidenceResult } from '../evidence/evidence-result.ts';
import type { Finding } from '../finding.ts';
import type { InspectionResult } from '../inspect/inspect-result.ts';
import type { PartResult } from '../part/part-result.ts';
import type { RouteResult } from '../route/route-result.ts';
import type { Caution } from './cautions.ts';

export interface Assessment {
  readonly evidence: EvidenceResult;
  /** Undefined while the job has no part. */
  readonly part: PartResult | undefined;
  readonly duty: DutyResult;
  /** Undefined while there is no part or no workshop. */
  readonly route: RouteResult | undefined;
  readonly bench: BenchResult;
  readonly inspection: InspectionResult;
  /** Cautions that the hazard class and the planned work call for. */
  readonly cautions: readonly Caution[];
  readonly findings: readonly Finding[];
  /** What was not entered yet and keeps a stage from answering, in words. */
  readonly missing: readonly string[];
}
