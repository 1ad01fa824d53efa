/** Help where one stands: names of the pieces that belong here, each unfolding in its place. */
import { Suspense, useId, useState } from 'react';
import { later } from '../later.tsx';
import { linkTo } from '../place.ts';
import { isMeaning, type TopicId, titleOf } from './titles.ts';

const TopicView = later(() => import('./topic-view.tsx'));

/** More than these are folded away, for they would stand before what one came for. */
const few = 5;

interface Props {
  readonly measure?: readonly TopicId[] | undefined;
  readonly meaning?: readonly TopicId[] | undefined;
}

export function HelpHere({ measure = [], meaning = [] }: Props) {
  const [open, setOpen] = useState<TopicId>();
  const id = useId();
  if (measure.length + meaning.length === 0) return null;
  const row = (words: string, ids: readonly TopicId[]) =>
    ids.length <= few ? (
      ids.length > 0 && (
        <p className="help-row">
          <span className="label">{words}:</span>
          {pieces(ids)}
        </p>
      )
    ) : (
      <details className="folded">
        <summary>{words}</summary>
        <p className="help-row">{pieces(ids)}</p>
      </details>
    );
  const pieces = (ids: readonly TopicId[]) =>
    ids.map((topic) => (
      <button
        key={topic}
        type="button"
        aria-expanded={open === topic}
        aria-controls={open === topic ? id : undefined}
        onClick={() => setOpen(open === topic ? undefined : topic)}
      >
        {titleOf(topic)}
      </button>
    ));
  return (
    <div className="help-here">
      {row('How to measure this', measure)}
      {row('What this means', meaning)}
      {open !== undefined && (
        <div className="help-open" id={id}>
          <Suspense fallback={<p role="status">Opening …</p>}>
            <TopicView id={open} heading="h3" />
          </Suspense>
          <p>
            <button type="button" onClick={() => setOpen(undefined)}>
              Fold it up
            </button>{' '}
            <a {...linkTo({ screen: 'help', part: isMeaning(open) ? 'meaning' : 'measure', topic: open })}>
              All of the help
            </a>
          </p>
        </div>
      )}
    </div>
  );
}
