/** `recover`: what the worn part was meant to be. */
import { InputError } from '@sparewright/core/errors';
import { recoverJob } from '@sparewright/core/job/recover-job';
import { assessFile } from '../assess-file.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { findingCount, findingLines } from '../show/findings.ts';
import { recoveredLines } from '../show/recovered.ts';
import { paragraph } from '../show/text.ts';
import type { Terminal } from '../terminal.ts';
import type { AssessOptions } from './assess.ts';

export async function recoverCommand(file: string, options: AssessOptions, terminal: Terminal): Promise<ExitCode> {
  const { read, chosen, assessment } = await assessFile(file, options.workshop, terminal);
  const { job } = read;
  const result = recoverJob(job, chosen.workshop, assessment.part);
  if (!result) {
    throw new InputError([{ path: `${file}: evidence.readings`, value: undefined, expected: 'readings to go by' }]);
  }
  if (options.json) {
    await terminal.out(`${JSON.stringify(result, undefined, 2)}\n`);
    return exitCodes.fine;
  }
  const { width, ink } = terminal;
  const lines = [
    ...paragraph(job.title, { width, ink: ink.bold }),
    ...paragraph(chosen.told, { width, ink: ink.dim }),
    ...recoveredLines(result, job, terminal),
    '',
    ...paragraph(`Findings: ${findingCount(result.findings)}`, { width, ink: ink.bold }),
    ...findingLines(job, assessment, terminal, result.findings),
  ];
  await terminal.out(`${lines.join('\n')}\n`);
  return exitCodes.fine;
}
