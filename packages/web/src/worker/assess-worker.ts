/** Runs in a worker: one job after another read, assessed and drawn, the latest first and the others never. */
import { createStagedAssessor } from '@sparewright/core/job/assess';
import { readJob } from '@sparewright/core/job/read-document';
import { createPageMaker } from '@sparewright/output/page/job-page';
import { newParts } from './new-parts.ts';
import { serve } from './serve.ts';

const make = createPageMaker(createStagedAssessor());
const told = newParts();

serve(async (task, { workshop, tell, goOn }) => {
  if (task.kind !== 'assess') throw new Error(`a worker that assesses was given a task to ${task.kind}`);
  const job = readJob(task.document);
  for (const parts of make(task.document, job, workshop)) {
    const fresh = told(task.desk, parts);
    if (fresh) tell(fresh);
    if (!(await goOn())) return;
  }
});
