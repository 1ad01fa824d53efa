/** What it costs to judge the cuts of a route: 22 operations, each with its own setup, 1000 cuts in all. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Setup } from '@sparewright/core/lathe/chain';
import { whatWouldHelpJob } from '@sparewright/core/lathe/job-remedies';
import { judgeOf, knownLathe } from '@sparewright/core/lathe/judge';
import { latheKnowledge } from '@sparewright/core/lathe/knowledge';
import { workshopSchema } from '@sparewright/core/lathe/schema';
import { heldBar, materialOf } from '@sparewright/core/lathe/workshop-known';
import { time } from './measure.ts';

const path = fileURLToPath(new URL('../examples/bench-lathe.workshop.json', import.meta.url));
const workshop = workshopSchema('mm').parse(JSON.parse(readFileSync(path, 'utf8')));
const material = materialOf('303');
const [cutter] = workshop.cutters.filter((c) => c.kind === 'turning');
if (!cutter) throw new Error('the example workshop has no turning cutter');

const operations = 22;
const setups = Array.from({ length: operations }, (_, i): Setup => {
  const diameter = 8 + i / 2;
  const length = 20 + 3 * i;
  return {
    operation: 'turning',
    work: heldBar({ diameter, length, grip: 18, material: '303', tailstock: i % 3 === 0 }, 300),
    cutter,
    stations: Array.from({ length: 10 }, (_x, k) => (length * (k + 1)) / 10),
    diameter,
  };
});
const cuts = Array.from({ length: 45 }, (_, i) => ({
  depth: 0.02 + 0.02 * (i % 15),
  feed: [0.03, 0.05, 0.1][i % 3] ?? 0.05,
  speed: [200, 400, 800, 1250, 1600][i % 5] ?? 400,
  sizeLimit: 0.02,
}));
const route = () => {
  for (const setup of setups) {
    const judge = judgeOf(knownLathe(workshop), setup, material);
    for (const cut of cuts) judge(cut);
  }
};
const first = performance.now();
route();
const cold = performance.now() - first;
const warm = time('warm', 15, route);
const prepared = time('setups alone', 15, () => setups.map((s) => judgeOf(knownLathe(workshop), s, material)));
console.log(`${operations} operations, ${operations * cuts.length} cuts judged (wanted: < 30 ms)`);
console.log(
  `  first time ${cold.toFixed(1)} ms, then ${warm.median.toFixed(1)} ms (${warm.least.toFixed(1)} to ${warm.most.toFixed(1)}); of that the setups ${prepared.median.toFixed(1)} ms`,
);

const { joint } = latheKnowledge(workshop);
const job = setups.map((setup, i) => ({
  id: `${i}`,
  setup,
  material,
  joint,
  asked: { depth: 0.2, feed: 0.05, speed: 800, sizeLimit: 0.02 },
}));
const helped = time('what would help the whole job', 5, () => whatWouldHelpJob(job, workshop.lathe));
console.log(`  every remedy tried on all of them: ${helped.median.toFixed(0)} ms`);
