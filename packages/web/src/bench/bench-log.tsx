/** The log at the machine: what was set, what came out, how it sounded; written with one hand, also without a network. */
import type { JobPage } from '@sparewright/output/present/job-view';
import { useMemo, useState } from 'react';
import type { Form } from '../use-job.ts';
import { AtTheMachine } from './at-the-machine.tsx';
import { operationsOf } from './dials.ts';
import { LogList } from './log-list.tsx';
import { TimesTaken } from './times-taken.tsx';
import { useBenchLog } from './use-bench-log.ts';

interface Props {
  readonly job: string;
  readonly page: JobPage;
  readonly form: Form;
}

/** Kept on this device: a tablet at the lathe comes back to where it was. */
const openKey = 'sparewright.bench-open';

export function BenchLog({ job, page, form }: Props) {
  const log = useBenchLog(job);
  const operations = useMemo(() => operationsOf(page), [page]);
  const [open, setOpen] = useState(() => localStorage.getItem(openKey) === 'yes');
  const turn = (): void => {
    localStorage.setItem(openKey, open ? 'no' : 'yes');
    setOpen(!open);
  };
  return (
    <section className="bench-log" aria-labelledby="bench-log-heading">
      <h3 id="bench-log-heading">The log of the bench</h3>
      <p className="secondary">
        What is written here stays as it was written, and shows on every device that has the job open.
      </p>
      <p>
        <button type="button" className="broad" aria-expanded={open} onClick={turn}>
          {open ? 'Leave the machine' : 'Write at the machine'}
        </button>
      </p>
      {log.trouble !== '' && (
        <p className="refusal" role="alert">
          {log.trouble}
        </p>
      )}
      {open && <AtTheMachine job={job} page={page} operations={operations} log={log} />}
      <TimesTaken log={log} page={page} form={form} />
      <LogList log={log} page={page} job={job} />
    </section>
  );
}
