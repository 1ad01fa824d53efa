/** The chosen stage as a sheet. */
import type { JobPage, StageName } from '../answer.ts';
import type { OpenJob } from '../use-job.ts';
import { Blocks } from './blocks.tsx';
import { Downloads } from './downloads.tsx';
import { SizeTable } from './size-table.tsx';

interface Props {
  readonly id: string;
  readonly job: OpenJob;
  readonly page: JobPage;
  readonly stage: StageName;
  readonly marks: readonly string[];
  readonly choose: (mark: string) => void;
}

const headings: Readonly<Record<StageName, string>> = {
  evidence: 'Evidence: what was measured, and how far it is to be trusted',
  part: 'Part: what it is meant to be',
  duty: 'Duty: will it do its work',
  route: 'Route: in what order, with which cuts',
  bench: 'Bench: what to dial in',
  inspection: 'Inspection: was it made',
  record: 'Record: so that anyone could make it again',
};

export function StageSheet({ id, job, page, stage, marks, choose }: Props) {
  return (
    <section className="sheet" id="sheet" role="tabpanel" aria-labelledby={`stage-${stage}`} tabIndex={-1}>
      <h2>{headings[stage]}</h2>
      {stage === 'record' && <Downloads id={id} changed={job.changed} />}
      <Blocks blocks={page.sheets[stage]} />
      {stage === 'part' && page.sizes.length > 0 && <SizeTable job={job} page={page} marks={marks} choose={choose} />}
    </section>
  );
}
