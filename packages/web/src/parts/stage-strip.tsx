/** The stages in their order, each saying how it stands. */

import type { JobPage, StageName } from '@sparewright/output/present/job-view';
import type { KeyboardEvent } from 'react';

interface Props {
  readonly stages: JobPage['stages'];
  readonly stage: StageName;
  readonly choose: (stage: StageName) => void;
}

export function StageStrip({ stages, stage, choose }: Props) {
  const onKeyDown = (event: KeyboardEvent): void => {
    const at = stages.findIndex((s) => s.stage === stage);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: stages.length - 1 }[event.key];
    const next = to === undefined ? undefined : stages[(to + stages.length) % stages.length];
    if (!next) return;
    event.preventDefault();
    choose(next.stage);
    document.getElementById(`stage-${next.stage}`)?.focus();
  };
  return (
    <div className="stage-strip" role="tablist" aria-label="Stages of the job" onKeyDown={onKeyDown}>
      {stages.map((s) => (
        <button
          key={s.stage}
          type="button"
          role="tab"
          id={`stage-${s.stage}`}
          aria-selected={s.stage === stage}
          aria-controls="sheet"
          tabIndex={s.stage === stage ? 0 : -1}
          onClick={() => choose(s.stage)}
        >
          <span className="name">{s.name}</span>
          <span className="stands">{s.stands}</span>
        </button>
      ))}
    </div>
  );
}
