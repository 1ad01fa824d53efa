/** One operation on this lathe: whether it goes and which number decides, size along the work, depth against speed, what would help. */
import type { CutAsked, OperationView, RouteView } from '@sparewright/output/present/job-view';
import { presentProse } from '@sparewright/output/present/prose';
import { useMemo } from 'react';
import { linkTo } from '../place.ts';
import { DepthPicture, HelpPicture, SizePicture } from './cut-pictures.tsx';
import { type Asked, useAnswer, useKnownWorkshop } from './use-answer.ts';

interface Props {
  readonly operation: OperationView;
  readonly cut: CutAsked;
  readonly route: RouteView;
}

export function CutOnLathe({ operation, cut, route }: Props) {
  const workshop = useKnownWorkshop();
  const { settings } = route;
  const { whole, ladder } = useMemo(() => {
    const { depth: _d, speed: _s, sizeLimit: _l, ...rest } = cut;
    return workshop === undefined
      ? { whole: undefined, ladder: undefined }
      : { whole: { ...cut, workshop }, ladder: { ...rest, workshop } };
  }, [cut, workshop]);
  const verdict = useAnswer('cut-on-lathe', whole);
  const depths = useAnswer('depth-at-speeds', ladder);
  const help = useAnswer('what-would-help', whole);
  const others = useMemo(() => likeThis(operation, route), [operation, route]);
  return (
    <section className="on-lathe" aria-label={`On this lathe: ${operation.title}`}>
      <h4>Its hardest cut on this lathe</h4>
      <Waiting of={verdict} what="Asking the lathe …" />
      {verdict.trouble === '' && verdict.answer && (
        <>
          <p className={`verdict ${verdict.answer.verdict.replaceAll(' ', '-')}`} role="status">
            <strong>{presentProse(verdict.answer.says, settings)}</strong>
          </p>
          {verdict.answer.findings.some((f) => f.id === 'lathe.untested') && (
            <p className="secondary">
              Nothing was tested on this lathe: all this is guessed from its size.{' '}
              <a {...linkTo({ screen: 'workshop', part: 'known' })}>A test of a quarter of an hour</a> narrows it.
            </p>
          )}
          <Weighed answer={verdict.answer} settings={settings} />
          <SizePicture answer={verdict.answer} cut={cut} settings={settings} />
        </>
      )}
      <Waiting of={depths} what="" />
      {depths.trouble === '' && depths.answer && (
        <DepthPicture answer={depths.answer} cut={cut} number={operation.number} others={others} settings={settings} />
      )}
      <Waiting of={help} what="Trying what would help …" />
      {help.trouble === '' && help.answer && <HelpPicture answer={help.answer} cut={cut} settings={settings} />}
    </section>
  );
}

/** Operations of the same kind, cutter and setup. */
function likeThis({ id, cut, setup }: OperationView, { operations }: RouteView) {
  return operations.flatMap((o) =>
    o.cut && o.id !== id && o.setup === setup && o.cut.operation === cut?.operation && o.cut.cutter === cut.cutter
      ? [{ number: o.number, speed: o.cut.speed, depth: o.cut.depth }]
      : [],
  );
}

function Waiting({ of: { answer, trouble }, what }: { readonly of: Asked<unknown>; readonly what: string }) {
  if (trouble !== '')
    return (
      <p className="refusal" role="status">
        {trouble}
      </p>
    );
  return answer === undefined && what !== '' && <p role="status">{what}</p>;
}

type Verdict = NonNullable<ReturnType<typeof useAnswer<'cut-on-lathe'>>['answer']>;

const standing = { good: 'good', marginal: '▲ marginal', bad: '■ bad' } as const;

function Weighed({ answer, settings }: { readonly answer: Verdict; readonly settings: RouteView['settings'] }) {
  const { written } = useMemo(() => writer(settings), [settings]);
  return (
    <details className="folded">
      <summary>All numbers weighed</summary>
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col" className="figure">
              Here
            </th>
            <th scope="col" className="figure">
              Good up to
            </th>
            <th scope="col" className="figure">
              Not beyond
            </th>
            <th scope="col">Stands</th>
          </tr>
        </thead>
        <tbody>
          {answer.weighed.map((w) => (
            <tr key={w.what}>
              <th scope="row">{w.what}</th>
              <td className="figure">{written(w.value, w)}</td>
              <td className="figure">{written(w.good, w)}</td>
              <td className="figure">{written(w.bad, w)}</td>
              <td>{standing[w.state]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

function writer({ units, decimalSign }: RouteView['settings']) {
  const sign = (text: string) => (decimalSign === 'comma' ? text.replace('.', ',') : text);
  const written = (value: number, { unit, criterion }: { readonly unit: string; readonly criterion: string }) => {
    if (criterion === 'rubbing') return String(value);
    if (unit === 'mm') return sign(units === 'in' ? `${(value / 25.4).toFixed(4)} in` : `${value.toFixed(3)} mm`);
    return `${Math.round(100 * value)} %`;
  };
  return { written };
}
