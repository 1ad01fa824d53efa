/** What an empty data folder begins with: the demonstration jobs and the demonstration workshop. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseJson } from '@sparewright/core/job/read-document';
import type { Store } from '@sparewright/store/open-store';
import type { Assessments } from './assessments.ts';

const jobEnding = '.job.json';
const workshopEnding = '.workshop.json';
/** The list shows the latest first, so the one to begin with comes last. */
const shownFirst = 'valve-guide-pin';

/** Does nothing once there is a workshop or any other job. A start that was cut off here is completed by the next one. */
export function putExamplesIn(store: Store, folder: string, assessments: Assessments): void {
  if (store.workshop.get() !== undefined) return;
  const files = readdirSync(folder).toSorted();
  const ids = files
    .filter((file) => file.endsWith(jobEnding))
    .map((file) => file.slice(0, -jobEnding.length))
    .toSorted((a, b) => Number(a === shownFirst) - Number(b === shownFirst));
  if (hasOtherJobs(store, ids)) return;
  const document = (file: string) => parseJson(readFileSync(join(folder, file), 'utf8'), file);
  const workshop = files.find((file) => file.endsWith(workshopEnding));
  for (const id of ids) {
    const job = document(`${id}${jobEnding}`);
    store.jobs.create(job, assessments.summaryOf(job), { id });
  }
  if (workshop !== undefined) store.workshop.save(0, document(workshop));
  // What the route says of a job is known only now that there is a lathe.
  for (const id of ids) {
    const { number, document: job } = store.jobs.get(id);
    store.jobs.summarise(id, number, assessments.summaryOf(job));
  }
}

function hasOtherJobs({ jobs }: Store, own: readonly string[]): boolean {
  const all = { limit: own.length + 1, offset: 0 };
  const known = [...jobs.list(all).jobs, ...jobs.list({ ...all, bin: true }).jobs];
  return known.some(({ id }) => !own.includes(id));
}
