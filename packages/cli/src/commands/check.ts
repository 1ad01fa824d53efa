/** `check`: whether a job reads, and what is found in it. */
import { assessFile } from '../assess-file.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { findingCount, findingLines, hasStop } from '../show/findings.ts';
import { paragraph } from '../show/text.ts';
import type { Terminal } from '../terminal.ts';

export async function checkCommand(
  file: string,
  options: { readonly workshop?: string },
  terminal: Terminal,
): Promise<ExitCode> {
  const { read, chosen, assessment } = await assessFile(file, options.workshop, terminal);
  const { width, ink } = terminal;
  const lines = [
    ...paragraph(`${file} reads as a job: ${read.job.title}.`, { width }),
    ...paragraph(chosen.told, { width, ink: ink.dim }),
    ...paragraph(`Findings: ${findingCount(assessment.findings)}`, { width, ink: ink.bold }),
    ...findingLines(read.job, assessment, terminal),
  ];
  await terminal.out(`${lines.join('\n')}\n`);
  return hasStop(assessment) ? exitCodes.stop : exitCodes.fine;
}
