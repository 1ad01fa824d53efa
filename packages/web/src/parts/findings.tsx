/** Everything the tool wants the person to know, worst first. */
import type { FindingView } from '@sparewright/output/present/job-view';
import { HelpHere } from '../help/in-place.tsx';
import { belongsTo } from '../marks.ts';
import { levelMarks, levelWords } from './levels.ts';

interface Props {
  readonly findings: readonly FindingView[];
  readonly marks: readonly string[];
  readonly choose: (finding: FindingView) => void;
}

export function Findings({ findings, marks, choose }: Props) {
  return (
    <section className="findings" id="findings" tabIndex={-1} aria-labelledby="findings-heading">
      <h2 id="findings-heading">What was found, worst first</h2>
      <HelpHere meaning={['weight']} />
      {findings.length === 0 && <p>Nothing. That is no proof: it holds only for what was entered.</p>}
      <ol>
        {findings.map((f) => (
          <li key={`${f.where}|${f.says}`} className={isChosen(f, marks) ? `${f.level} chosen` : f.level}>
            <p className="level">
              {levelMarks[f.level]} {levelWords[f.level]} <span className="where">{f.where}</span>
            </p>
            <button type="button" onClick={() => choose(f)}>
              {f.says}
            </button>
            {f.remedies.length > 0 && <p>What helps: {inSentences(f.remedies)}</p>}
            {f.because.length > 0 && <Why finding={f} />}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** Remedies are given as clauses; here each is a sentence. */
function inSentences(clauses: readonly string[]): string {
  return clauses.map((c) => `${c.charAt(0).toUpperCase()}${c.slice(1).replace(/\.$/, '')}.`).join(' ');
}

function isChosen(finding: FindingView, marks: readonly string[]): boolean {
  return finding.marks.some((at) => marks.some((mark) => belongsTo(at, mark)));
}

function Why({ finding }: { readonly finding: FindingView }) {
  return (
    <details className="folded">
      <summary>Why</summary>
      <ul>
        {finding.because.map((b) => (
          <li key={b.text}>
            {b.text} {b.source !== '' && <span className="source">{b.source}</span>}
          </li>
        ))}
      </ul>
    </details>
  );
}
