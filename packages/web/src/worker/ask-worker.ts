/** Runs in a worker: what may take longer than typing can wait. The questions are loaded with the first one asked. */
import { memo } from '@sparewright/core/job/memo';
import { readJob } from '@sparewright/core/job/read-document';
import { recoverJob } from '@sparewright/core/job/recover-job';
import { definePart } from '@sparewright/core/part/define-part';
import { serve } from './serve.ts';

const part: typeof definePart = memo(definePart);
const recovered: typeof recoverJob = memo(recoverJob);

serve(async (task, { workshop }) => {
  switch (task.kind) {
    case 'recover': {
      const { part: entered, evidence, mates, machine } = readJob(task.document);
      return recovered({ evidence, mates, machine }, workshop, entered && part(entered));
    }
    case 'ask': {
      const { ask } = await import('@sparewright/core/questions/ask');
      return ask(task.name, task.input);
    }
    case 'assess':
      throw new Error('a worker that answers questions was given a job to assess');
  }
});
