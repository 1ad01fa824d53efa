/**
 * How fast the store is with many jobs, beside the plainest thing that does the same in the same run:
 * a scan of JSON files for the search, a text file with fsync for the bench log, a file renamed into place for a save.
 * `npx tsx benchmarks/store.ts [number of jobs]`
 */
import {
  appendFileSync,
  closeSync,
  fsyncSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore } from '@sparewright/store/open-store';

const count = Number(process.argv[2] ?? 10_000);
const folder = mkdtempSync(join(tmpdir(), 'sparewright-bench-'));
const files = join(folder, 'peer');
mkdirSync(files);

const examples = ['plunger', 'valve-guide-pin', 'gland-spindle'].map(
  (name): Record<string, unknown> =>
    JSON.parse(readFileSync(new URL(`../examples/${name}.job.json`, import.meta.url), 'utf8')),
);
const things = ['pin', 'piston', 'spindle', 'plunger', 'bush', 'valve', 'stud', 'collar', 'sleeve', 'trunnion'];
const machines = ['sprayer', 'press', 'saw', 'pump', 'mower', 'loom', 'crane', 'tractor', 'mill', 'lathe', 'binder'];

function documentOf(i: number): Record<string, unknown> {
  const thing = things[i % things.length] ?? '';
  const machine = machines[i % machines.length] ?? '';
  const name = `${machine} of 19${10 + (i % 60)}, frame ${i % 977}`;
  return {
    ...examples[i % examples.length],
    title: `${thing} ${i} of a ${machine}`,
    machine: { name },
    notes: `Came in with the ${machine} in crate ${i % 613}; the ${thing} had seized.`,
  };
}

/** Times of one action repeated, in milliseconds. */
function times(runs: number, action: (i: number) => void): number[] {
  return Array.from({ length: runs }, (_, i) => {
    const before = performance.now();
    action(i);
    return performance.now() - before;
  }).toSorted((a, b) => a - b);
}

function show(what: string, sorted: readonly number[], per = 1): void {
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  const rate = (1000 * per * sorted.length) / sorted.reduce((sum, ms) => sum + ms, 0);
  const ms = [at(0.5), at(0.95), at(1)].map((value) => value.toFixed(2).padStart(9));
  console.log(`${what.padEnd(58)}${ms.join('')}${rate.toFixed(0).padStart(10)}`);
}

console.log(`node ${process.version}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}, ${count} jobs`);
console.log(`${''.padEnd(58)}   median     95 %    worst [ms]   per s`);

const store = openStore({ folder });
show(
  'create a job',
  times(count, (i) => store.jobs.create(documentOf(i), {}, { id: `job-${i}` })),
);
show(
  '  peer: write a JSON file, no fsync',
  times(count, (i) => writeFileSync(join(files, `job-${i}.json`), JSON.stringify(documentOf(i)))),
);

const page = { limit: 50, offset: 0 };
const searches: readonly (readonly [string, (i: number) => string])[] = [
  ['one word, few jobs', (i) => `crate ${i % 613}`],
  ['one word, a tenth of the jobs', (i) => things[i % things.length] ?? ''],
  ['two beginnings of words', (i) => `${(things[i % 10] ?? '').slice(0, 3)} ${(machines[i % 11] ?? '').slice(0, 3)}`],
  ['a word that stands in every job', () => 'crate'],
];
for (const [kind, words] of searches)
  show(
    `search: ${kind}`,
    times(200, (i) => store.jobs.list({ ...page, search: words(i) })),
  );
show(
  '  peer: read and look through every JSON file',
  times(3, (i) => scan(searches[0]?.[1](i) ?? '')),
);
show(
  'list the latest 50',
  times(200, () => store.jobs.list(page)),
);

function scan(search: string): number {
  const words = search.split(' ');
  return readdirSync(files).filter((name) => {
    const { title, notes, machine } = JSON.parse(readFileSync(join(files, name), 'utf8'));
    const text = `${title} ${notes} ${machine.name}`.toLowerCase();
    return words.every((word) => text.includes(word));
  }).length;
}

const at = '2026-03-01T09:30:00.000Z';
const entry = (id: string) => ({
  id,
  job: 'job-1',
  at,
  content: { kind: 'pass', dial: 12.5, measured: '31.97', note: id },
});
show(
  'bench log: one entry, acknowledged',
  times(2000, (i) => store.benchLog.append([entry(`single-${i}`)])),
);
const plain = openSync(join(folder, 'peer.log'), 'a');
show(
  '  peer: one line added to a file, fsync',
  times(2000, (i) => {
    writeSync(plain, `${JSON.stringify(entry(`single-${i}`))}\n`);
    fsyncSync(plain);
  }),
);
closeSync(plain);
show(
  'bench log: twenty entries in one go (per s: entries)',
  times(100, (i) => store.benchLog.append(Array.from({ length: 20 }, (_, k) => entry(`many-${i}-${k}`)))),
  20,
);
show(
  '  peer: a line added to a file, no fsync',
  times(2000, (i) => appendFileSync(join(folder, 'peer.log'), `${JSON.stringify(entry(`x-${i}`))}\n`)),
);

show(
  'save a revision',
  times(500, (i) => store.jobs.save('job-1', i + 1, { ...documentOf(1), title: `Saved ${i}` }, {})),
);
show(
  '  peer: temporary file, fsync, rename',
  times(500, (i) => {
    const file = openSync(join(files, 'new'), 'w');
    writeSync(file, JSON.stringify({ ...documentOf(1), title: `Saved ${i}` }));
    fsyncSync(file);
    closeSync(file);
    renameSync(join(files, 'new'), join(files, 'job-1.json'));
  }),
);
store.close();
show(
  'open the store, with its quick check',
  times(5, () => openStore({ folder }).close()),
);
rmSync(folder, { recursive: true });
