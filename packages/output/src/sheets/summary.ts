/** The first sheet: what the job is, how it stands, what to beware of. */
import type { Job } from '@sparewright/core/job/schema';
import { presentStages } from '../present/stages.ts';
import { type Block, type FactRow, heading, type Sheet, section, words } from './blocks.ts';
import type { PacketContext } from './context.ts';
import { findingBlock } from './finding-block.ts';

export function summarySheet(context: PacketContext, unprintable: string): Sheet {
  const { job, assessment } = context;
  const findings = assessment.findings.map((f) => findingBlock(f, context));
  return {
    kind: 'text',
    heading: job.title,
    blocks: [
      ...(job.invented ? [invented] : []),
      { kind: 'facts', rows: facts(context), columns: 2 },
      { kind: 'standing', stages: presentStages(job, assessment).map((s) => ({ what: names[s.stage], is: s.stands })) },
      ...cautionNotices(context),
      ...section(
        'What was found, worst first',
        findings,
        'Nothing was found to say. That is no proof: it holds only for what was entered.',
      ),
      ...missing(assessment.missing),
      ...(unprintable === '' ? [] : [words(unprintable, 'pencil')]),
      ...(job.notes === undefined ? [] : [heading('Notes'), ...paragraphs(job.notes)]),
      heading('In this packet'),
      { kind: 'contents' },
    ],
  };
}

const names = {
  evidence: 'Evidence',
  part: 'Design',
  duty: 'Duty',
  route: 'Route',
  bench: 'Bench',
  inspection: 'Inspection',
} as const;

const invented: Block = {
  kind: 'notice',
  title: 'All figures invented',
  lines: ['This job is a demonstration. Machine, readings and sizes are made up; do not make a part for use from it.'],
};

function facts({ job, assessment, workshop }: PacketContext): FactRow[] {
  const { part } = job;
  const material = assessment.part?.material;
  const known = material === undefined ? '' : ` (${material.commonName}, ${material.condition})`;
  return [
    { what: 'Part', is: [part?.name ?? 'not entered yet', part?.number].filter(Boolean).join(', No. ') },
    { what: 'Machine', is: machine(job.machine) },
    { what: 'Material', is: part?.material === undefined ? 'not chosen yet' : `${part.material}${known}` },
    { what: 'Hazard class', is: job.hazard },
    { what: 'Lathe', is: workshop === undefined ? 'no workshop entered' : `${workshop.lathe.name}, ${workshop.name}` },
    { what: 'Lengths in', is: job.units === 'in' ? 'inches' : 'millimetres' },
    { what: 'Written by', is: job.sheet?.drawnBy ?? '' },
    { what: 'Date', is: job.sheet?.date ?? '' },
  ];
}

function machine(known: Job['machine']): string {
  if (!known) return 'not entered';
  const built = [known.country, known.decade === undefined ? undefined : `${known.decade}s`].filter(Boolean).join(', ');
  return built === '' ? known.name : `${known.name} (${built})`;
}

/** One frame for each thing that calls for caution. */
export function cautionNotices({ assessment }: PacketContext): Block[] {
  const abouts = [...new Set(assessment.cautions.map((c) => c.about))];
  return abouts.map((about) => ({
    kind: 'notice',
    title: `Caution: ${about}`,
    lines: assessment.cautions.filter((c) => c.about === about).map((c) => c.says),
  }));
}

function missing(items: readonly string[]): Block[] {
  return items.length === 0 ? [] : [heading('Not entered yet'), { kind: 'list', items, mark: 'dash' }];
}

function paragraphs(text: string): Block[] {
  return text
    .split(/\n+/)
    .filter((line) => line.trim() !== '')
    .map((line) => words(line));
}
