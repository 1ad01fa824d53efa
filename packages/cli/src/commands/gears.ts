/** `gears`: the change gears of this lathe for a pitch. */
import { InputError } from '@sparewright/core/errors';
import { answerTo } from '@sparewright/core/questions/ask';
import { gearQuestions } from '@sparewright/core/route/questions-gears';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { readWorkshopFile } from '../read-file.ts';
import { gearLines, gearsStop } from '../show/gears.ts';
import { sourceLines } from '../show/sources.ts';
import { paragraph } from '../show/text.ts';
import type { Terminal } from '../terminal.ts';

export interface GearsOptions {
  readonly workshop: string;
  readonly pitch?: string;
  readonly thread?: string;
  readonly engaged?: string;
  readonly json?: true;
}

const [changeGears] = gearQuestions;

export async function gearsCommand(options: GearsOptions, terminal: Terminal): Promise<ExitCode> {
  const { workshop } = readWorkshopFile(options.workshop);
  const { leadscrew, changeGears: gears } = workshop.lathe;
  if (!leadscrew || !gears || gears.length < 2) {
    const expected = 'the leadscrew and two change gears or more';
    throw new InputError([{ path: `${options.workshop}: lathe`, value: undefined, expected }]);
  }
  const input = {
    pitch: options.pitch,
    designation: options.thread,
    leadscrew,
    gears,
    engagedLength: options.engaged,
  };
  const answered = naming(() => answerTo(changeGears, JSON.parse(JSON.stringify(input))));
  const answer = changeGears.output.parse(answered.answer);
  const code = gearsStop(answer) ? exitCodes.stop : exitCodes.fine;
  if (options.json) {
    await terminal.out(`${JSON.stringify(answered, undefined, 2)}\n`);
    return code;
  }
  const { width, ink } = terminal;
  const asked = options.thread ?? `a pitch of ${options.pitch}`;
  const lines = [
    ...paragraph(`Change gears of the ${workshop.lathe.name} for ${asked}`, { width, ink: ink.bold }),
    ...gearLines(answer, terminal),
    ...sourceLines(answered.sources, terminal),
  ];
  await terminal.out(`${lines.join('\n')}\n`);
  return code;
}

const optionOf: Readonly<Record<string, string>> = { designation: '--thread', engagedLength: '--engaged' };

/** Says which option the refused place was. */
function naming<T>(answer: () => T): T {
  try {
    return answer();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.issues.map((issue) => ({ ...issue, path: optionOf[issue.path] ?? `--${issue.path}` })));
  }
}
