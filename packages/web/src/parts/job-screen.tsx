/** One job: its drawing, how its stages stand, the chosen stage as a sheet, and what was found. */

import type { FindingView, JobPage, StageName } from '@sparewright/output/present/job-view';
import { memo, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react';
import { allFindings } from '../evidence/all-findings.ts';
import type { Pointed } from '../evidence/place-on-part.ts';
import { belongsTo } from '../marks.ts';
import { useSending } from '../photos/use-sending.ts';
import { go } from '../place.ts';
import { Ways } from '../shelf/screen-head.tsx';
import { type OpenJob, useJob } from '../use-job.ts';
import { Cautions } from './cautions.tsx';
import { ChosenSizes } from './chosen-sizes.tsx';
import { Drawing } from './drawing.tsx';
import { Findings } from './findings.tsx';
import { StageSheet } from './stage-sheet.tsx';
import { StageStrip } from './stage-strip.tsx';
import { Choosing } from './standing.tsx';
import { TitleBlock } from './title-block.tsx';

interface Props {
  readonly id: string;
  readonly stage: StageName;
}

export function JobScreen({ id, stage }: Props) {
  const job = useJob(id);
  const [marks, setMarks] = useState<readonly string[]>([]);
  const [pointed, setPointed] = useState<Pointed>();
  const [placed, setPlaced] = useState<string>();
  const placing = useMemo(() => ({ photograph: placed, set: setPlaced }), [placed]);
  const sending = useSending(id, job);
  const chosen = useRef<HTMLDivElement>(null);
  const page = job.view;
  // The drawing follows a keystroke first; sheet and findings come right after it.
  const after = useDeferredValue(page) ?? page;
  const at = (next: StageName) => go({ screen: 'job', job: id, stage: next }, 'instead');

  useEffect(() => {
    document.title = page ? `${page.title} · Sparewright` : 'Sparewright';
  }, [page]);

  const onDrawing = (mark: string, fromLeft?: number): void => {
    setMarks([mark]);
    // Where things are measured the place is wanted for the next reading or a photograph, which takes the focus itself.
    setPointed({ mark, fromLeft });
    if (stage === 'evidence' || placed !== undefined) return;
    // The field is there once the choice is on the page.
    requestAnimationFrame(() => chosen.current?.querySelector('input')?.focus());
  };
  const onFinding = (finding: FindingView): void => {
    setMarks(finding.marks);
    at(finding.stage);
  };

  if (!page || !after)
    return (
      <main className="only">
        <h1>Sparewright</h1>
        <p role="status">{job.trouble === '' ? 'Opening the job …' : job.trouble}</p>
        <Ways here="job" />
      </main>
    );
  return (
    <>
      <a className="skip" href="#sheet">
        Skip the drawing
      </a>
      <TitleBlock page={page} job={job} />
      <main>
        <Choosing open={job} />
        <Drawing page={page} marks={marks} choose={onDrawing} />
        <div className="chosen-bar" ref={chosen}>
          <ChosenSizes
            job={job}
            rows={page.sizes.filter((row) => marks.some((m) => row.id === m || row.feature === m))}
            findings={page.findings.filter((f) => f.marks.some((a) => marks.some((m) => belongsTo(a, m))))}
            leavePlacing={placed === undefined ? undefined : () => setPlaced(undefined)}
          />
        </div>
        <StageStrip stages={page.stages} stage={stage} choose={at} />
        <div className="below">
          <SheetAfter
            id={id}
            job={job}
            page={after}
            stage={stage}
            choose={(mark) => setMarks([mark])}
            marks={marks}
            pointed={pointed}
            sending={sending}
            placing={placing}
          />
          <div className="beside">
            <FindingsAfter page={after} marks={marks} choose={onFinding} />
          </div>
        </div>
      </main>
      <footer>
        Sparewright computes from what was entered. It does not replace the rules of your place nor the licensed
        practice of those who may fit and test the part.
      </footer>
    </>
  );
}

/** Not shown anew while only the view has changed that it does not show yet. */
const SheetAfter = memo(
  StageSheet,
  (a, b) =>
    a.id === b.id &&
    a.page === b.page &&
    a.stage === b.stage &&
    a.marks === b.marks &&
    a.pointed === b.pointed &&
    a.sending === b.sending &&
    a.placing === b.placing &&
    isSameForm(a.job, b.job),
);

function isSameForm(a: OpenJob, b: OpenJob): boolean {
  return (
    a.document === b.document &&
    a.refusals === b.refusals &&
    a.revision === b.revision &&
    a.standing === b.standing &&
    a.trouble === b.trouble &&
    a.disagreement === b.disagreement &&
    a.steps === b.steps &&
    a.put === b.put
  );
}

interface FindingsProps {
  readonly page: JobPage;
  readonly marks: readonly string[];
  readonly choose: (finding: FindingView) => void;
}

const FindingsAfter = memo(
  ({ page, marks, choose }: FindingsProps) => (
    <>
      <Findings findings={allFindings(page)} marks={marks} choose={choose} />
      <Cautions page={page} />
    </>
  ),
  (a, b) => a.page === b.page && a.marks === b.marks,
);
