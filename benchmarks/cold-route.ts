/** Plans the plunger's route once and prints the processor time it took [ms]. Run in a process of its own by route.ts. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readJob, readWorkshop } from '@sparewright/core/job/read-document';
import { definePart } from '@sparewright/core/part/define-part';
import { planRoute } from '@sparewright/core/route/plan-route';

const examples = process.argv[2] ?? 'examples';
const read = (name: string) => JSON.parse(readFileSync(join(examples, name), 'utf8'));
const workshop = readWorkshop(read('bench-lathe.workshop.json'));
const { part, route } = readJob(read('plunger.job.json'));
if (!part) throw new Error('the plunger has lost its part');
const defined = definePart(part);
const start = process.cpuUsage();
planRoute(defined, workshop, route);
const { user, system } = process.cpuUsage(start);
console.log((user + system) / 1000);
