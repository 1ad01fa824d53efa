/** How the job is written: unit, decimal sign, paper, projection. They belong to the job, so changing one can be taken back. */
import type { Json } from '@sparewright/core/job/merge';
import type { JobPage } from '@sparewright/output/present/job-view';
import { useState } from 'react';
import { isObject, textAt } from '../document.ts';
import type { OpenJob } from '../use-job.ts';
import { askQuestion } from '../worker/client.ts';
import { ThemeSwitch } from './theme-switch.tsx';

interface Props {
  readonly page: JobPage;
  readonly job: OpenJob;
}

const sheetSwitches = [
  { key: 'decimalSign', label: 'Decimal sign', choices: ['point', 'comma'] },
  { key: 'paper', label: 'Paper', choices: ['A4', 'Letter'] },
  { key: 'projection', label: 'Projection', choices: ['first angle', 'third angle'] },
] as const;

export function Switches({ page, job }: Props) {
  const [trouble, setTrouble] = useState('');
  const chosen = (key: string, first: string): string => textAt(job.document, ['sheet', key]) || first;

  /** What was typed stays as it was typed: bare numbers get the unit behind them that they were typed in. */
  const changeUnits = async (to: string): Promise<void> => {
    const { document } = job;
    try {
      const { answer } = await askQuestion('change-units', { job: document, units: to });
      const changed = isObjectLike(answer) ? answer.job : undefined;
      if (!isObject(changed)) throw new Error('The unit could not be changed.');
      // What was typed while this was worked out is not to be lost.
      job.edit((now) => (now === document ? changed : now));
      setTrouble('');
    } catch (error) {
      setTrouble(`The unit stays: ${error instanceof Error ? error.message : 'it could not be changed.'}`);
    }
  };

  const summary = [
    page.units === 'in' ? 'inches' : 'millimetres',
    `decimal ${chosen('decimalSign', 'point')}`,
    chosen('paper', 'A4'),
    chosen('projection', 'first angle'),
  ].join(', ');
  return (
    <details className="folded switches">
      <summary>Written in {summary}</summary>
      <div className="row">
        <span className="switch">
          <label htmlFor="units">Unit of bare numbers</label>
          <select id="units" value={page.units} onChange={(e) => void changeUnits(e.target.value)}>
            <option value="mm">millimetres</option>
            <option value="in">inches</option>
          </select>
        </span>
        {sheetSwitches.map(({ key, label, choices }) => (
          <span className="switch" key={key}>
            <label htmlFor={`switch-${key}`}>{label}</label>
            <select
              id={`switch-${key}`}
              value={chosen(key, choices[0])}
              onChange={(e) => job.put(['sheet', key], e.target.value)}
            >
              {choices.map((choice) => (
                <option key={choice}>{choice}</option>
              ))}
            </select>
          </span>
        ))}
        <ThemeSwitch />
      </div>
      <p className="understood">
        Another unit converts nothing: numbers typed without a unit get the one behind them that they were typed in. How
        the screen looks is kept on this device, all else with the job.
      </p>
      {trouble !== '' && (
        <p className="refusal" role="alert">
          {trouble}
        </p>
      )}
    </details>
  );
}

function isObjectLike(value: unknown): value is { readonly job?: Json } {
  return typeof value === 'object' && value !== null;
}
