/** Runs in a worker: what may take longer than typing can wait. The questions are loaded when one is asked, or ahead of that. */
import { readJob } from '@sparewright/core/job/read-document';
import { createRecoveredMaker } from '@sparewright/output/page/recovered-part';
import { serve } from './serve.ts';

const recovered = createRecoveredMaker();

const questions = () => import('@sparewright/core/questions/ask');
/** Once the page has come to rest, for the server may be away when the first question comes [ms]. */
const quiet = 3000;
setTimeout(() => void questions(), quiet);

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
