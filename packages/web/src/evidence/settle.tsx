/** Accept, override or leave open: each one edit, with its reason, that Undo takes back. */
import type { RecoveredFeatureView, TakeView } from '@sparewright/output/present/job-view';
import { type FormEvent, useId, useState } from 'react';
import { pathText } from '../document.ts';
import type { OpenJob } from '../use-job.ts';
import { heldOpen, overridden, taken } from './decide.ts';

interface Props {
  readonly job: OpenJob;
  readonly feature: RecoveredFeatureView;
}

export function Settle({ job, feature }: Props) {
  const { takes, ownAt, entered, decision, title } = feature;
  const [said, setSaid] = useState('');
  if (takes.length === 0 && ownAt === null) return null;
  const change = (edit: Parameters<OpenJob['edit']>[0], says: string): void => {
    job.edit(edit);
    setSaid(`${says} Undo takes it back.`);
  };
  const refusal = ownAt === null ? undefined : job.refusals[pathText(ownAt)];
  return (
    <div className="settle">
      <p>
        {entered !== null && (
          <>
            In the part now: <strong>{entered}</strong>.{' '}
          </>
        )}
        {decision === null ? 'Nothing is decided yet.' : `Decided: ${decision.decided}. ${sentence(decision.why)}`}
      </p>
      <table className="takes">
        <caption className="unseen">Ways to settle the {title}</caption>
        <tbody>
          {takes.map((take, i) => (
            <tr key={`${take.name}${take.write}`}>
              <th scope="row">
                <span className="write">{take.write}</span>
                {take.means !== '' && <span className="unit">{take.means}</span>}
              </th>
              <td>
                {take.name}
                {i === 0 && <strong>, recommended</strong>}: {take.why}.
              </td>
              <td className="tools">
                <TakeButton
                  take={take}
                  title={title}
                  press={() => change((document) => taken(document, feature, take), `${take.write} is taken.`)}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {ownAt !== null && <OwnValue feature={feature} change={change} />}
      <p className="tools">
        <button
          type="button"
          aria-label={`Leave it open: ${title}`}
          onClick={() =>
            change(
              (document) => heldOpen(document, feature, 'The readings do not settle it yet.'),
              'Left open, and drawn in pencil.',
            )
          }
        >
          Leave it open
        </button>
      </p>
      <p role="status" className="understood">
        {said}
      </p>
      {refusal !== undefined && (
        <p className="refusal" role="alert">
          {refusal}
        </p>
      )}
    </div>
  );
}

interface TakeProps {
  readonly take: TakeView;
  readonly title: string;
  readonly press: () => void;
}

function TakeButton({ take, title, press }: TakeProps) {
  return (
    <button type="button" onClick={press} aria-label={`Take it: ${take.write} for the ${title}`}>
      Take it
    </button>
  );
}

interface OwnProps {
  readonly feature: RecoveredFeatureView;
  readonly change: (edit: Parameters<OpenJob['edit']>[0], says: string) => void;
}

/** A value of one's own is taken with its reason only: whoever makes the part again will ask for it. */
function OwnValue({ feature, change }: OwnProps) {
  const id = useId();
  const [value, setValue] = useState('');
  const [why, setWhy] = useState('');
  const [lacks, setLacks] = useState('');
  const use = (event: FormEvent): void => {
    event.preventDefault();
    const missing = value.trim() === '' ? 'A size is needed.' : why.trim() === '' ? 'A reason is needed.' : '';
    setLacks(missing);
    if (missing !== '') return;
    change((document) => overridden(document, feature, value.trim(), why.trim()), `${value.trim()} is in the part.`);
    setValue('');
    setWhy('');
  };
  return (
    <details className="folded">
      <summary>
        Another value<span className="unseen"> for the {feature.title}</span>
      </summary>
      <form className="fields" onSubmit={use} noValidate>
        <span className="field">
          <label htmlFor={`${id}-value`}>As you would type it</label>
          <input id={`${id}-value`} value={value} autoComplete="off" onChange={(e) => setValue(e.target.value)} />
        </span>
        <span className="field wide">
          <label htmlFor={`${id}-why`}>Why</label>
          <input id={`${id}-why`} value={why} autoComplete="off" onChange={(e) => setWhy(e.target.value)} />
        </span>
        <span className="tools">
          <button type="submit">Use it</button>
        </span>
        <p role="status" className="refusal">
          {lacks}
        </p>
      </form>
    </details>
  );
}

/** A reason ends like a sentence. */
const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);
