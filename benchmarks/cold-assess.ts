/** Assesses the valve guide pin once and prints how long that took [ms]. Run in a process of its own by assess.ts. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createAssessor } from '@sparewright/core/job/assess';
import { readJob, readWorkshop } from '@sparewright/core/job/read-document';

const examples = process.argv[2] ?? 'examples';
const read = (name: string) => JSON.parse(readFileSync(join(examples, name), 'utf8'));
const workshop = readWorkshop(read('bench-lathe.workshop.json'));
const job = readJob(read('valve-guide-pin.job.json'));
const start = performance.now();
createAssessor()(job, workshop);
console.log(performance.now() - start);
