/**
 * What the page asks of its workers: the page of a job, and any question of the register.
 *
 * Two workers, so that a long question never stands before what is typed: one assesses and draws, the other answers.
 */
import type { Json } from '@sparewright/core/job/merge';
import type { Answered } from '@sparewright/core/questions/ask';
import type { PageParts } from '@sparewright/output/page/job-page';
import type { JobPage } from '@sparewright/output/present/job-view';
import { type Host, openHost } from './host.ts';

const assessing: Host = openHost({
  start: () => new Worker(new URL('./assess-worker.ts', import.meta.url), { type: 'module', name: 'assess' }),
  patience: 20_000,
  leave: 'between steps',
});

const asking: Host = openHost({
  start: () => new Worker(new URL('./ask-worker.ts', import.meta.url), { type: 'module', name: 'ask' }),
  patience: Number.POSITIVE_INFINITY,
  leave: 'at once',
});

/** One job on the page. */
export interface Assessor {
  /**
   * The page of the job as typed. Each part is told as soon as it is there, in a page whose unchanged parts are the same
   * objects as before; the first time only once the page is whole.
   *
   * @param signal  ends it, for a later keystroke takes its place; the promise is then rejected with the signal's reason
   * @throws Refused when the document will not do
   * @throws Fault when the program failed at it; the document may be quite right
   */
  page(document: Json, signal: AbortSignal, tell: (page: JobPage) => void): Promise<JobPage>;
}

/** Typing goes on as long as keys follow each other faster than this [ms]; the design is recovered when it rests. */
const rest = 250;

let desks = 0;

export function openAssessor(): Assessor {
  desks += 1;
  const desk = desks;
  assessing.warm();
  let shown: PageParts = { recovered: null };
  return {
    async page(document, signal, tell) {
      /** Also what comes of a document that has been typed over meanwhile: the worker tells nothing twice. */
      const take = (parts: PageParts): void => {
        shown = { ...shown, ...parts, sheets: { ...shown.sheets, ...parts.sheets }, document };
        if (isWhole(shown)) tell(shown);
      };
      await assessing.run({ kind: 'assess', desk, document }, { signal, tell: take });
      const whole: PageParts = { ...shown, document };
      if (!isWhole(whole)) throw new Error('the worker ended before the page was whole');
      recoverLater(document, signal, take);
      return whole;
    },
  };
}

/** Not waited for by anyone; what kept it from coming does not concern the rest of the page, and is asked anew with the next key. */
function recoverLater(document: Json, signal: AbortSignal, tell: (parts: PageParts) => void): void {
  const soon = setTimeout(async () => {
    const answer = await asking.run({ kind: 'recover', document }, {}).catch(() => undefined);
    if (!signal.aborted && isRecovered(answer)) tell(answer);
  }, rest);
  signal.addEventListener('abort', () => clearTimeout(soon), { once: true });
}

function isRecovered(value: unknown): value is Pick<JobPage, 'recovered'> {
  return typeof value === 'object' && value !== null && 'recovered' in value;
}

/** The last sheet is told last. */
function isWhole(page: PageParts): page is JobPage {
  return page.stages !== undefined && page.sheets?.record !== undefined;
}

/**
 * Asks a question of the register, as `POST /api/ask/NAME` does, without the server.
 *
 * @param name  as in docs/reference/questions.md
 * @param input  plain data as the question describes it
 * @param signal  ends it, however far it has come; the promise is then rejected with its reason
 * @returns the answer with its sources
 * @throws Refused when the input will not do, with the place and what was expected
 * @throws Fault when the program failed at it
 */
export async function askQuestion(name: string, input: unknown, signal?: AbortSignal): Promise<Answered> {
  const answered = await asking.run({ kind: 'ask', name, input }, { signal });
  if (!isAnswered(answered)) throw new Error(`question ${name} came back without an answer`);
  return answered;
}

function isAnswered(value: unknown): value is Answered {
  return typeof value === 'object' && value !== null && 'answer' in value && 'sources' in value;
}
