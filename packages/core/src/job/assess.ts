/**
 * The whole job: every stage in order, each answering as far as it can, all findings gathered worst first.
 */

import type { BenchResult } from '../bench/bench-result.ts';
import { stopPoints } from '../bench/stop-points.ts';
import { assessDuty } from '../duty/assess-duty.ts';
import type { DutyResult } from '../duty/duty-result.ts';
import { gatherEvidence } from '../evidence/gather.ts';
import { worstFirst } from '../finding.ts';
import { inspect } from '../inspect/inspect.ts';
import type { InspectionResult } from '../inspect/inspect-result.ts';
import type { Workshop } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { planRoute } from '../route/plan-route.ts';
import type { Assessment } from './assessment.ts';
import { cautionsFor } from './cautions.ts';
import { type Memo, memo } from './memo.ts';
import type { Job } from './schema.ts';

/** Expansion assumed of a part whose material is not known: steel, per kelvin. */
const steelExpansion = 11.5e-6;

const noDuty: DutyResult = { fits: [], checks: [], findings: [] };
const noBench: BenchResult = { stopPoints: [], findings: [] };
const noInspection: InspectionResult = { rows: [], proofTests: [], findings: [] };

/** Answers for one job after another, computing again only the stages whose input changed. */
export type Assessor = (job: Job, workshop: Workshop | undefined) => Assessment;

/** An assessor with a memory of its last answers, one a stage. */
export function createAssessor(): Assessor {
  const part: Memo<typeof definePart> = memo(definePart);
  const evidence: Memo<typeof gatherEvidence> = memo(gatherEvidence);
  const duty: Memo<typeof assessDuty> = memo(assessDuty);
  const route: Memo<typeof planRoute> = memo(planRoute);
  const bench: Memo<typeof stopPoints> = memo(stopPoints);
  const inspection: Memo<typeof inspect> = memo(inspect);

  return (job, workshop) => {
    const defined = job.part && part(job.part);
    const gauges = workshop?.gauges ?? [];
    const mates = job.mates ?? [];
    const gathered = evidence(
      job.evidence,
      gauges,
      defined?.dimensions ?? [],
      mates.map(({ id, kind }) => ({ id, kind })),
      defined?.material?.expansion ?? steelExpansion,
    );
    const checked = defined ? duty(defined, mates, job.duty) : noDuty;
    const planned = defined && workshop ? route(defined, workshop, job.route) : undefined;
    const stopped = defined && workshop && planned ? bench(defined, planned, workshop) : noBench;
    const inspected = defined ? inspection(defined, job.duty, gauges, job.inspection) : noInspection;
    return {
      evidence: gathered,
      part: defined,
      duty: checked,
      route: planned,
      bench: stopped,
      inspection: inspected,
      cautions: cautionsFor(job.hazard, job.duty, planned),
      findings: worstFirst([
        ...(defined?.findings ?? []),
        ...gathered.findings,
        ...checked.findings,
        ...(planned?.findings ?? []),
        ...stopped.findings,
        ...inspected.findings,
      ]),
      missing: missingParts(job, workshop),
    };
  };
}

/** One job, once. */
export function assess(job: Job, workshop: Workshop | undefined): Assessment {
  return createAssessor()(job, workshop);
}

function missingParts(job: Job, workshop: Workshop | undefined): string[] {
  const missing: string[] = [];
  if (!job.evidence?.readings?.length) missing.push('No readings are entered: the sizes stand without evidence.');
  if (!job.part) missing.push('No part is entered: there is nothing to draw, check or make yet.');
  if (!job.duty) missing.push('No duty is entered: seals, joints and loads are not checked.');
  if (!job.mates?.length) missing.push('No mates are entered: fits are not checked.');
  if (!workshop) missing.push('No workshop is given: there is no route, no table and no gauge to inspect with.');
  if (!job.inspection?.readings?.length) missing.push('The new part has not been measured yet.');
  return missing;
}
