/** `lathe`: what is known of a lathe, and which test is worth doing next. */
import { InputError } from '@sparewright/core/errors';
import { latheKnown } from '@sparewright/core/lathe/lathe-known';
import { answerTo } from '@sparewright/core/questions/ask';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { withProgress } from '../progress.ts';
import { readWorkshopFile } from '../read-file.ts';
import { latheLines } from '../show/lathe.ts';
import { sourceLines } from '../show/sources.ts';
import { paragraph } from '../show/text.ts';
import type { Terminal } from '../terminal.ts';

export interface LatheOptions {
  readonly state?: string;
  readonly for?: string;
  readonly json?: true;
}

export async function latheCommand(file: string, options: LatheOptions, terminal: Terminal): Promise<ExitCode> {
  const { state, json } = options;
  if (options.for !== undefined) {
    const other = state === undefined ? (json ? '--json' : undefined) : '--state';
    if (other)
      throw new InputError([{ path: other, value: 'a job', expected: 'nothing beside --for but the workshop' }]);
    const { latheForJob } = await import('./lathe-for-job.ts');
    return latheForJob(file, options.for, terminal);
  }
  const { document, workshop } = readWorkshopFile(file);
  const answered = await withProgress(terminal, 'Reckoning with the tests', () =>
    answerTo(latheKnown, { workshop: document, state }),
  );
  if (json) {
    await terminal.out(`${JSON.stringify(answered, undefined, 2)}\n`);
    return exitCodes.fine;
  }
  const { width, ink } = terminal;
  const lines = [
    ...paragraph(workshop.lathe.name, { width, ink: ink.bold }),
    ...latheLines(latheKnown.output.parse(answered.answer), terminal),
    ...sourceLines(answered.sources, terminal),
  ];
  await terminal.out(`${lines.join('\n')}\n`);
  return exitCodes.fine;
}
