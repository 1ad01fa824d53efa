/** What a command that writes files says when it is done. */
import type { AssessedFile } from '../assess-file.ts';
import type { Terminal } from '../terminal.ts';
import { findingCount, hasStop } from './findings.ts';
import { paragraph } from './text.ts';

export function writtenLines(
  files: readonly string[],
  { read, chosen, assessment }: AssessedFile,
  terminal: Terminal,
): string {
  const { width, ink } = terminal;
  const found = `${findingCount(assessment.findings)}; sparewright check ${read.file} shows them`;
  const lines = [
    ...files.flatMap((file) => paragraph(`Wrote ${file}`, { width })),
    ...paragraph(chosen.told, { width, ink: ink.dim }),
    ...(hasStop(assessment)
      ? paragraph(`STOP: cut no metal before this is settled: ${found}.`, { width, ink: ink.red })
      : paragraph(`Findings: ${found}.`, { width })),
  ];
  return `${lines.join('\n')}\n`;
}
