/** The route: what is wished, how long it takes, and the operations in order, to be moved, kept, left out or done otherwise. */
import type { JobPage, OperationView, RouteView, SetupView } from '@sparewright/output/present/job-view';
import { Suspense, useState } from 'react';
import { listAt, type Path } from '../document.ts';
import { later } from '../later.tsx';
import { belongsTo } from '../marks.ts';
import { Blocks, Facts, Lines } from '../parts/blocks.tsx';
import type { OpenJob } from '../use-job.ts';
import { OperationRow } from './operation-row.tsx';
import { orderWith } from './order.ts';
import { RouteWishes } from './route-wishes.tsx';
import { useDrag } from './use-drag.ts';
import { WaysToHold } from './ways-to-hold.tsx';

/** Read only once there is a route to ask about. */
const JobOnLathe = later(() => import('../lathe/job-on-lathe.tsx'));

const orderPath: Path = ['route', 'order'];

interface Props {
  readonly job: OpenJob;
  readonly page: JobPage;
  /** Chosen on the drawing or by a finding. */
  readonly marks: readonly string[];
}

export function RouteStage({ job, page, marks }: Props) {
  const route = page.routing;
  if (!route) return <Blocks blocks={page.sheets.route} />;
  return (
    <>
      <RouteWishes form={job} chucks={route.chucks} />
      <Times route={route} />
      <WaysToHold job={job} holdings={route.holdings} />
      <Operations job={job} route={route} marks={marks} />
      <Suspense>
        <JobOnLathe route={route} />
      </Suspense>
      <details className="folded stock-fold" open>
        <summary>What to buy, cut and lay out</summary>
        <Blocks blocks={page.sheets.route} />
      </details>
    </>
  );
}

function Times({ route: { time, compared } }: { readonly route: RouteView }) {
  return (
    <p className="route-time">
      <strong>Time at the lathe, setting up included: {time}.</strong>
      {compared && (
        <>
          {' '}
          {compared.says} <span className="secondary">The planner’s: {compared.planner}.</span>
        </>
      )}
    </p>
  );
}

interface OperationsProps extends Pick<Props, 'job' | 'marks'> {
  readonly route: RouteView;
}

function Operations({ job, route, marks }: OperationsProps) {
  const { operations, setups } = route;
  const [open, setOpen] = useState<string>();
  const [said, setSaid] = useState('');
  const order = listAt(job.document, orderPath).filter((id) => typeof id === 'string');

  const put = (ids: readonly string[], what: string): void => {
    job.put(orderPath, ids.length === 0 ? undefined : [...ids]);
    setSaid(what);
  };
  const move = (from: number, to: number): void => {
    const ids = orderWith(operations, order, from, to);
    put(ids, wantedWords(operations, ids, operations[from]?.id));
  };
  const keep = (at: number): void => move(at, at);
  const free = (operation: OperationView): void =>
    put(
      order.filter((id) => id !== operation.id),
      `The planner may move ${operation.title} again.`,
    );
  const { drag, list } = useDrag(operations, move);
  const befores = worksBefore(route);

  return (
    <section className="operations" aria-label="Operations" ref={list}>
      <div className="order-tools">
        <button
          type="button"
          onClick={() =>
            put(
              operations.map((o) => o.id),
              'Every operation is kept where it stands.',
            )
          }
        >
          Keep the whole order
        </button>
        <button
          type="button"
          disabled={order.length === 0}
          onClick={() => put([], 'The planner orders all of it again.')}
        >
          Leave the order to the planner
        </button>
        <span role="status" className="understood">
          {said}
        </span>
      </div>
      {setups.map((setup) => (
        <div key={setup.id} className="setup">
          <SetupHead setup={setup} />
          <ol>
            {operations.map(
              (o, at) =>
                o.setup === setup.id && (
                  <OperationRow
                    key={o.id}
                    job={job}
                    route={route}
                    operation={o}
                    setup={setup}
                    before={befores[at] ?? setup.work}
                    at={at}
                    drag={drag}
                    isOpen={open === o.id}
                    toggle={() => setOpen(open === o.id ? undefined : o.id)}
                    isChosen={o.marks.some((of) => marks.some((mark) => belongsTo(of, mark) || belongsTo(mark, of)))}
                    isKept={order.includes(o.id)}
                    move={move}
                    keep={() => keep(at)}
                    free={() => free(o)}
                  />
                ),
            )}
          </ol>
        </div>
      ))}
    </section>
  );
}

/** `Rough the body is wanted after Face the end and before Cut the groove.` */
function wantedWords(operations: readonly OperationView[], ids: readonly string[], id: string | undefined): string {
  const titleOf = (at: number) => operations.find((o) => o.id === ids[at])?.title;
  const at = id === undefined ? -1 : ids.indexOf(id);
  const [before, after] = [titleOf(at - 1), titleOf(at + 1)];
  const places = [
    ...(before === undefined ? [] : [`after “${before}”`]),
    ...(after === undefined ? [] : [`before “${after}”`]),
  ];
  return `“${titleOf(at) ?? ''}” is wanted ${places.join(' and ')}.`;
}

function worksBefore({ operations, setups }: RouteView): SetupView['work'][] {
  const found: SetupView['work'][] = [];
  let [setup, work]: [SetupView | undefined, SetupView['work'] | undefined] = [undefined, undefined];
  for (const o of operations) {
    if (o.setup !== setup?.id) {
      setup = setups.find((s) => s.id === o.setup);
      work = setup?.work;
    }
    if (work) found.push(work);
    work = o.leaves ?? work;
  }
  return found;
}

function SetupHead({ setup }: { readonly setup: SetupView }) {
  return (
    <header>
      <h3 className="large">
        Setup {setup.number}: {setup.title}
      </h3>
      {setup.notices.map((n) => (
        <p key={n.says} className={`notice ${n.level}`}>
          {n.says} {n.helps}
        </p>
      ))}
      {setup.cautions.map((c) => (
        <p key={c} className="caution-line">
          <strong>▲ Caution</strong> {c}
        </p>
      ))}
      <details className="folded">
        <summary>
          How it is held, and why<span className="unseen"> in setup {setup.number}</span>
        </summary>
        <Facts rows={setup.facts} />
        {setup.why.length > 0 && <Lines items={setup.why} numbered={false} />}
      </details>
    </header>
  );
}
