/** `steps`: a dome, an ellipse, a cone or a hollow turned by steps, in dial divisions. */
import { InputError } from '@sparewright/core/errors';
import type { Workshop } from '@sparewright/core/lathe/schema';
import { answerTo } from '@sparewright/core/questions/ask';
import { curveStepsQuestion } from '@sparewright/core/route/questions-curves';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { readWorkshopFile } from '../read-file.ts';
import { sourceLines } from '../show/sources.ts';
import { stepLines, type TwoDials } from '../show/steps.ts';
import type { Terminal } from '../terminal.ts';

export interface StepsOptions {
  readonly sphere?: string;
  readonly chord?: string;
  readonly height?: string;
  readonly ellipse?: string;
  readonly cone?: string;
  readonly hollow?: true;
  readonly cuts?: string;
  readonly corner?: string;
  readonly nose?: string;
  readonly dial?: string;
  readonly turn?: string;
  readonly workshop?: string;
  readonly turning?: true;
  readonly equal?: true;
  readonly chamfers?: true;
  readonly json?: true;
}

export async function stepsCommand(options: StepsOptions, terminal: Terminal): Promise<ExitCode> {
  const input = {
    radius: options.sphere,
    chord: options.chord,
    height: options.height,
    ellipse: pair(options.ellipse, '--ellipse', ['along', 'across']),
    cone: pair(options.cone, '--cone', ['startDiameter', 'endDiameter', 'length']),
    hollow: options.hollow ?? false,
    steps: options.cuts === undefined ? undefined : Number(options.cuts),
    corner: options.corner,
    noseRadius: options.nose,
    direction: options.turning ? 'turning' : 'facing',
    spacing: options.equal ? 'equal' : 'least corners',
    chamfers: options.chamfers ?? false,
    dials: dialsOf(options),
  };
  const answered = naming(() => answerTo(curveStepsQuestion, JSON.parse(JSON.stringify(input))));
  if (options.json) {
    await terminal.out(`${JSON.stringify(answered, undefined, 2)}\n`);
    return exitCodes.fine;
  }
  const answer = curveStepsQuestion.output.parse(answered.answer);
  const lines = [...stepLines(answer, options, input.dials, terminal), ...sourceLines(answered.sources, terminal)];
  await terminal.out(`${lines.join('\n')}\n`);
  return exitCodes.fine;
}

/** One division for both slides, or those of a workshop. */
function dialsOf({ dial, turn, workshop }: StepsOptions): TwoDials | undefined {
  if (workshop !== undefined) return workshopDials(readWorkshopFile(workshop).workshop, workshop);
  if (dial === undefined) return undefined;
  // A turn nobody reaches: divisions are counted through.
  const perTurn = turn ?? '1000';
  return { along: { division: dial, perTurn, reads: 'travel' }, across: { division: dial, perTurn, reads: 'radius' } };
}

function workshopDials({ lathe }: Workshop, file: string): TwoDials {
  const { crossSlide, topSlide, saddle } = lathe.dials;
  const along = topSlide ?? saddle;
  if (along) return { along, across: crossSlide };
  const expected = 'the dial of the top slide or the saddle, or --dial DIVISION';
  throw new InputError([{ path: `${file}: lathe.dials`, value: undefined, expected }]);
}

/** `12x20`: lengths with a cross between them. */
function pair(text: string | undefined, option: string, names: readonly string[]): Record<string, string> | undefined {
  if (text === undefined) return undefined;
  const parts = text.split(/\s*[x×]\s*/);
  if (parts.length === names.length) return Object.fromEntries(names.map((n, i) => [n, parts[i] ?? '']));
  const expected = `${names.length} lengths with x between them`;
  throw new InputError([{ path: option, value: text, expected, example: names.map((_, i) => 6 * (i + 1)).join('x') }]);
}

const optionOf: Readonly<Record<string, string>> = {
  radius: '--sphere, --ellipse or --cone',
  noseRadius: '--nose',
  steps: '--cuts',
};

/** Says which option the refused place was. */
function naming<T>(answer: () => T): T {
  try {
    return answer();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(
      error.issues.map((issue) => ({ ...issue, path: optionOf[issue.path] ?? `--${issue.path.split('.')[0]}` })),
    );
  }
}
