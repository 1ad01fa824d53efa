/** The demonstration documents, read. */
import { readFileSync } from 'node:fs';
import { readJob, readWorkshop } from '../src/job/read-document.ts';
import type { Job } from '../src/job/schema.ts';
import type { Workshop } from '../src/lathe/schema.ts';

export const exampleNames = ['valve-guide-pin', 'plunger', 'gland-spindle'] as const;
export type ExampleName = (typeof exampleNames)[number];

/** The document as it stands in the file. */
export function exampleDocument(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`../../../examples/${name}`, import.meta.url), 'utf8'));
}

export function exampleJob(name: ExampleName): Job {
  return readJob(exampleDocument(`${name}.job.json`));
}

export function exampleWorkshop(): Workshop {
  return readWorkshop(exampleDocument('bench-lathe.workshop.json'));
}
