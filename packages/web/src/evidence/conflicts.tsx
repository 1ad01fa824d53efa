/** What contradicts itself among the readings, where it belongs. */
import type { FindingView } from '@sparewright/output/present/job-view';
import { levelMarks, levelWords } from '../parts/levels.ts';

export function Conflicts({ findings }: { readonly findings: readonly FindingView[] }) {
  return findings.map(({ level, says, because, remedies }) => (
    <div key={says} className={`at-hand ${level}`}>
      <p>
        <strong>
          {levelMarks[level]} {levelWords[level]}
        </strong>{' '}
        {says}
      </p>
      {because.length > 0 && <p className="secondary">{because.map((b) => b.text).join(' · ')}</p>}
      {remedies.length > 0 && (
        <ul className="lines">
          {remedies.map((r) => (
            <li key={r}>{r}</li>
          ))}
        </ul>
      )}
    </div>
  ));
}
