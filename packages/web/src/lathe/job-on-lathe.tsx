/** All cuts of the route on this lathe at once: which stands worst, and what would help the whole job. */
import { drawBars } from '@sparewright/output/chart/draw-bars';
import type { OperationView, RouteView } from '@sparewright/output/present/job-view';
import { useCallback, useMemo, useState } from 'react';
import { Picture } from './picture.tsx';
import { useAnswer, useKnownWorkshop } from './use-answer.ts';

type Answer = NonNullable<ReturnType<typeof useAnswer<'what-would-help-job'>>['answer']>;

const mostRemedies = 6;
/** A gain that shows in no figure is none. */
const leastGain = 0.01;
const standing = { good: 'good', marginal: '▲ marginal', bad: '■ bad' } as const;

export default function JobOnLathe({ route }: { readonly route: RouteView }) {
  const [wanted, setWanted] = useState(false);
  const workshop = useKnownWorkshop();
  const asked = useMemo(() => {
    const cuts = route.operations.flatMap((o) => (o.cut ? [{ id: o.id, ...o.cut }] : []));
    return wanted && workshop !== undefined && cuts.length > 0 ? { workshop, cuts } : undefined;
  }, [route, workshop, wanted]);
  const { answer, trouble } = useAnswer('what-would-help-job', asked);
  return (
    <details className="folded job-on-lathe" onToggle={(e) => setWanted(e.currentTarget.open)}>
      <summary>The whole job on this lathe: which cut stands worst, and what would help</summary>
      {trouble !== '' && <p className="refusal">{trouble}</p>}
      {asked === undefined && wanted && <p>No operation of this route is a cut that can be judged.</p>}
      {asked !== undefined && !answer && trouble === '' && <p role="status">Trying every cut …</p>}
      {trouble === '' && answer && (
        <>
          <Standing answer={answer} route={route} />
          <Helping answer={answer} route={route} />
        </>
      )}
    </details>
  );
}

interface Props {
  readonly answer: Answer;
  readonly route: RouteView;
}

function Standing({ answer, route }: Props) {
  return (
    <table className="plain">
      <thead>
        <tr>
          <th scope="col">Operation, worst first</th>
          <th scope="col">What decides</th>
          <th scope="col">Stands</th>
        </tr>
      </thead>
      <tbody>
        {answer.cuts.map((c) => (
          <tr key={c.id}>
            <th scope="row">{titleOf(c.id, route)}</th>
            <td data-label="What decides">{c.decides}</td>
            <td data-label="Stands">{standing[c.stands]}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Helping({ answer, route }: Props) {
  const helping = useMemo(
    () => answer.remedies.filter((r) => r.sumGain > leastGain || r.worstGain > leastGain).slice(0, mostRemedies),
    [answer],
  );
  const draw = useCallback(
    (width: number) =>
      drawBars(
        {
          title: 'What would help the whole job',
          description: helping.map((r) => `${r.name}: ${r.effort}`).join('. '),
          bars: helping.map((r, i) => ({
            label: String(i + 1),
            value: r.sumGain,
            written: r.effort,
            meaning: 'accent' as const,
          })),
        },
        { ...route.settings, width },
      ),
    [helping, route.settings],
  );
  if (helping.length === 0) return <p>Nothing that was tried would help.</p>;
  return (
    <figure>
      <figcaption>
        What would help, the worst cut first and then all of them: how much over all cuts, and how much work it is.
      </figcaption>
      <Picture draw={draw} />
      <ol className="remedies">
        {helping.map((r) => (
          <li key={r.name}>
            {r.name}{' '}
            <span className="secondary">
              ({r.effort}
              {r.settles.length > 0 &&
                `; then these go: ${r.settles.map((id) => `operation ${numberOf(id, route)}`).join(', ')}`}
              )
            </span>
          </li>
        ))}
      </ol>
    </figure>
  );
}

const operationOf = (id: string, { operations }: RouteView): OperationView | undefined =>
  operations.find((o) => o.id === id);
const numberOf = (id: string, route: RouteView): string => String(operationOf(id, route)?.number ?? id);

function titleOf(id: string, route: RouteView): string {
  const found = operationOf(id, route);
  return found ? `${found.number} ${found.title}` : id;
}
