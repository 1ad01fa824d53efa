/** How long operations took by the log, against what was planned; and to plan by it from now on. */
import type { JobPage } from '@sparewright/output/present/job-view';
import { presentTime } from '@sparewright/output/present/time';
import { useMemo } from 'react';
import type { Form } from '../use-job.ts';
import { isLearned, timesOf, withTimes } from './learn-times.ts';
import type { BenchLog } from './use-bench-log.ts';

interface Props {
  readonly log: BenchLog;
  readonly page: JobPage;
  readonly form: Form;
}

export function TimesTaken({ log, page, form }: Props) {
  // Looked at anew with every entry; whether the last operation is over matters no more finely than that.
  const { timed, notTimed } = useMemo(() => timesOf(log.logged, page, Date.now() / 1000), [log.logged, page]);
  if (timed.length + notTimed.length === 0) return null;
  const titleOf = (id: string) => {
    const operation = page.routing?.operations.find((o) => o.id === id);
    return operation ? `${operation.number} ${operation.title}` : id;
  };
  const learned = isLearned(form.document, timed);
  return (
    <details className="folded times-taken">
      <summary>
        Times by this log: {timed.length === 1 ? 'one operation' : `${timed.length} operations`}
        {learned && timed.length > 0 && ', planned by them'}
      </summary>
      <p className="secondary">
        An operation is taken to begin with the last entry of the one before it in the same setup, and to end with its
        own last entry. Where a pause lies in it, it is left out.
      </p>
      {timed.length > 0 && (
        <table className="plain">
          <thead>
            <tr>
              <th scope="col">Operation</th>
              <th scope="col">Planned</th>
              <th scope="col">Taken</th>
            </tr>
          </thead>
          <tbody>
            {timed.map((t) => (
              <tr key={t.of}>
                <th scope="row">
                  {titleOf(t.of)}
                  {t.with.length > 0 && `, with ${t.with.map(titleOf).join(', ')}`}
                </th>
                <td data-label="Planned">{onOneLine(t.planned)}</td>
                <td data-label="Taken">{onOneLine(t.taken)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {notTimed.length > 0 && (
        <p className="secondary">Left out: {notTimed.map(({ of, why }) => `${titleOf(of)} (${why})`).join('; ')}.</p>
      )}
      {timed.length > 0 && !learned && (
        <p>
          <button type="button" onClick={() => form.edit((document) => withTimes(document, timed))}>
            Plan by these times
          </button>
        </p>
      )}
    </details>
  );
}

function onOneLine(seconds: number): string {
  return presentTime(seconds).replaceAll(' ', '\u00a0');
}
