/** What is chosen on the drawing: its sizes to type anew, and what was found about it. */
import type { FindingView, SizeRow } from '@sparewright/output/present/job-view';
import { textAt } from '../document.ts';
import { HelpHere } from '../help/in-place.tsx';
import { measuringOf } from '../help/where.ts';
import type { OpenJob } from '../use-job.ts';
import { levelMarks, levelWords } from './levels.ts';
import { SizeField } from './size-field.tsx';

interface Props {
  readonly job: OpenJob;
  readonly rows: readonly SizeRow[];
  readonly findings: readonly FindingView[];
  /** A photograph waits for its place; how to leave that. */
  readonly leavePlacing: (() => void) | undefined;
}

export function ChosenSizes({ job, rows, findings, leavePlacing }: Props) {
  const typed = rows.filter((row) => row.entered !== null);
  return (
    <section aria-label="Chosen on the drawing" className="chosen-sizes">
      {leavePlacing && (
        <p className="understood" role="status">
          Point at the part where the photograph was taken.{' '}
          <button type="button" onClick={leavePlacing}>
            Leave it
          </button>
        </p>
      )}
      {!leavePlacing && rows.length === 0 && findings.length === 0 && (
        <p className="understood">Touch a size on the drawing to change it and see everything follow.</p>
      )}
      {typed.map((row) => (
        <SizeField key={row.id} job={job} row={row} where="chosen" titled />
      ))}
      {rows.length > 0 && typed.length === 0 && (
        <p className="understood">
          {rows.map((r) => `${r.title}: ${r.nominal}`).join('; ')}. It is not typed as one value here.
        </p>
      )}
      {findings.map((f) => (
        <p key={`${f.where}${f.says}`} className={`at-hand ${f.level}`}>
          <strong>
            {levelMarks[f.level]} {levelWords[f.level]}
          </strong>{' '}
          {f.says}
        </p>
      ))}
      <HelpHere key={rows[0]?.id} measure={measuringOfAll(job, rows)} />
      {job.trouble !== '' && (
        <p className="refusal" role="alert">
          {job.trouble}
        </p>
      )}
    </section>
  );
}

function measuringOfAll({ document }: OpenJob, rows: readonly SizeRow[]) {
  return [...new Set(rows.map((row) => measuringOf(row, textAt(document, [...row.path.slice(0, -1), 'kind']))))];
}
