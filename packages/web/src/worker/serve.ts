/** The worker's side of a task: hears it, does it, and tells how it ended, in words when it failed. */
import { readWorkshop } from '@sparewright/core/job/read-document';
import type { Workshop } from '@sparewright/core/lathe/schema';
import type { PageParts } from '@sparewright/output/page/job-page';
import { presentRefusal } from '@sparewright/output/present/refusal';
import { breath } from './breath.ts';
import type { FromWorker, Task, ToWorker } from './protocol.ts';

export interface Serving {
  readonly workshop: Workshop | undefined;
  readonly tell: (parts: PageParts) => void;
  /** Lets what came meanwhile be heard. @returns false once the task has been left; then its answer is of no use */
  readonly goOn: () => Promise<boolean>;
}

export function serve(work: (task: Task, serving: Serving) => Promise<unknown>): void {
  const underWay = new Set<number>();
  let workshop = (): Workshop | undefined => undefined;

  const say = (what: FromWorker): void => postMessage(what);

  async function answer(number: number, task: Task): Promise<void> {
    underWay.add(number);
    const goOn = async (): Promise<boolean> => {
      await breath();
      return underWay.has(number);
    };
    try {
      // Of several that came while another was done, those left meanwhile are not even begun.
      if (!(await goOn())) return say({ say: 'left', number });
      const tell = (parts: PageParts): void => say({ say: 'parts', number, parts });
      const result = await work(task, { workshop: workshop(), tell, goOn });
      say(underWay.has(number) ? { say: 'done', number, answer: result } : { say: 'left', number });
    } catch (error) {
      const refusal = presentRefusal(error);
      if (refusal) say({ say: 'refused', number, refusal });
      else say({ say: 'failed', number, message: error instanceof Error ? error.message : String(error) });
    } finally {
      underWay.delete(number);
    }
  }

  addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
    if (data.say === 'leave') underWay.delete(data.number);
    else if (data.say === 'workshop') workshop = reading(data.document);
    else void answer(data.number, data.task);
  });
}

/** Read once. One that cannot be read is the fault of whoever kept it: every task says so, none goes on without it. */
function reading(document: Extract<ToWorker, { say: 'workshop' }>['document']): () => Workshop | undefined {
  if (document === null) return () => undefined;
  try {
    const workshop = readWorkshop(document);
    return () => workshop;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return () => {
      throw new Error(`The workshop cannot be read: ${why}`);
    };
  }
}
