/**
 * The server as many devices use it: entries of the bench log acknowledged once they are on the disk, and jobs looked for among
 * ten thousand, over HTTP. `npx tsx benchmarks/server.ts [number of jobs]`. The peer is an answer that touches no data.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { startServer } from '@sparewright/server/start';
import { openStore } from '@sparewright/store/open-store';
import { figure, report } from './measure.ts';

const count = Number(process.argv[2] ?? 10_000);
const path = (name: string) => fileURLToPath(new URL(`../${name}`, import.meta.url));
const data = mkdtempSync(join(tmpdir(), 'sparewright-bench-'));
const document = JSON.parse(readFileSync(path('examples/plunger.job.json'), 'utf8'));
const things = ['pin', 'piston', 'spindle', 'plunger', 'bush', 'valve', 'stud', 'collar', 'sleeve', 'trunnion'];

const store = openStore({ folder: data });
for (let i = 0; i < count; i++) {
  const title = `${things[i % things.length]} ${i}`;
  store.jobs.create({ ...document, title, notes: `Came in crate ${i % 613}.` }, {}, { id: `job-${i}` });
}
store.close();

const { address, close } = await startServer({
  examples: path('examples'),
  web: path('packages/web/dist'),
  data,
  port: 0,
});

async function times(runs: number, ask: (i: number) => Promise<Response>): Promise<number[]> {
  const taken: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    const response = await ask(i);
    await response.arrayBuffer();
    if (!response.ok) throw new Error(`${response.status} ${response.url}`);
    taken.push(performance.now() - start);
  }
  return taken;
}

const log = (id: string) =>
  fetch(`${address}/api/bench-log`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      entries: [{ id, job: 'job-1', at: '2026-03-01T09:30:00Z', kind: 'pass', asked: '12.5', read: '12.48' }],
    }),
  });

/** Several devices at once, each sending its next entry when the last one is acknowledged. @returns entries a second */
async function rate(devices: number, each: number): Promise<number> {
  const start = performance.now();
  await Promise.all(
    Array.from({ length: devices }, (_, device) => times(each, (i) => log(`${devices}-${device}-${i}`))),
  );
  return (devices * each * 1000) / (performance.now() - start);
}

const plain = await times(200, () => fetch(`${address}/health`));
report(
  `over HTTP, ${count} jobs`,
  [
    figure(
      'search: one word, few jobs (wanted: < 30)',
      await times(60, (i) => fetch(`${address}/api/jobs?search=crate+${i}`)),
    ),
    figure(
      'search: a tenth of the jobs (wanted: < 30)',
      await times(60, (i) => fetch(`${address}/api/jobs?search=${things[i % 10]}`)),
    ),
    figure(
      'search: a word of every job (wanted: < 30)',
      await times(60, () => fetch(`${address}/api/jobs?search=crate`)),
    ),
    figure('one entry of the bench log, acknowledged', await times(200, (i) => log(`single-${i}`))),
  ],
  figure('an answer that touches no data', plain.slice(20)),
);
console.log('\nentries of the bench log acknowledged on the disk, one a request (wanted: 500 a second)');
for (const devices of [1, 8, 32])
  console.log(
    `  ${String(devices).padStart(2)} at a time ${(await rate(devices, 1200 / devices)).toFixed(0).padStart(8)} a second`,
  );

await close();
rmSync(data, { recursive: true });
