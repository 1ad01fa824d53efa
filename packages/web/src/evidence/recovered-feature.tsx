/** One recovered size or shape: what was concluded, the pictures of it, and the ways to settle it. */
import type { RecoveredFeatureView } from '@sparewright/output/present/job-view';
import { useState } from 'react';
import type { OpenJob } from '../use-job.ts';
import { Conflicts } from './conflicts.tsx';
import { Picture } from './picture.tsx';
import { Settle } from './settle.tsx';

interface Props {
  readonly job: OpenJob;
  readonly feature: RecoveredFeatureView;
  /** The first that nobody has decided on yet is unfolded, and stays so once it is decided: its outcome is read there. */
  readonly isFirst: boolean;
  /** Chosen on the drawing. */
  readonly isMarked: boolean;
}

export function RecoveredFeature({ job, feature, isFirst, isMarked }: Props) {
  const calls = isFirst || isMarked;
  const [called, setCalled] = useState(calls);
  const [open, setOpen] = useState(calls);
  if (calls !== called) {
    setCalled(calls);
    if (calls) setOpen(true);
  }
  const { title, says, line, bars, designs, wear, lookAlike, next, conflicts } = feature;
  const [first] = designs;
  return (
    <details
      className={isMarked ? 'recovered-feature chosen' : 'recovered-feature'}
      open={open}
      onToggle={(e) => setOpen(e.currentTarget.open)}
    >
      <summary>
        <h4>{capital(title)}</h4>
        <span className="concluded">{first && `${first.written}, ${first.share}`}</span>
        <span className="decided">{stateWords(feature)}</span>
      </summary>
      <div className="side-by-side">
        <div className="words">
          {says.map((s) => (
            <p key={s}>{s}</p>
          ))}
          {lookAlike !== null && <p>{lookAlike}</p>}
          <Conflicts findings={conflicts} />
          <Settle job={job} feature={feature} />
          {wear.map(({ on, places }) => (
            <Told key={on} title={on === '' ? 'Wear, place by place' : `Wear on ${on}`} items={places} />
          ))}
          <Told title="To be surer, measure" items={next} />
        </div>
        <div className="plots">
          {line !== null && <Picture svg={line} />}
          {bars !== null && <Picture svg={bars} />}
        </div>
      </div>
    </details>
  );
}

function Told({ title, items }: { readonly title: string; readonly items: readonly string[] }) {
  if (items.length === 0) return null;
  return (
    <>
      <h5>{title}</h5>
      <ul className="lines">
        {items.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    </>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Told by a mark, too, for those who see no colours. */
function stateWords({ decision, isOpen, takes }: RecoveredFeatureView): string {
  if (isOpen || decision?.decided === 'left open') return '○ left open';
  if (decision) return '● settled';
  return takes.length > 0 ? '– not decided' : '';
}
