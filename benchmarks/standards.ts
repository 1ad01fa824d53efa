/**
 * All standards: loading in a fresh process beside the schema library alone; single questions, warm, beside a scan of the published
 * table row by row; look-ups the other way round.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { questions } from '@sparewright/core/questions/registry';
import { classesForLimits } from '@sparewright/core/standards/fits/choose';
import { limitDeviations } from '@sparewright/core/standards/fits/limit-deviations';
import { findThread } from '@sparewright/core/standards/threads/find';
import { parseThread } from '@sparewright/core/standards/threads/thread';
import { buildSync } from 'esbuild';
import { figure, report, time } from './measure.ts';

const path = (name: string) => fileURLToPath(new URL(`../${name}`, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'sparewright-bench-'));

function loadTimes(entry: string, runs: number): number[] {
  const outfile = join(folder, `${entry}.mjs`);
  buildSync({ entryPoints: [path(`benchmarks/${entry}.ts`)], bundle: true, platform: 'node', format: 'esm', outfile });
  return Array.from({ length: runs }, () =>
    Number(spawnSync(process.execPath, [outfile], { encoding: 'utf8' }).stdout),
  );
}

report(
  'loading every standard and material',
  [
    figure('tables and formulas (wanted: < 20)', loadTimes('load-tables', 9)),
    figure('the same with the schemas of their questions', loadTimes('load-standards', 9)),
  ],
  figure('the schema library alone', loadTimes('load-zod', 9)),
);

/** What a plain program does: go through the printed table from the top. */
const printed = readFileSync(path('packages/core/reference/limits-fits/limit-deviations-check.csv'), 'utf8')
  .split('\n')
  .slice(1)
  .map((line) => line.split(','));
function scan(size: number, toleranceClass: string): string[] | undefined {
  return printed.find((r) => Number(r[1]) < size && Number(r[2]) >= size && r[3] === toleranceClass);
}

const times = 1000;
const many = (work: (i: number) => unknown) => () => {
  for (let i = 0; i < times; i++) work(i);
};
report(
  `${times} answers in a row: milliseconds here are microseconds each (wanted: < 50)`,
  [
    time(
      'limits of a size and class',
      9,
      many((i) => limitDeviations(30 + (i % 20), 'H7')),
    ),
    time(
      'reading M10x1.25-6g',
      9,
      many(() => parseThread('M10x1.25-6g')),
    ),
  ],
  time(
    'the same limits, by scanning the printed table',
    9,
    many((i) => scan(30 + (i % 20), 'H7')),
  ),
);

const standards =
  /^(limits|fit|thread|thread-limits|over-wires|o-ring|gland|material|hexagon-drive|retaining-ring|bar)$/;
for (const question of questions.filter((q) => standards.test(q.name))) {
  const input = question.input.parse(question.example.input);
  const f = time(
    `${question.name}`,
    9,
    many(() => question.answer(input)),
  );
  console.log(`  question ${f.what.padEnd(18)} ${f.median.toPrecision(3).padStart(8)} µs an answer`);
}

report(
  'the other way round, over everything (wanted: < 2)',
  [
    time('classes that hold measured limits', 50, (i) =>
      classesForLimits(30, { max: 29.98 - i * 1e-4, min: 29.96 }, 'shaft'),
    ),
    time('threads that fit a crest and a pitch', 50, (i) =>
      findThread(
        {
          crestDiameter: { value: 9.8 + i * 1e-3, uncertainty: 0.05 },
          pitch: { value: 1.5, uncertainty: 0.02 },
          side: 'external',
        },
        5,
      ),
    ),
  ],
  time('one scan of the printed table', 50, (i) => scan(30, i % 2 === 0 ? 'nothing' : 'none')),
);
rmSync(folder, { recursive: true });
