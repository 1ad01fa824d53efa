/** `cut`: one cut along a bar, judged. */
import { InputError } from '@sparewright/core/errors';
import { cutOnLathe } from '@sparewright/core/lathe/cut-on-lathe';
import { remediesOnLathe } from '@sparewright/core/lathe/what-would-help';
import { answerTo } from '@sparewright/core/questions/ask';
import { type BarOptions, naming, numeric, readBarCut, withUnit } from '../bar-cut.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { withProgress } from '../progress.ts';
import { cutLines } from '../show/cut.ts';
import { remedyLines } from '../show/remedies.ts';
import { sourceLines } from '../show/sources.ts';
import type { Terminal } from '../terminal.ts';

export interface CutOptions extends BarOptions {
  readonly depth: string;
  readonly speed: string;
  readonly limit?: string;
  readonly remedies?: true;
  readonly json?: true;
}

export async function cutCommand(options: CutOptions, terminal: Terminal): Promise<ExitCode> {
  const { units, input, inWords } = readBarCut(options);
  const asked = {
    ...input,
    depth: withUnit(options.depth, units),
    speed: numeric(options.speed),
    sizeLimit: options.limit === undefined ? undefined : withUnit(options.limit, units),
  };
  if (options.remedies && options.json) {
    const expected = 'one of the two; sparewright ask what-would-help answers in JSON';
    throw new InputError([{ path: '--json', value: '--remedies too', expected }]);
  }
  const answered = await withProgress(terminal, 'Judging the cut', () => naming(() => answerTo(cutOnLathe, asked)));
  if (options.json) {
    await terminal.out(`${JSON.stringify(answered, undefined, 2)}\n`);
    return exitCodes.fine;
  }
  const answer = cutOnLathe.output.parse(answered.answer);
  const helped = options.remedies
    ? await withProgress(terminal, 'Trying every remedy', () => naming(() => answerTo(remediesOnLathe, asked)))
    : undefined;
  const lines = [
    ...cutLines(answer, inWords, units, terminal),
    ...(helped ? remedyLines(remediesOnLathe.output.parse(helped.answer), units, terminal) : []),
    ...sourceLines(answered.sources, terminal),
  ];
  await terminal.out(`${lines.join('\n')}\n`);
  return exitCodes.fine;
}
