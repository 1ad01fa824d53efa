/** The demonstration jobs and the workshop: JSON documents in one folder, read once. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createAssessor } from '@sparewright/core/job/assess';
import { parseJson, readJob, readWorkshop } from '@sparewright/core/job/read-document';
import type { Workshop } from '@sparewright/core/lathe/schema';
import type { Assessed } from './page/job-page.ts';

const jobEnding = '.job.json';
const workshopEnding = '.workshop.json';

export interface Jobs {
  readonly ids: readonly string[];
  /** A job with its assessment; undefined when there is none of that name. */
  find(id: string): Assessed | undefined;
  /** Any job document. @throws InputError when it is none */
  assess(document: unknown): Assessed;
}

/** @throws InputError when a document in the folder is not what its name says */
export function readJobs(folder: string): Jobs {
  const files = readdirSync(folder).toSorted();
  const workshop = readFirstWorkshop(folder, files);
  const documents = new Map(
    files
      .filter((file) => file.endsWith(jobEnding))
      .map((file) => [file.slice(0, -jobEnding.length), parseJson(readFileSync(join(folder, file), 'utf8'), file)]),
  );
  for (const document of documents.values()) readJob(document);
  const known = new Map<string, Assessed>();
  const assessor = createAssessor();
  const assess = (document: unknown): Assessed => {
    const job = readJob(document);
    return { document, job, workshop, assessment: assessor(job, workshop) };
  };
  return {
    ids: [...documents.keys()],
    find(id) {
      const document = documents.get(id);
      if (document === undefined) return undefined;
      const found = known.get(id) ?? assess(document);
      known.set(id, found);
      return found;
    },
    assess,
  };
}

function readFirstWorkshop(folder: string, files: readonly string[]): Workshop | undefined {
  const file = files.find((name) => name.endsWith(workshopEnding));
  return file === undefined ? undefined : readWorkshop(parseJson(readFileSync(join(folder, file), 'utf8'), file));
}
