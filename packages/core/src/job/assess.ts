/**
 * The whole job: every stage in order, each answering as far as it can, all findings gathered worst first.
 */

import { stopPoints } from '../bench/stop-points.ts';
import { assessDuty } from '../duty/assess-duty.ts';
import { gatherEvidence } from '../evidence/gather.ts';
import { type Stage, worstFirst } from '../finding.ts';
import { inspect } from '../inspect/inspect.ts';
import type { Workshop } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { planRoute } from '../route/plan-route.ts';
import type { Assessment } from './assessment.ts';
import { cautionsFor } from './cautions.ts';
import { type Memo, memo } from './memo.ts';
import type { Job } from './schema.ts';

/** Expansion assumed of a part whose material is not known: steel, per kelvin. */
const steelExpansion = 11.5e-6;

const nothing: Assessment = {
  evidence: { gathered: [], findings: [] },
  part: undefined,
  duty: { fits: [], checks: [], findings: [] },
  route: undefined,
  bench: { stopPoints: [], findings: [] },
  inspection: { rows: [], proofTests: [], findings: [] },
  cautions: [],
  findings: [],
  missing: [],
};

/** Answers for one job after another, computing again only the stages whose input changed. */
export type Assessor = (job: Job, workshop: Workshop | undefined) => Assessment;

/** Stage by stage: each time what is known so far, with the stages still to come empty, as if nothing was entered for them. */
export type StagedAssessor = (job: Job, workshop: Workshop | undefined) => Generator<Answered, Assessment>;

export interface Answered {
  /** The stage that has just answered. */
  readonly stage: Exclude<Stage, 'record'>;
  /** Findings, cautions and what is missing are told with the last answer only, which the generator returns. */
  readonly soFar: Assessment;
}

/** An assessor with a memory of its last answers, one a stage. */
export function createAssessor(): Assessor {
  const staged = createStagedAssessor();
  return (job, workshop) => {
    const stages = staged(job, workshop);
    let next = stages.next();
    while (next.done !== true) next = stages.next();
    return next.value;
  };
}

/** As {@link createAssessor}, for those who show each stage when it is there, or leave off when the job has changed meanwhile. */
export function createStagedAssessor(): StagedAssessor {
  const definePartOnce: Memo<typeof definePart> = memo(definePart);
  const gatherOnce: Memo<typeof gatherEvidence> = memo(gatherEvidence);
  const dutyOnce: Memo<typeof assessDuty> = memo(assessDuty);
  const routeOnce: Memo<typeof planRoute> = memo(planRoute);
  const benchOnce: Memo<typeof stopPoints> = memo(stopPoints);
  const inspectOnce: Memo<typeof inspect> = memo(inspect);

  return function* (job, workshop) {
    const part = job.part && definePartOnce(job.part);
    let soFar: Assessment = { ...nothing, part };
    yield { stage: 'part', soFar };
    const gauges = workshop?.gauges ?? [];
    const mates = job.mates ?? [];
    const evidence = gatherOnce(
      job.evidence,
      gauges,
      part?.dimensions ?? [],
      mates.map(({ id, kind }) => ({ id, kind })),
      part?.material?.expansion ?? steelExpansion,
    );
    soFar = { ...soFar, evidence };
    yield { stage: 'evidence', soFar };
    const duty = part ? dutyOnce(part, mates, job.duty) : nothing.duty;
    soFar = { ...soFar, duty };
    yield { stage: 'duty', soFar };
    const route = part && workshop ? routeOnce(part, workshop, job.route) : undefined;
    soFar = { ...soFar, route };
    yield { stage: 'route', soFar };
    const bench = part && workshop && route ? benchOnce(part, route, workshop) : nothing.bench;
    soFar = { ...soFar, bench };
    yield { stage: 'bench', soFar };
    const inspection = part ? inspectOnce(part, job.duty, gauges, job.inspection) : nothing.inspection;
    soFar = { ...soFar, inspection };
    yield { stage: 'inspection', soFar };
    return {
      ...soFar,
      cautions: cautionsFor(job.hazard, job.duty, route),
      findings: worstFirst([
        ...(part?.findings ?? []),
        ...evidence.findings,
        ...duty.findings,
        ...(route?.findings ?? []),
        ...bench.findings,
        ...inspection.findings,
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
