/** The part of the page that takes as long as all the rest together and is wanted on one sheet only: the recovered design. */
import { createStagedAssessor } from '@sparewright/core/job/assess';
import { memo } from '@sparewright/core/job/memo';
import { recoverJob } from '@sparewright/core/job/recover-job';
import type { Job } from '@sparewright/core/job/schema';
import type { Workshop } from '@sparewright/core/lathe/schema';
import type { JobPage } from '../present/job-view.ts';
import { recoveredView } from '../present/recovered-view.ts';
import { presentSettings } from '../present/settings.ts';

export type RecoveredMaker = (document: unknown, job: Job, workshop: Workshop | undefined) => JobPage['recovered'];

/** A maker with a memory: only what concerns the readings makes it work anew. */
export function createRecoveredMaker(): RecoveredMaker {
  const staged = createStagedAssessor();
  const recover: typeof recoverJob = memo(recoverJob);
  return (document, job, workshop) => {
    const assessment = throughEvidence(staged(job, workshop));
    const { evidence, mates, machine } = job;
    const result = assessment && recover({ evidence, mates, machine }, workshop, assessment.part);
    return result ? recoveredView(result, { document, job, assessment, settings: presentSettings(job) }) : null;
  };
}

/** The stages that the view is made from; the later ones are left off. */
function throughEvidence(stages: ReturnType<ReturnType<typeof createStagedAssessor>>) {
  for (const { stage, soFar } of stages) if (stage === 'evidence') return soFar;
  return undefined;
}
