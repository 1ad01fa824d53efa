/** Everything about one operation: reasons, the work at that moment, its cut, what follows from a wish, and how to wish otherwise. */
import { infeedWays } from '@sparewright/core/route/tables/infeed-way';
import type { NoticeView, OperationView, RouteView, SetupView } from '@sparewright/output/present/job-view';
import { Suspense } from 'react';
import { textAt } from '../document.ts';
import { choice, number, text, words } from '../forms/fields.ts';
import { Fields } from '../forms/record-table.tsx';
import { later } from '../later.tsx';
import { Blocks, Facts, Lines } from '../parts/blocks.tsx';
import { levelMarks, levelWords } from '../parts/levels.ts';
import type { Form } from '../use-job.ts';
import { changeForm } from './change-form.ts';

/** Pictures and the model of the lathe are read only where they are looked at. */
const OperationSketch = later(async () => ({ default: (await import('./operation-sketch.tsx')).OperationSketch }));
const CutOnLathe = later(async () => ({ default: (await import('../lathe/cut-on-lathe.tsx')).CutOnLathe }));

interface Props {
  readonly job: Form;
  readonly route: RouteView;
  readonly operation: OperationView;
  readonly setup: SetupView;
  readonly before: SetupView['work'];
}

export function OperationDetail({ job, route, operation, setup, before }: Props) {
  const { notices, why, numbers, cautions, tables, wish } = operation;
  return (
    <div className="operation-detail">
      {wish && wish.instead !== '' && (
        <p>
          <strong>Done in another way:</strong> {wish.instead}
        </p>
      )}
      <Notices notices={notices} />
      {cautions.map((c) => (
        <p key={c} className="caution-line">
          <strong>▲ Caution</strong> {c}
        </p>
      ))}
      <div className="work-and-cut">
        <div>
          <Suspense fallback={<p role="status">Drawing …</p>}>
            <OperationSketch operation={operation} setup={setup} before={before} settings={route.settings} />
          </Suspense>
          <p className="secondary">
            The work as this operation leaves it. Blue: the surface that is cut. Shaded: what comes off.
          </p>
        </div>
        {numbers.length > 0 && <Facts rows={numbers} />}
      </div>
      <h4>Why here, and why so</h4>
      {why.length > 0 ? <Lines items={why} numbered={false} /> : <p>Nothing else was to be chosen.</p>}
      <Blocks blocks={tables} />
      <Otherwise job={job} operation={operation} cutters={route.cutters} />
      {operation.cut && (
        <Suspense fallback={<p role="status">Asking the lathe …</p>}>
          <CutOnLathe operation={operation} cut={operation.cut} route={route} />
        </Suspense>
      )}
    </div>
  );
}

function Notices({ notices }: { readonly notices: readonly NoticeView[] }) {
  return notices.map((n) => (
    <div key={n.says} className={`notice ${n.level}`}>
      <p>
        <strong>
          {levelMarks[n.level]} {levelWords[n.level]}
        </strong>{' '}
        {n.says}
      </p>
      {n.helps !== '' && <p>What helps: {n.helps}</p>}
      {n.because.length > 0 && (
        <details className="folded">
          <summary>Why</summary>
          <ul>
            {n.because.map((b) => (
              <li key={b.text}>
                {b.text} {b.source !== '' && <span className="source">{b.source}</span>}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  ));
}

function Otherwise({ job, operation, cutters }: Pick<Props, 'job' | 'operation'> & Pick<RouteView, 'cutters'>) {
  const form = changeForm(job, operation.id);
  const leftOut = textAt(form.document, ['skip']) === 'true';
  return (
    <section className="otherwise" aria-label={`Do it otherwise: ${operation.title}`}>
      <Fields
        form={form}
        at={[]}
        title="Do it otherwise"
        fields={[
          text('instead', 'In another way, which is', { wide: true }),
          number('minutes', 'It takes', { unit: 'min' }),
          choice('cutter', 'Cutter', { choices: cutters }),
          ...(operation.kind === 'thread' ? [choice('infeed', 'Fed in', { choices: words(...infeedWays) })] : []),
          text('why', 'Why', { wide: true }),
        ]}
      />
      <p>
        <button type="button" aria-pressed={leftOut} onClick={() => form.put(['skip'], leftOut ? undefined : true)}>
          {leftOut ? 'Do it after all' : 'Leave it out'}
        </button>
      </p>
    </section>
  );
}
