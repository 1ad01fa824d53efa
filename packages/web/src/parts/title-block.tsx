/** The head of the sheet: what the job is, how it is kept, and the ways to the other screens. */
import type { JobPage } from '@sparewright/output/present/job-view';
import { Ways } from '../shelf/screen-head.tsx';
import type { OpenJob } from '../use-job.ts';
import { levelWords } from './levels.ts';
import { Standing } from './standing.tsx';
import { Switches } from './switches.tsx';

interface Props {
  readonly page: JobPage;
  readonly job: OpenJob;
}

export function TitleBlock({ page, job }: Props) {
  return (
    <header className="title-block">
      <div className="cell job">
        <span className="label">Sparewright · job</span>
        <h1>{page.title}</h1>
      </div>
      <div className="cell">
        <span className="label">Machine</span>
        <span>{page.machine}</span>
      </div>
      <div className="cell">
        <span className="label">Hazard class</span>
        <span className={page.hazard === 'ordinary' ? '' : 'hazard'}>{page.hazard}</span>
      </div>
      <div className="cell">
        <span className="label">Figures</span>
        <span>{page.invented ? <strong>All figures invented</strong> : 'as entered'}</span>
      </div>
      <div className="cell">
        <span className="label">Found</span>
        <button type="button" onClick={() => document.getElementById('findings')?.focus()}>
          {foundWords(page)}
        </button>
      </div>
      <div className="cell jobs">
        <Ways here="job" />
        <Switches page={page} job={job} />
        <Standing open={job} />
      </div>
    </header>
  );
}

function foundWords({ findings }: JobPage): string {
  if (findings.length === 0) return 'nothing to say';
  return (['stop', 'caution', 'note'] as const)
    .map((level) => ({ level, n: findings.filter((f) => f.level === level).length }))
    .filter(({ n }) => n > 0)
    .map(({ level, n }) => `${n} ${levelWords[level].toLowerCase()}${n === 1 ? '' : 's'}`)
    .join(', ');
}
