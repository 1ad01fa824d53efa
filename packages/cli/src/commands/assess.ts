/** `assess`: the whole job, stage by stage. */
import { assessmentAnswer } from '@sparewright/core/questions/job-answer';
import { assessFile } from '../assess-file.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { hasStop } from '../show/findings.ts';
import { summaryLines } from '../show/summary.ts';
import type { Terminal } from '../terminal.ts';

export interface AssessOptions {
  readonly workshop?: string;
  readonly json?: true;
}

export async function assessCommand(file: string, options: AssessOptions, terminal: Terminal): Promise<ExitCode> {
  const { read, chosen, assessment } = await assessFile(file, options.workshop, terminal);
  if (options.json) {
    terminal.err(`${chosen.told}\n`);
    await terminal.out(`${JSON.stringify(assessmentAnswer(read.job, assessment), undefined, 2)}\n`);
  } else await terminal.out(`${summaryLines(read, chosen, assessment, terminal).join('\n')}\n`);
  return hasStop(assessment) ? exitCodes.stop : exitCodes.fine;
}
