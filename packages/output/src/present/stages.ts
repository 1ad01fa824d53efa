/** How each stage of a job stands, in a word or a number. */
import type { Stage } from '@sparewright/core/finding';
import type { Assessment } from '@sparewright/core/job/assessment';
import type { Job } from '@sparewright/core/job/schema';
import { presentTime } from './time.ts';

export interface StageStanding {
  readonly stage: Exclude<Stage, 'record'>;
  readonly stands: string;
}

export function presentStages(job: Job, assessment: Assessment): StageStanding[] {
  const { part, duty, route, bench, inspection } = assessment;
  return [
    { stage: 'evidence', stands: evidence(job, assessment) },
    { stage: 'part', stands: part ? design(part) : 'no part entered' },
    { stage: 'duty', stands: dutyWords(duty) },
    { stage: 'route', stands: route ? planned(route) : 'not planned' },
    {
      stage: 'bench',
      stands: bench.stopPoints.length === 0 ? 'no stop points' : count(bench.stopPoints.length, 'stop point'),
    },
    {
      stage: 'inspection',
      stands:
        inspection.rows.length === 0
          ? 'nothing to measure yet'
          : `${inspection.rows.filter((r) => r.decision !== 'not measured').length} of ${inspection.rows.length} measured`,
    },
  ];
}

function evidence(job: Job, { evidence: { gathered }, part }: Assessment): string {
  const readings = job.evidence?.readings?.length ?? 0;
  if (readings === 0) return 'no readings';
  const settled = gathered.filter((g) => g.estimate !== undefined).length;
  const open = job.part?.leftOpen?.length ?? 0;
  const told = `${settled} of ${part?.dimensions.length ?? gathered.length} sizes settled by ${count(readings, 'reading')}`;
  return open === 0 ? told : `${told}, ${open} left open`;
}

function design(part: NonNullable<Assessment['part']>): string {
  return `${count(part.dimensions.length, 'size')}, ${part.complete ? 'complete' : 'some still assumed'}`;
}

/** A time for work that cannot be done would say nothing. */
function planned({ operations, setups, time, findings }: NonNullable<Assessment['route']>): string {
  const stops = findings.filter((f) => f.level === 'stop').length;
  const told = `${count(operations.length, 'operation')} in ${count(setups.length, 'setup')}`;
  return `${told}, ${stops === 0 ? presentTime(time.likely) : `${count(stops, 'stop')} in the way`}`;
}

function dutyWords({ fits, checks }: Assessment['duty']): string {
  const judged = checks.flatMap((c) => c.figures).filter((f) => f.verdict !== 'not judged');
  if (judged.length === 0) return fits.length === 0 ? 'nothing to check' : count(fits.length, 'fit');
  const bad = judged.filter((f) => f.verdict === 'bad').length;
  const marginal = judged.filter((f) => f.verdict === 'marginal').length;
  if (bad + marginal === 0) return `${count(judged.length, 'figure')} within limits`;
  return [bad > 0 && `${bad} out of limits`, marginal > 0 && `${marginal} marginal`].filter(Boolean).join(', ');
}

export function count(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}
