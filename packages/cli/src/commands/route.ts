/** `route`: from bar to part, in full: stock, how it is held and why so, operations, times, what to lay out. */

import { worstFirst } from '@sparewright/core/finding';
import { withTriedRemedies } from '@sparewright/core/job/tried';
import { assessFile } from '../assess-file.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { withProgress } from '../progress.ts';
import { findingLines } from '../show/findings.ts';
import { routeLines, stockWords, timeWords } from '../show/route.ts';
import { holdingLines, layOutLines, reasonLines } from '../show/route-reasons.ts';
import { paragraph } from '../show/text.ts';
import type { Terminal } from '../terminal.ts';

export interface RouteOptions {
  readonly workshop?: string;
  readonly why?: true;
  readonly remedies?: true;
  readonly json?: true;
}

export async function routeCommand(file: string, options: RouteOptions, terminal: Terminal): Promise<ExitCode> {
  const { read, chosen, assessment: plain } = await assessFile(file, options.workshop, terminal);
  const assessment = options.remedies
    ? await withProgress(terminal, 'Trying what would help', () => withTriedRemedies(plain, chosen.workshop))
    : plain;
  const { route } = assessment;
  const { width, ink } = terminal;
  if (options.json) {
    terminal.err(`${chosen.told}\n`);
    await terminal.out(`${JSON.stringify(route ?? null, undefined, 2)}\n`);
    return route?.findings.some((f) => f.level === 'stop') ? exitCodes.stop : exitCodes.fine;
  }
  if (!route) {
    const why = assessment.part ? chosen.told : 'no part is entered yet.';
    await terminal.out(`${paragraph(`No route: ${why}`, { width }).join('\n')}\n`);
    return exitCodes.fine;
  }
  const heading = (text: string) => ['', ...paragraph(text, { width, ink: ink.bold })];
  const lines = [
    ...paragraph(read.job.title, { width, ink: ink.bold }),
    ...(read.job.invented
      ? paragraph('All figures are invented: do not make a part for use from them.', { width })
      : []),
    ...paragraph(chosen.told, { width, ink: ink.dim }),
    ...(route.stock
      ? [...heading('Stock'), ...paragraph(stockWords(route.stock, read.job), { width, indent: 2 })]
      : []),
    ...heading('How it is held'),
    ...holdingLines(route, terminal, options.why ?? false),
    '',
    ...routeLines(route, read.job, terminal).slice(0, -1),
    ...(options.why ? [...heading('Why so'), ...reasonLines(route, read.job, terminal)] : []),
    ...heading('Time'),
    ...paragraph(timeWords(route), { width, indent: 2 }),
    ...heading('Lay out before starting'),
    ...layOutLines(route, read.job, chosen.workshop, terminal),
    ...(route.findings.length > 0 ? heading('Findings of the route') : []),
    ...findingLines(read.job, assessment, terminal, worstFirst(route.findings)),
    ...heading('Next'),
    `  sparewright tables ${/\s/.test(file) ? `"${file}"` : file}`,
    ...(options.why ? [] : [`  sparewright route ${/\s/.test(file) ? `"${file}"` : file} --why`]),
  ];
  await terminal.out(`${lines.join('\n')}\n`);
  return route.findings.some((f) => f.level === 'stop') ? exitCodes.stop : exitCodes.fine;
}
