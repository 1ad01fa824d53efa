/** Where the limits of a size come from: worked out again when it is asked for, deviations and sources with it. */

import type { Json } from '@sparewright/core/job/merge';
import type { Answered } from '@sparewright/core/questions/ask';
import { useState } from 'react';
import { isObject, textAt } from '../document.ts';
import { askQuestion } from '../worker/client.ts';

interface Props {
  /** What the size is called, for readers. */
  readonly title: string;
  readonly entered: string;
  readonly units: 'mm' | 'in';
  /** Class of ISO 2768 for sizes without limits; empty for none. */
  readonly general: string;
}

export function WhySize({ title, entered, units, general }: Props) {
  const [answer, setAnswer] = useState<{ readonly of: string; readonly answered: Answered | string }>();
  const of = `${entered}|${units}|${general}`;
  const ask = async (): Promise<void> => {
    if (answer?.of === of) return;
    try {
      const input = { size: entered, units, ...(general === '' ? {} : { general }) };
      setAnswer({ of, answered: await askQuestion('limits', input) });
    } catch (error) {
      setAnswer({ of, answered: error instanceof Error ? error.message : 'That could not be worked out.' });
    }
  };
  return (
    <details
      className="folded"
      onToggle={(e) => {
        if (e.currentTarget.open) void ask();
      }}
    >
      <summary>
        Why<span className="unseen">: {title}</span>
      </summary>
      {answer?.of !== of ? (
        <span role="status">Working it out …</span>
      ) : typeof answer.answered === 'string' ? (
        <span className="refusal">{answer.answered}</span>
      ) : (
        <Words answered={answer.answered} />
      )}
    </details>
  );
}

function Words({ answered: { answer, sources } }: { readonly answered: Answered }) {
  const found = answer as Json;
  if (!isObject(found)) return null;
  const micrometres = (key: string): string => {
    const value = Number(found[key]) * 1000;
    return `${value > 0 ? '+' : value < 0 ? '−' : ''}${Number(Math.abs(value).toFixed(2))} µm`;
  };
  const remarks = Array.isArray(found.remarks) ? found.remarks : [];
  return (
    <span className="worked">
      <span className="formula">least = nominal + lower deviation; most = nominal + upper deviation</span>
      <span>
        Put in: nominal {Number(Number(found.nominal).toFixed(4))} mm · lower {micrometres('lower')} · upper{' '}
        {micrometres('upper')} ({textAt(found, ['basis'])})
      </span>
      <span>
        Gives: <strong>{textAt(found, ['text'])}</strong>
      </span>
      {remarks.map((remark) => (
        <span key={String(remark)}>{String(remark)}</span>
      ))}
      {sources.map(({ key, title, kind }) => (
        <span key={key} className="source">
          {title}
          {kind === 'read' ? '' : ` [${kind}]`}
        </span>
      ))}
    </span>
  );
}
