/**
 * `npm test`: everything that must hold before a change is accepted, in the order in which it fails soonest.
 * `npm test -- --fast` leaves out the slow tests and the browser. Node built-ins only, so that it runs on a fresh clone.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensurePackages, ensurePrograms } from './lib/install.mjs';
import { run, runTool } from './lib/run.mjs';
import { testFiles } from './testing/categories.mjs';

const fast = process.argv.includes('--fast');
const scratch = mkdtempSync(join(tmpdir(), 'sparewright-test-'));
const sum = { passed: 0, failed: 0, skipped: 0, outside: 0 };
const notes = [];
// Biome colours its output even where nobody sees colours.
const plain = process.stdout.isTTY ? [] : ['--colors=off'];

const steps = [
  ['Packages', ensurePackages],
  ...(fast ? [] : [['Programs', ensurePrograms]]),
  ['Lint and format', () => runTool('biome', ['ci', '--error-on-warnings', ...plain, '.'])],
  ['Types', () => run(process.execPath, ['scripts/types.mjs'])],
  ['Gates', () => runTool('tsx', ['scripts/gates/run.ts'])],
  ['Planted violations', () => tests('gates')],
  ['Build', () => run(process.execPath, ['scripts/build.mjs'])],
  ['Unit tests', () => tests('unit')],
  ...(fast ? [] : [['Slow tests', () => tests('slow')]]),
  ...(fast ? [] : [['Browser tests', () => tests('browser')]]),
];

const started = performance.now();
let stoppedAt;
for (const [heading, step] of steps) {
  const before = performance.now();
  console.log(`\n=== ${heading}`);
  const good = await step();
  console.log(`=== ${heading}: ${good ? 'good' : 'FAILED'} in ${seconds(before)}`);
  if (!good) {
    stoppedAt = heading;
    break;
  }
}
rmSync(scratch, { recursive: true, force: true });

console.log(`\nTotal time ${seconds(started)}${fast ? '; slow and browser tests left out (--fast)' : ''}`);
for (const note of notes) console.log(note);
if (stoppedAt) console.log(`Stopped at: ${stoppedAt}`);
console.log(`${sum.outside} values checked against the outside`);
if (sum.skipped > 0) console.log(`${sum.skipped} tests skipped`);
// A step that is no test run and fails counts as one failure, so that the last line never reads as green.
if (stoppedAt && sum.failed === 0) sum.failed = 1;
process.exitCode = stoppedAt ? 1 : 0;
console.log(`${sum.passed} passed, ${sum.failed} failed`);

/** Runs one category of tests, adds its totals, and sees that every file on disk was run. */
async function tests(category) {
  const files = testFiles()[category];
  if (files.length === 0) {
    console.log(`no ${category} tests exist`);
    notes.push(`No ${category} tests exist: that category shows nothing.`);
    return true;
  }
  const totalsFile = join(scratch, `${category}.json`);
  const ended = await runTool('vitest', ['run', '--project', category], { env: { SPAREWRIGHT_TOTALS: totalsFile } });
  if (!existsSync(totalsFile)) {
    console.error(`the ${category} tests left no totals`);
    return false;
  }
  const totals = JSON.parse(readFileSync(totalsFile, 'utf8'));
  for (const key of Object.keys(sum)) sum[key] += totals[key];
  if (totals.files !== files.length) {
    console.error(`${files.length} files of ${category} tests are on disk but ${totals.files} were run`);
    return false;
  }
  if (totals.passed + totals.failed === 0) {
    console.error(`${files.length} files of ${category} tests hold no test that ran`);
    return false;
  }
  return ended;
}

function seconds(since) {
  return `${((performance.now() - since) / 1000).toFixed(1)} s`;
}
