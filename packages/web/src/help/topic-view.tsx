/** One piece of help: words, drawing, formula, sources. */
import { presentSource } from '@sparewright/output/present/source';
import { topics } from './content.ts';
import { Picture } from './picture.tsx';
import { isMeaning, type TopicId, titleOf } from './titles.ts';
import type { Topic } from './topic.ts';

interface Props {
  readonly id: TopicId;
  /** Under a heading of the page it stands on. */
  readonly heading: 'h3' | 'h4';
}

export default function TopicView({ id, heading: Heading }: Props) {
  const topic = topics[isMeaning(id) ? 'meaning' : 'measure'].find((t) => t.id === id);
  if (!topic) return null;
  return (
    <article className="topic" aria-labelledby={`topic-${id}`}>
      <Heading id={`topic-${id}`} tabIndex={-1}>
        {titleOf(id)}
      </Heading>
      <p>{topic.lead}</p>
      {topic.picture && <Picture scene={topic.picture} />}
      <Words topic={topic} numbered={!isMeaning(id)} />
    </article>
  );
}

function Words({ topic, numbered }: { readonly topic: Topic; readonly numbered: boolean }) {
  const { steps, beware, formula, enter, sources } = topic;
  const lines = steps.map((step) => <li key={step}>{step}</li>);
  return (
    <div className="words">
      {numbered ? <ol className="lines">{lines}</ol> : <ul className="lines">{lines}</ul>}
      {formula !== undefined && <p className="formula">{formula}</p>}
      {beware.length > 0 && (
        <div className="beware">
          <p className="label">Beware</p>
          <ul className="lines">
            {beware.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      )}
      {enter !== undefined && (
        <p>
          <span className="label">Where to type it:</span> {enter}
        </p>
      )}
      {sources.length > 0 && (
        <details className="folded">
          <summary>Sources</summary>
          <ul className="lines">
            {sources.map((key) => (
              <li key={key}>{presentSource(key)}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
