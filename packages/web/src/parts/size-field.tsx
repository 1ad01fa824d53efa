/** A size to type anew, with what was understood or why it is not taken. */
import type { SizeRow } from '@sparewright/output/present/job-view';
import { pathText, textAt } from '../document.ts';
import { typedInto } from '../evidence/decide.ts';
import type { OpenJob } from '../use-job.ts';

interface Props {
  readonly job: OpenJob;
  readonly row: SizeRow;
  /** Ids on one page differ by where the field stands. */
  readonly where: string;
  /** In a table the heading names the field; elsewhere its title stands beside it. */
  readonly titled: boolean;
  readonly onFocus?: (() => void) | undefined;
}

export function SizeField({ job, row, where, titled, onFocus }: Props) {
  const id = `${where}-${row.id}`;
  const refusal = job.refusals[pathText(row.path)];
  const text = textAt(job.document, row.path);
  return (
    <div className="size-field">
      {titled && <label htmlFor={id}>{row.title}</label>}
      <input
        id={id}
        value={text}
        autoComplete="off"
        spellCheck={false}
        aria-label={titled ? undefined : `${row.title}, as typed`}
        aria-invalid={refusal !== undefined}
        aria-describedby={`${id}-says`}
        onFocus={onFocus}
        onChange={(e) => {
          const typed = e.target.value;
          job.edit((document) => typedInto(document, row.path, typed));
        }}
      />
      <span id={`${id}-says`} className={refusal === undefined ? 'understood' : 'refusal'} aria-live="polite">
        {refusal ?? (titled ? `${row.least} to ${row.most} (${row.basis})` : '')}
      </span>
    </div>
  );
}
