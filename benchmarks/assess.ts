/**
 * Whole assess of the valve guide pin: in a fresh process, and after one changed dimension; beside a start from nothing each time.
 * Packet from the command line, process start included; beside a bare start of node.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createAssessor } from '@sparewright/core/job/assess';
import { readJob, readWorkshop } from '@sparewright/core/job/read-document';
import type { JobDocument } from '@sparewright/core/job/schema';
import { buildSync } from 'esbuild';
import { figure, report, time } from './measure.ts';

const path = (name: string) => fileURLToPath(new URL(`../${name}`, import.meta.url));
const read = (name: string) => JSON.parse(readFileSync(path(`examples/${name}`), 'utf8'));
const folder = mkdtempSync(join(tmpdir(), 'sparewright-bench-'));

/** Runs `assess` once in a process of its own and gives what it took, process start and loading left out [ms]. */
function coldTimes(runs: number): number[] {
  const entry = path('benchmarks/cold-assess.ts');
  const outfile = join(folder, 'cold.mjs');
  buildSync({ entryPoints: [entry], bundle: true, platform: 'node', format: 'esm', target: 'node20', outfile });
  return Array.from({ length: runs }, () => {
    const { stdout } = spawnSync(process.execPath, [outfile, path('examples')], { encoding: 'utf8' });
    return Number(stdout);
  });
}

function processTimes(runs: number, args: readonly string[]): number[] {
  return Array.from({ length: runs }, () => {
    const start = performance.now();
    const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
    if (status !== 0 && status !== 1) throw new Error(stderr);
    return performance.now() - start;
  });
}

const workshop = readWorkshop(read('bench-lathe.workshop.json'));
const document: JobDocument = read('valve-guide-pin.job.json');
const guide = document.part?.outside.findIndex((s) => s.id === 'guide') ?? -1;

function changed(run: number): JobDocument {
  const copy = structuredClone(document);
  const section = copy.part?.outside[guide];
  if (section?.kind === 'cylinder') section.diameter = `6.${100 + run} f7`;
  return copy;
}

const kept = createAssessor();
kept(readJob(document), workshop);
const jobs = Array.from({ length: 24 }, (_, i) => readJob(changed(i)));
const job = (run: number) => jobs[(run + jobs.length) % jobs.length] ?? readJob(document);
const notes = Array.from({ length: 24 }, (_, i) => readJob({ ...document, notes: `note ${i}` }));

report(
  'assess of the valve guide pin',
  [
    figure('in a fresh process, loading left out (wanted: < 150)', coldTimes(7)),
    time('after one changed dimension (wanted: < 30)', 20, (run) => kept(job(run), workshop)),
    time('after a changed note', 20, (run) => kept(notes[(run + 24) % 24] ?? job(run), workshop)),
  ],
  time('everything from nothing, warm', 20, (run) => createAssessor()(job(run), workshop)),
);

const cli = path('packages/cli/bin/sparewright.js');
report(
  'command line, process start included',
  [
    figure(
      'packet of the valve guide pin (wanted: < 2000)',
      processTimes(5, [cli, 'packet', path('examples/valve-guide-pin.job.json'), '-o', join(folder, 'pin.pdf')]),
    ),
    figure('ask limits', processTimes(5, [cli, 'ask', 'limits', '--json', '{"size":"40 f7"}'])),
  ],
  figure('node that does nothing', processTimes(5, ['-e', '0'])),
);

rmSync(folder, { recursive: true });
