/** `lobes`: how deep a cut may go at each of the lathe's own speeds before it sings, as a chart. */
import { InputError } from '@sparewright/core/errors';
import { depthAtSpeeds } from '@sparewright/core/lathe/depth-question';
import { answerTo } from '@sparewright/core/questions/ask';
import { readLength } from '@sparewright/core/units/length';
import { depthChart, type MarkedCut } from '@sparewright/output/chart/depth-chart';
import { drawChart } from '@sparewright/output/chart/draw-chart';
import { paintSvg } from '@sparewright/output/svg/paint';
import { type BarOptions, naming, numeric, readBarCut, withUnit } from '../bar-cut.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { withProgress } from '../progress.ts';
import { lobeLines } from '../show/lobes.ts';
import { sourceLines } from '../show/sources.ts';
import type { Terminal } from '../terminal.ts';
import { writeWhole } from '../write-file.ts';

export interface LobesOptions extends Partial<BarOptions> {
  readonly output: string;
  readonly depth?: string;
  readonly speed?: string;
}

export async function lobesCommand(
  job: string | undefined,
  options: LobesOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  if (!/\.svg$/i.test(options.output)) {
    throw new InputError([
      { path: '--output', value: options.output, expected: 'a name that ends in .svg', example: 'limit.svg' },
    ]);
  }
  if (job !== undefined) {
    onlyForBars(options);
    const { lobesOfJob } = await import('./lobes-job.ts');
    return lobesOfJob(job, options, terminal);
  }
  const { units, input, inWords } = readBarCut(complete(options));
  const marks = markOf(options, units);
  const answered = await withProgress(terminal, 'Looking at every speed', () =>
    naming(() => answerTo(depthAtSpeeds, input)),
  );
  const answer = depthAtSpeeds.output.parse(answered.answer);
  const settings = { units, decimalSign: 'point' } as const;
  const title = `How deep a cut may go: ${inWords.work}; ${inWords.held}; ${inWords.cutter}`;
  const chart = depthChart(answer, marks, { ...settings, plunge: false, title });
  writeWhole(options.output, paintSvg(drawChart(chart, settings), { theme: 'paper' }));
  const lines = [
    ...lobeLines(answer, inWords, marks, options.output, units, terminal),
    ...sourceLines(answered.sources, terminal),
  ];
  await terminal.out(`${lines.join('\n')}\n`);
  return exitCodes.fine;
}

const needed = ['workshop', 'material', 'diameter', 'out', 'feed'] as const;

/** A bar has to be told in full. */
function complete(options: LobesOptions): BarOptions {
  const { workshop, material, diameter, out, feed } = options;
  if (
    workshop === undefined ||
    material === undefined ||
    diameter === undefined ||
    out === undefined ||
    feed === undefined
  ) {
    const missing = needed.filter((name) => options[name] === undefined);
    const expected = 'a job file, or all of --workshop, --material, --diameter, --out and --feed';
    throw new InputError([{ path: missing.map((name) => `--${name}`).join(' and '), value: undefined, expected }]);
  }
  return { ...options, workshop, material, diameter, out, feed };
}

/** A job has its cuts from its route. */
function onlyForBars({ output: _output, workshop: _workshop, ...rest }: LobesOptions): void {
  const [name] = Object.keys(rest);
  if (name === undefined) return;
  throw new InputError([
    {
      path: `--${name}`,
      value: 'a job',
      expected: 'only --workshop and --output with a job, whose cuts come from its route',
    },
  ]);
}

/** The one cut to mark, when depth and speed are both told. */
function markOf({ depth, speed }: LobesOptions, units: 'mm' | 'in'): MarkedCut[] {
  if (depth === undefined && speed === undefined) return [];
  const rpm = speed === undefined ? undefined : numeric(speed);
  const read = depth === undefined ? undefined : readLength(withUnit(depth, units), units);
  const missing = depth === undefined ? '--depth' : speed === undefined ? '--speed' : undefined;
  if (missing) {
    throw new InputError([{ path: missing, value: undefined, expected: 'both --depth and --speed to mark a cut' }]);
  }
  if (typeof rpm !== 'number' || !(rpm > 0)) {
    throw new InputError([{ path: '--speed', value: speed, expected: 'a spindle speed in rpm', example: '400' }]);
  }
  if (!read || !(read.mm > 0)) {
    throw new InputError([{ path: '--depth', value: depth, expected: 'a depth on the radius', example: '0.1 mm' }]);
  }
  return [{ speed: rpm, depth: read.mm, label: 'this cut' }];
}
