/** The head of the sheet: what the job is, and the other jobs. */
import type { JobEntry, JobPage, StageName } from '../answer.ts';
import { placeHash } from '../use-place.ts';
import { levelWords } from './levels.ts';

interface Props {
  readonly id: string;
  readonly page: JobPage;
  readonly jobs: readonly JobEntry[];
  readonly stage: StageName;
}

export function TitleBlock({ id, page, jobs, stage }: Props) {
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
      <nav className="cell jobs" aria-label="Jobs">
        <span className="label">Jobs to open</span>
        <ul>
          {jobs.map((job) => (
            <li key={job.id}>
              <a href={placeHash({ job: job.id, stage })} aria-current={job.id === id ? 'page' : undefined}>
                {job.title}
              </a>
            </li>
          ))}
        </ul>
      </nav>
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
