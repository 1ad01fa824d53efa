/** The demonstration jobs as they are shipped, and how to change one for a test. All figures in them are invented. */
import { readFileSync } from 'node:fs';
import { assess } from '@sparewright/core/job/assess';
import { parseJson, readJob, readWorkshop } from '@sparewright/core/job/read-document';
import { recoverJob } from '@sparewright/core/job/recover-job';
import type { Job, JobDocument } from '@sparewright/core/job/schema';
import type { Workshop } from '@sparewright/core/lathe/schema';
import type { PacketInput } from '../src/packet/packet.ts';

const examples = new URL('../../../examples/', import.meta.url);

function shipped(file: string): object {
  const document = parseJson(readFileSync(new URL(file, examples), 'utf8'), file);
  if (typeof document !== 'object' || document === null) throw new Error(`${file} is no document`);
  return document;
}

export const jobFiles = ['valve-guide-pin', 'plunger', 'gland-spindle'] as const;

/** A demonstration job, with some of its entries changed. */
export function exampleJob(name: (typeof jobFiles)[number], changes: Partial<JobDocument> = {}): Job {
  return readJob({ ...shipped(`${name}.job.json`), ...changes });
}

export const workshop: Workshop = readWorkshop(shipped('bench-lathe.workshop.json'));

/** A job of which only the title is entered. */
export const barelyBegun: Job = readJob({
  sparewright: 'job',
  version: 1,
  title: 'Unknown spindle',
  units: 'mm',
  hazard: 'ordinary',
});

/** What the packet of a job is made from; `null` for a person who has entered no workshop. */
export function packetInput(job: Job, inWorkshop: Workshop | null = workshop): PacketInput {
  const known = inWorkshop ?? undefined;
  const assessment = assess(job, known);
  return { job, workshop: known, assessment, recovered: recoverJob(job, known, assessment.part) };
}
