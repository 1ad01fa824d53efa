/** Runs in a worker: what may take longer than typing can wait. The questions are loaded when one is asked, or ahead of that. */
import { readJob } from '@sparewright/core/job/read-document';
import { createRecoveredMaker } from '@sparewright/output/page/recovered-part';
import { serve } from './serve.ts';

const recovered = createRecoveredMaker();

async function questions() {
  try {
    return await import('@sparewright/core/questions/ask');
  } catch {
    throw new Error('the questions are not loaded yet, and the server does not answer');
  }
}

/** Once the page has come to rest, for the server may be away when the first question comes [ms]. */
const quiet = 1000;
setTimeout(() => questions().catch(() => undefined), quiet);

serve(async (task, { workshop }) => {
  switch (task.kind) {
    case 'recover':
      return { recovered: recovered(task.document, readJob(task.document), workshop) };
    case 'ask': {
      const { ask } = await questions();
      return ask(task.name, task.input);
    }
    case 'assess':
      throw new Error('a worker that answers questions was given a job to assess');
  }
});
