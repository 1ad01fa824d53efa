/** The chosen stage as a sheet. */
import type { JobPage, StageName } from '@sparewright/output/present/job-view';
import { memo, useRef } from 'react';
import { BenchLog } from '../bench/bench-log.tsx';
import { NewReading } from '../evidence/new-reading.tsx';
import type { Pointed } from '../evidence/place-on-part.ts';
import { Recovered } from '../evidence/recovered.tsx';
import { DutyForms } from '../forms/duty-forms.tsx';
import { EvidenceForms, InspectionForms } from '../forms/evidence-forms.tsx';
import { JobForm } from '../forms/job-form.tsx';
import { PartForms } from '../forms/part-forms.tsx';
import { HelpHere } from '../help/in-place.tsx';
import { helpOfStage, meaningsIn } from '../help/where.ts';
import { Photographs, type Placing } from '../photos/photographs.tsx';
import type { Sending } from '../photos/use-sending.ts';
import { RouteStage } from '../route/route-stage.tsx';
import { useGauges } from '../use-gauges.ts';
import type { OpenJob } from '../use-job.ts';
import { Blocks } from './blocks.tsx';
import { Downloads } from './downloads.tsx';
import { History } from './history.tsx';
import { SizeTable } from './size-table.tsx';

interface Props {
  readonly id: string;
  readonly job: OpenJob;
  readonly page: JobPage;
  readonly stage: StageName;
  readonly marks: readonly string[];
  readonly choose: (mark: string) => void;
  readonly pointed: Pointed | undefined;
  readonly sending: Sending;
  readonly placing: Placing;
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

/** Where one comes to type, what was typed stands first and this over what follows from it; elsewhere one comes to read. */
const afterTyping: Partial<Readonly<Record<StageName, string>>> = {
  evidence: 'Reading by reading',
  inspection: 'Size by size',
};

/** Where there is something to be photographed. */
const photographed: readonly StageName[] = ['evidence', 'inspection'];

export function StageSheet({ id, job, page, stage, marks, choose, pointed, sending, placing }: Props) {
  const forReading = useForReading(pointed, placing);
  return (
    <section className="sheet" id="sheet" role="tabpanel" aria-labelledby={`stage-${stage}`} tabIndex={-1}>
      <h2>{headings[stage]}</h2>
      <HelpHere key={stage} {...helpAtHead(stage, page)} />
      {stage === 'record' && <Downloads id={id} job={job} />}
      {stage === 'bench' && <BenchLog key={id} job={id} page={page} form={job} />}
      {afterTyping[stage] !== undefined && (
        <>
          <StageForms job={job} page={page} stage={stage} pointed={forReading} marks={marks} />
          <h3 className="large">{afterTyping[stage]}</h3>
        </>
      )}
      {stage === 'route' ? <RouteStage job={job} page={page} marks={marks} /> : <Blocks blocks={page.sheets[stage]} />}
      {stage === 'part' && page.sizes.length > 0 && <SizeTable job={job} page={page} marks={marks} choose={choose} />}
      {afterTyping[stage] === undefined && (
        <StageForms job={job} page={page} stage={stage} pointed={forReading} marks={marks} />
      )}
      {photographed.includes(stage) && (
        <Photographs job={job} page={page} sending={sending} placing={placing} pointed={pointed} choose={choose} />
      )}
    </section>
  );
}

/** What was pointed at for a photograph is no place of the next reading. */
function useForReading(pointed: Pointed | undefined, { photograph }: Placing): Pointed | undefined {
  const last = useRef(photograph === undefined ? pointed : undefined);
  const seen = useRef(pointed);
  if (seen.current !== pointed && photograph === undefined) last.current = pointed;
  seen.current = pointed;
  return last.current;
}

/** What a table of the sheet explains below itself is not said over it too. */
function helpAtHead(stage: StageName, page: JobPage) {
  const { measure, meaning } = helpOfStage[stage];
  const below = meaningsIn(page.sheets[stage]).flat();
  return { measure, meaning: meaning.filter((id) => !below.includes(id)) };
}

/** Its many fields are not shown anew with each thing that was worked out, only with what is typed. */
const KeptPartForms = memo(
  PartForms,
  ({ form: a }, { form: b }) =>
    a.document === b.document && a.refusals === b.refusals && a.put === b.put && a.edit === b.edit,
);

/** What can be typed at a stage. */
function StageForms({ job, page, stage, pointed, marks }: Pick<Props, 'job' | 'page' | 'stage' | 'pointed' | 'marks'>) {
  const gauges = useGauges();
  switch (stage) {
    case 'evidence':
      return (
        <>
          <h3 className="large">Enter what you measured</h3>
          <NewReading form={job} page={page} gauges={gauges} pointed={pointed} />
          {page.recovered && <Recovered job={job} recovered={page.recovered} marks={marks} />}
          <h3 className="large">All that was measured</h3>
          <EvidenceForms form={job} sizes={page.sizes} gauges={gauges} />
        </>
      );
    case 'part':
      return <KeptPartForms form={job} />;
    case 'duty':
      return <DutyForms form={job} sizes={page.sizes} />;
    case 'inspection':
      return <InspectionForms form={job} sizes={page.sizes} gauges={gauges} />;
    case 'record':
      return (
        <>
          <JobForm form={job} />
          <History open={job} />
        </>
      );
    default:
      return null;
  }
}
