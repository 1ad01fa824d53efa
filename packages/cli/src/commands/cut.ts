/** `cut`: one cut along a bar, judged. */
import { InputError } from '@sparewright/core/errors';
import { cutOnLathe } from '@sparewright/core/lathe/cut-on-lathe';
import type { Workshop } from '@sparewright/core/lathe/schema';
import { answerTo } from '@sparewright/core/questions/ask';
import { readLength } from '@sparewright/core/units/length';
import { mmPerInch } from '@sparewright/core/units/quantities';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { withProgress } from '../progress.ts';
import { readWorkshopFile } from '../read-file.ts';
import { cutLines } from '../show/cut.ts';
import { sourceLines } from '../show/sources.ts';
import type { Terminal } from '../terminal.ts';

export interface CutOptions {
  readonly workshop: string;
  readonly material: string;
  readonly diameter: string;
  readonly out: string;
  readonly depth: string;
  readonly feed: string;
  readonly speed: string;
  readonly tailstock?: true;
  readonly grip?: string;
  readonly cutter?: string;
  readonly limit?: string;
  readonly state?: string;
  readonly json?: true;
}

export async function cutCommand(options: CutOptions, terminal: Terminal): Promise<ExitCode> {
  const { document, workshop } = readWorkshopFile(options.workshop);
  const { units } = workshop;
  const diameter = withUnit(options.diameter, units);
  const cutter = turningCutter(workshop, options);
  const grip = options.grip === undefined ? jawLength(workshop, diameter) : withUnit(options.grip, units);
  const input = {
    workshop: document,
    state: options.state,
    cutter,
    material: options.material,
    sections: [{ length: withUnit(options.out, units), outerDiameter: diameter }],
    grip,
    tailstock: options.tailstock ?? false,
    depth: withUnit(options.depth, units),
    feed: feedOf(options.feed, units),
    speed: numeric(options.speed),
    sizeLimit: options.limit === undefined ? undefined : withUnit(options.limit, units),
  };
  const answered = await withProgress(terminal, 'Judging the cut', () => naming(() => answerTo(cutOnLathe, input)));
  if (options.json) {
    await terminal.out(`${JSON.stringify(answered, undefined, 2)}\n`);
    return exitCodes.fine;
  }
  const cutterName = workshop.cutters.find((c) => c.id === cutter)?.name ?? cutter;
  const asked = {
    work: `${options.material}, Ø${diameter}, ${withUnit(options.out, units)} out of the jaws`,
    held: `gripped over ${grip}${options.tailstock ? ', end on the tailstock centre' : ', end free'}`,
    cutter: cutterName,
  };
  const answer = cutOnLathe.output.parse(answered.answer);
  const lines = [...cutLines(answer, asked, units, terminal), ...sourceLines(answered.sources, terminal)];
  await terminal.out(`${lines.join('\n')}\n`);
  return exitCodes.fine;
}

/** A bare number speaks the unit of the workshop. */
function withUnit(text: string, units: Workshop['units']): string {
  return /^[-\d.,/\s]+$/.test(text) ? `${text.trim()} ${units}` : text;
}

/** What is no number is left as it is, to be refused with the others. */
function numeric(text: string): number | string {
  const value = Number(text.replace(',', '.'));
  return text.trim() === '' || Number.isNaN(value) ? text : value;
}

/** [mm/rev] */
function feedOf(text: string, units: Workshop['units']): number | string {
  const value = numeric(text);
  return units === 'in' && typeof value === 'number' ? value * mmPerInch : value;
}

function turningCutter({ cutters }: Workshop, { cutter, workshop }: CutOptions): string {
  const found = cutter === undefined ? cutters.find((c) => c.kind === 'turning') : undefined;
  const named = cutters.find((c) => c.id === cutter);
  if (named && named.kind !== 'turning') {
    const expected = 'a turning cutter; sparewright ask cut-on-lathe judges boring, grooving and parting';
    throw new InputError([{ path: '--cutter', value: `${cutter}, for ${named.kind}`, expected }]);
  }
  const id = cutter ?? found?.id;
  if (id !== undefined) return id;
  throw new InputError([
    { path: `${workshop}: cutters`, value: undefined, expected: 'a turning cutter, or --cutter ID' },
  ]);
}

/** Of the first chuck that takes the bar; a diameter that is none is left to be refused with the others. */
function jawLength({ lathe, units }: Workshop, diameter: string): string {
  const mm = readLength(diameter, units)?.mm ?? 0;
  const chuck = lathe.chucks.find((c) => !(mm > 0) || (c.from <= mm && mm <= c.to));
  if (chuck) return `${chuck.jawLength} mm`;
  throw new InputError([
    { path: '--diameter', value: diameter, expected: 'a bar that a chuck of the workshop takes, or --grip LENGTH' },
  ]);
}

const optionOf: Readonly<Record<string, string>> = {
  'sections[0].length': '--out',
  'sections[0].outerDiameter': '--diameter',
  sections: '--out and --diameter',
  to: '--out',
  sizeLimit: '--limit',
};

/** Says which option the refused place was. */
function naming<T>(answer: () => T): T {
  try {
    return answer();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.issues.map((issue) => ({ ...issue, path: optionOf[issue.path] ?? `--${issue.path}` })));
  }
}
