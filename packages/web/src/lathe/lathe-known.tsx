/** What this lathe is known to do: tests to write down, what each taught, what gives how much, states compared. */
import type { Json } from '@sparewright/core/job/merge';
import { useState } from 'react';
import { levelMarks, levelWords } from '../parts/levels.ts';
import type { Open } from '../use-job.ts';
import { StiffnessBudget } from './budget.tsx';
import { Elements, NextTests, Taught } from './knowledge.tsx';
import { States } from './states.tsx';
import type { BegunTest } from './test-kinds.ts';
import { Tests } from './tests.tsx';
import { useAnswer } from './use-answer.ts';

export default function LatheKnown({ workshop }: { readonly workshop: Open<undefined> }) {
  const { document = null, refusals } = workshop;
  const [begun, setBegun] = useState<BegunTest>({ kind: 'pushes', begins: {} });
  // What is typed and not taken says nothing of the lathe; the last answer stands until then.
  const sound: Json | undefined = document !== null && Object.keys(refusals).length === 0 ? document : undefined;
  const asked = sound === undefined ? undefined : { workshop: sound };
  const knowledge = useAnswer('lathe-knowledge', asked);
  const budget = useAnswer('stiffness-budget', asked);
  const choose = (next: BegunTest): void => {
    setBegun(next);
    window.document.getElementById('write-tests')?.scrollIntoView({ block: 'start' });
  };
  const trouble = knowledge.trouble || budget.trouble;
  return (
    <>
      {trouble !== '' && (
        <p className="refusal" role="alert">
          {trouble}
        </p>
      )}
      {!knowledge.answer && trouble === '' && <p role="status">Looking at what is known …</p>}
      {knowledge.answer && (
        <>
          <p className="known-of">
            <strong>
              {knowledge.answer.tests === 0
                ? `Nothing was tested on this ${knowledge.answer.class} yet.`
                : `${knowledge.answer.tests} ${knowledge.answer.tests === 1 ? 'test says' : 'tests say'} how stiff this ${knowledge.answer.class} is.`}
            </strong>{' '}
            Every cut of every job is judged by it.
          </p>
          {knowledge.answer.findings
            .filter((f) => f.id !== 'lathe.untested')
            .map((f) => (
              <div key={`${f.id} ${f.at}`} className={`notice ${f.level}`}>
                <p>
                  <strong>
                    {levelMarks[f.level]} {levelWords[f.level]}
                  </strong>{' '}
                  <span className="secondary">{f.at.replaceAll('-', ' ')}</span> {f.says}
                </p>
                {f.remedies.length > 0 && <p>What helps: {f.remedies.join('; ')}.</p>}
              </div>
            ))}
          <NextTests knowledge={knowledge.answer} choose={choose} />
        </>
      )}
      <Tests workshop={workshop} begun={begun} choose={setBegun} />
      {knowledge.answer && <Taught knowledge={knowledge.answer} document={document} />}
      {budget.answer && <StiffnessBudget budget={budget.answer} />}
      {knowledge.answer && <Elements knowledge={knowledge.answer} />}
      {sound !== undefined && <States workshop={workshop} document={sound} />}
    </>
  );
}
