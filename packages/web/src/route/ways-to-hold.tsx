/** Ways to hold the work that were weighed, setup by setup: what each costs, why, and a button to have it. */
import type { HoldingsView, HoldingWayView } from '@sparewright/output/present/job-view';
import { useState } from 'react';
import { textAt } from '../document.ts';
import { Lines } from '../parts/blocks.tsx';
import type { Form } from '../use-job.ts';
import { heldAsPlanned, heldSo, holdingKeys } from './holding-wish.ts';

export function WaysToHold({ job, holdings }: { readonly job: Form; readonly holdings: readonly HoldingsView[] }) {
  const [said, setSaid] = useState('');
  const wished = holdingKeys.some((key) => textAt(job.document, ['route', key]) !== '');
  if (holdings.length === 0) return null;
  const hold = (setup: number, way: HoldingWayView): void => {
    job.edit((document) => heldSo(document, way.wish));
    setSaid(`Setup ${setup} is wanted so: ${way.how}. Undo takes it back.`);
  };
  const leave = (): void => {
    job.edit(heldAsPlanned);
    setSaid('The planner chooses again how the work is held.');
  };
  return (
    <details className="folded ways-held">
      <summary>Ways to hold the work: {takenWords(holdings)}</summary>
      {holdings.map(({ setup, ways }) => (
        <section key={setup} aria-label={`Ways to hold the work in setup ${setup}`}>
          <h3>Setup {setup}</h3>
          <ol className="ways">
            {ways.map((way) => (
              <li key={way.how} className={way.taken ? 'way taken' : 'way'}>
                <div className="way-head">
                  <span>
                    <strong>{way.how}</strong>
                    <span className="secondary"> {way.cost}</span>
                  </span>
                  {way.taken ? (
                    <span className="way-taken">taken</span>
                  ) : (
                    <button type="button" aria-label={`Hold it so: ${way.how}`} onClick={() => hold(setup, way)}>
                      Hold it so
                    </button>
                  )}
                </div>
                <Lines items={way.why} numbered={false} />
              </li>
            ))}
          </ol>
        </section>
      ))}
      <div className="order-tools">
        <button type="button" disabled={!wished} onClick={leave}>
          Leave the holding to the planner
        </button>
        <span role="status" className="understood">
          {said}
        </span>
      </div>
    </details>
  );
}

function takenWords(holdings: readonly HoldingsView[]): string {
  return holdings.flatMap(({ ways }) => ways.filter((w) => w.taken).map((w) => w.how)).join('; then ');
}
