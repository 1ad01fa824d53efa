/** Takes entries of the bench log to the server: those of the job on the page, and those of others that still wait. */
import { fetchJson, json } from '../ask-server.ts';
import { whenNews } from '../save/events.ts';
import { jobsWaiting, release, unsent } from './bench-outbox.ts';

/** As many as the server takes at a time. */
const most = 500;

interface Answer {
  readonly accepted: readonly string[];
  readonly known: readonly string[];
  readonly refused: readonly { readonly id: string; readonly why: string }[];
}

/**
 * Sends what waits of a job. Sending an entry twice keeps it once, so two windows may do this at the same time.
 *
 * @returns why entries will never be taken, for each of them
 * @throws Refused when the server does not answer or takes none of them
 */
export async function deliver(job: string, signal?: AbortSignal): Promise<string[]> {
  const entries = unsent(job).slice(0, most);
  if (entries.length === 0) return [];
  const answer = await fetchJson<Answer>('/api/bench-log', {
    ...json('POST', { entries }),
    ...(signal ? { signal } : {}),
  });
  release(job, [...answer.accepted, ...answer.known, ...answer.refused.map(({ id }) => id)]);
  return answer.refused.map(({ why }) => why);
}

/** From now on, whatever page is shown: what was written without a network leaves as soon as there is one. */
export function keepDelivering(): void {
  const all = (): void => {
    // What fails stays where it is, and is shown at its job.
    for (const job of jobsWaiting()) void deliver(job).catch(() => undefined);
  };
  all();
  addEventListener('online', all);
  whenNews((news) => {
    if (news.kind === 'back') all();
  });
}
