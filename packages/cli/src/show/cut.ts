/** A judged cut for a terminal: the verdict first, then the numbers behind it. */
import { turningCautions } from '@sparewright/core/job/cautions';
import type { cutOnLathe } from '@sparewright/core/lathe/cut-on-lathe';
import type { LengthUnit } from '@sparewright/core/units/length';
import { presentSize } from '@sparewright/output/present/length';
import { presentNumber, presentShare } from '@sparewright/output/present/number';
import type { Terminal } from '../terminal.ts';
import { plainFinding } from './findings.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

type Answer = ReturnType<typeof cutOnLathe.answer>;

export interface AskedInWords {
  readonly work: string;
  readonly held: string;
  readonly cutter: string;
}

/** Places shown along the work. */
const places = 6;
/** A margin of this or more only says that nothing sings. */
const muchMargin = 20;

export function cutLines(answer: Answer, asked: AskedInWords, units: LengthUnit, terminal: Terminal): string[] {
  const { width, ink } = terminal;
  const settings = { units, decimalSign: 'point' } as const;
  const size = (mm: number) => presentSize(mm, settings, units === 'in' ? 5 : 4);
  const number = (value: number) => presentNumber(Number(value.toPrecision(3)), 'point');
  const heading = (text: string) => ['', ...paragraph(text, { width, ink: ink.bold })];
  const line = (text: string) => paragraph(text, { width, indent: 2, mark: '· ' });
  const { margin, taper } = answer;
  const breadth = (value: number) => (value >= muchMargin ? `${muchMargin} or more` : number(value));
  const verdictInk = { goes: ink.green, 'goes if': ink.yellow, 'not on this lathe': ink.red }[answer.verdict];
  return [
    ...paragraph(answer.says, { width, ink: (text) => ink.bold(verdictInk(text)) }),
    ...paragraph(`${asked.work}; ${asked.held}; ${asked.cutter}.`, { width, ink: ink.dim }),
    ...heading('Force and power'),
    ...line(`along the cut ${number(answer.cutting)} N`),
    ...line(`square to the surface ${number(answer.square)} N, along the feed ${number(answer.feedForce)} N`),
    ...line(
      `the motor is asked for ${number(answer.power)} W, ${presentShare(answer.powerShare, 'point')} of what it has at this speed`,
    ),
    ...heading('Left on after one pass, as work and cutter give way'),
    ...textTable(
      [
        { title: 'from the jaws', align: 'right' },
        { title: 'on the diameter', align: 'right' },
      ],
      some(answer.stations).map(({ at, error }) => [presentSize(at, settings, units === 'in' ? 2 : 0), size(error)]),
      { width, indent: 2, ink: ink.dim },
    ),
    ...line(
      `greatest less least ${size(taper.middle)}; nine in ten such lathes ${size(taper.low)} to ${size(taper.high)}`,
    ),
    ...heading('Singing'),
    ...line(`chance that it sings ${presentShare(answer.chatter, 'point')}, as far as the lathe is known`),
    ...line(
      `it would sing at ${breadth(margin.middle)} times this breadth of chip; nine in ten ${breadth(margin.low)} to ${breadth(margin.high)}`,
    ),
    ...heading('What was weighed'),
    ...answer.weighed.flatMap((w) => line(weighedWords(w, settings))),
    ...(answer.weighed.some((w) => w.criterion === 'size')
      ? []
      : line('error of size: not weighed, for no --limit was given; the verdict leaves it out')),
    ...(answer.verdict === 'goes' ? [] : line(lessDeep(answer.safeDepth, size))),
    ...(answer.findings.length === 0 ? [] : heading('Findings')),
    ...answer.findings.flatMap((f) => plainFinding(f, terminal)),
    ...heading('Cautions'),
    ...turningCautions.flatMap((says) => paragraph(says, { width, indent: 2, mark: '! ', ink: ink.yellow })),
  ];
}

function lessDeep(safe: number | null, size: (mm: number) => string): string {
  return safe === null
    ? 'at this feed and speed no depth is good in everything'
    : `all is good at this feed and speed to a depth of ${size(safe)}`;
}

function weighedWords(
  { what, value, unit, good, bad, state, criterion }: Answer['weighed'][number],
  settings: { readonly units: LengthUnit; readonly decimalSign: 'point' },
): string {
  if (criterion === 'rubbing') return `chip against the edge: it ${chipWords[value] ?? 'rubs'}: ${state}`;
  const shown = (n: number) =>
    unit === 'mm' ? presentSize(n, settings, settings.units === 'in' ? 4 : 3) : presentShare(n, 'point');
  return `${what}: ${shown(value)}; good to ${shown(good)}, too much beyond ${shown(bad)}: ${state}`;
}

const chipWords = ['is thick enough to cut', 'may rub', 'rubs'];

/** Evenly spread, with both ends. */
function some<T>(stations: readonly T[]): T[] {
  const last = stations.length - 1;
  const picked = Array.from({ length: places }, (_, i) => Math.round((last * i) / (places - 1)));
  return [...new Set(picked)].flatMap((i) => stations.slice(i, i + 1));
}
