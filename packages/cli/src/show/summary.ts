/** A whole job on one screen or two: what it is, how it stands, what was found, how it is made, what to beware of. */
import type { Assessment } from '@sparewright/core/job/assessment';
import type { Job } from '@sparewright/core/job/schema';
import { presentStages } from '@sparewright/output/present/stages';
import type { ReadJob, ReadWorkshop } from '../read-file.ts';
import type { Terminal } from '../terminal.ts';
import { findingCount, findingLines } from './findings.ts';
import { routeLines, stockWords, timeWords } from './route.ts';
import { clean, paragraph } from './text.ts';

const stageNames = {
  evidence: 'Evidence',
  part: 'Part',
  duty: 'Duty',
  route: 'Route',
  bench: 'Bench',
  inspection: 'Inspection',
} as const;

export function summaryLines(
  read: ReadJob,
  chosen: ReadWorkshop,
  assessment: Assessment,
  terminal: Terminal,
): string[] {
  const { job } = read;
  const { width, ink } = terminal;
  const { route } = assessment;
  const heading = (text: string) => ['', ink.bold(text)];
  return [
    ...headLines(job, chosen, terminal),
    ...heading('How it stands'),
    ...presentStages(job, assessment).flatMap(({ stage, stands }) =>
      paragraph(stands, { width, indent: 2, mark: stageNames[stage].padEnd(12) }),
    ),
    ...heading(`Findings, worst first: ${findingCount(assessment.findings)}`),
    ...findingLines(job, assessment, terminal),
    ...(route?.stock ? [...heading('Stock'), ...paragraph(stockWords(route.stock, job), { width, indent: 2 })] : []),
    ...(route && route.setups.length > 0 ? ['', ...routeLines(route, job, terminal).slice(0, -1)] : []),
    ...(route ? [...heading('Time'), ...paragraph(timeWords(route), { width, indent: 2 })] : []),
    ...(assessment.cautions.length > 0 ? heading('Cautions') : []),
    ...assessment.cautions.flatMap((c) =>
      paragraph(`${c.about}: ${c.says}`, { width, indent: 2, mark: '! ', ink: ink.yellow }),
    ),
    ...(assessment.missing.length > 0 ? heading('Not entered yet') : []),
    ...assessment.missing.flatMap((text) => paragraph(text, { width, indent: 2, mark: '- ' })),
    ...heading('Next'),
    ...nextLines(read.file, assessment),
  ];
}

function headLines(job: Job, chosen: ReadWorkshop, { width, ink }: Terminal): string[] {
  const { machine } = job;
  const built = [machine?.country, machine?.decade === undefined ? undefined : `${machine.decade}s`].filter(Boolean);
  const about = machine === undefined ? '' : `${machine.name}${built.length > 0 ? ` (${built.join(', ')})` : ''}. `;
  const lathe = chosen.workshop === undefined ? '' : ` Lathe: ${chosen.workshop.lathe.name}.`;
  return [
    ...paragraph(job.title, { width, ink: ink.bold }),
    ...paragraph(`${about}Lengths in ${job.units === 'in' ? 'inches' : 'millimetres'}.`, { width }),
    ...(job.invented ? paragraph('All figures are invented: do not make a part for use from them.', { width }) : []),
    ...paragraph(
      job.hazard === 'ordinary' ? 'Hazard class ordinary.' : `Hazard class ${job.hazard}: read the cautions below.`,
      {
        width,
        ink: job.hazard === 'ordinary' ? ink.reset : ink.yellow,
      },
    ),
    ...paragraph(`${chosen.told}${lathe}`, { width, ink: ink.dim }),
  ];
}

function nextLines(file: string, { route, part }: Assessment): string[] {
  const path = /\s/.test(file) ? `"${clean(file)}"` : file;
  const tables = route && route.tables.length > 0 ? [`  sparewright tables ${path}`] : [];
  const drawing = part ? [`  sparewright drawing ${path} -o drawing.svg`] : [];
  return [...tables, ...drawing, `  sparewright packet ${path} -o packet.pdf`];
}
