/** How what was typed stands: kept, on its way, or in need of a choice; and the way back. */
import { useEffect, useState } from 'react';
import type { Side } from '../save/join.ts';
import { pathWords, valueWords } from '../save/words.ts';
import type { Open } from '../use-job.ts';

export function Standing<View>({ open }: { readonly open: Open<View> }) {
  const { undo, redo } = open;
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) redo();
      else undo();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [undo, redo]);
  const canUndo = open.steps.undo !== undefined || open.standing === 'sending' || open.standing === 'refused';
  return (
    <div className="standing">
      <span
        role="status"
        className={open.standing === 'refused' || open.standing === 'conflict' ? 'refusal' : undefined}
      >
        {wordsOf(open)}
      </span>{' '}
      <span className="reckoning" aria-hidden={!open.busy}>
        Working it out …
      </span>{' '}
      <span className="back-and-forth">
        <button type="button" onClick={undo} disabled={!canUndo} aria-keyshortcuts="Control+Z">
          Undo
        </button>{' '}
        <button
          type="button"
          onClick={redo}
          disabled={open.steps.redo === undefined}
          aria-keyshortcuts="Control+Shift+Z"
        >
          Redo
        </button>
      </span>
    </div>
  );
}

function wordsOf<View>({ standing, revision }: Open<View>): string {
  switch (standing) {
    case 'opening':
      return 'Opening …';
    case 'saved':
      return `Every change is kept. Revision ${revision}.`;
    case 'merged':
      return `Joined with what was changed elsewhere. Every change is kept. Revision ${revision}.`;
    case 'sending':
      return 'Keeping …';
    case 'kept here':
      return 'The server does not answer. What you typed is kept in this browser and goes there when it is back.';
    case 'refused':
      return 'Not kept yet: a value is refused where it is marked.';
    case 'conflict':
      return 'The same was changed elsewhere too: choose which to keep.';
  }
}

/** The same thing typed in two ways: both side by side, and each place its own choice. */
export function Choosing<View>({ open }: { readonly open: Open<View> }) {
  const { disagreement } = open;
  const [chosen, setChosen] = useState<ReadonlyMap<string, Side>>(new Map());
  if (!disagreement) return null;
  const { differences } = disagreement;
  const several = differences.length > 1;
  const side = (path: string, which: Side, words: string) =>
    several ? (
      <label>
        <input
          type="radio"
          name={`choice ${path}`}
          checked={chosen.get(path) === which}
          onChange={() => setChosen(new Map([...chosen, [path, which]]))}
        />
        <span>{words}</span>
      </label>
    ) : (
      words
    );
  const all = (which: Side) => open.settle(() => which);
  return (
    <section className="choosing" aria-labelledby="choosing-heading">
      <h2 id="choosing-heading">Changed here and elsewhere</h2>
      <p>Meanwhile the same was changed in another place. Whatever else was typed on either side stays.</p>
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">As you typed it</th>
            <th scope="col">As it is there now</th>
          </tr>
        </thead>
        <tbody>
          {differences.map(({ path, mine, theirs }) => (
            <tr key={path}>
              <th scope="row">{pathWords(path)}</th>
              <td>{side(path, 'mine', path === '' ? 'your whole document' : valueWords(mine))}</td>
              <td>{side(path, 'theirs', path === '' ? 'the whole document there' : valueWords(theirs))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        {several && (
          <>
            <button
              type="button"
              disabled={differences.some(({ path }) => !chosen.has(path))}
              onClick={() => open.settle((path) => chosen.get(path) ?? 'theirs')}
            >
              Go on with what is marked
            </button>{' '}
          </>
        )}
        <button type="button" onClick={() => all('mine')}>
          {several ? 'Keep all as I typed it' : 'Keep as I typed it'}
        </button>{' '}
        <button type="button" onClick={() => all('theirs')}>
          {several ? 'Take all that is there' : 'Take what is there'}
        </button>
      </p>
    </section>
  );
}
