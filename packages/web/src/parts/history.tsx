/** Every state the document ever had: what changed in each, and the way back to it. */

import { differingPaths, type Json } from '@sparewright/core/job/merge';
import { useEffect, useState } from 'react';
import { listRevisions, readRevision, restoreRevision } from '../ask-server.ts';
import { valueAt } from '../document.ts';
import { client } from '../save/outbox.ts';
import type { RevisionEntry } from '../save/steps.ts';
import { pathWords, valueWords } from '../save/words.ts';
import type { Open } from '../use-job.ts';

interface Change {
  readonly path: string;
  readonly before: string;
  readonly after: string;
}

export function History<View>({ open }: { readonly open: Open<View> }) {
  const { address, revision } = open;
  const [history, setHistory] = useState<{ upTo: number; revisions: readonly RevisionEntry[] }>();
  const [compared, setCompared] = useState<{ from: number; to: number; changes: readonly Change[] }>();
  const [trouble, setTrouble] = useState('');

  useEffect(() => {
    let wanted = true;
    listRevisions(address).then(
      (list) => {
        if (wanted) setHistory({ upTo: revision, revisions: list.toSorted((a, b) => b.revision - a.revision) });
      },
      () => {
        if (wanted) setTrouble('The history did not come; the server does not answer.');
      },
    );
    return () => {
      wanted = false;
    };
  }, [address, revision]);

  const compare = async (from: number, to: number): Promise<void> => {
    try {
      const [before, after] = await Promise.all([readRevision(address, from), readRevision(address, to)]);
      setCompared({ from, to, changes: changesBetween(before.document, after.document) });
      setTrouble('');
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : 'It could not be compared.');
    }
  };
  const restore = async (number: number): Promise<void> => {
    try {
      await restoreRevision(address, number);
      open.refresh();
      setTrouble('');
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : 'It could not be brought back.');
    }
  };
  return (
    <section className="history" aria-labelledby="history-heading">
      <h3 className="large" id="history-heading">
        History
      </h3>
      <p className="secondary">Nothing is ever lost: bringing an earlier state back is a new revision too.</p>
      {trouble !== '' && (
        <p className="refusal" role="alert">
          {trouble}
        </p>
      )}
      {compared && <Compared {...compared} />}
      <table>
        <caption>Revisions, the latest first</caption>
        <thead>
          <tr>
            <th scope="col">Revision</th>
            <th scope="col">Kept</th>
            <th scope="col">From</th>
            <th scope="col">Look and go back</th>
          </tr>
        </thead>
        <tbody>
          {(history?.revisions ?? []).map((r) => (
            <tr key={r.revision}>
              <th scope="row">{r.revision}</th>
              <td data-label="Kept">{timeWords(r.at)}</td>
              <td data-label="From">
                {r.undoes === undefined
                  ? r.by === client
                    ? 'this window'
                    : r.by === undefined
                      ? 'the start'
                      : 'another window'
                  : `takes back ${r.undoes}`}
              </td>
              <td className="tools">
                {r.revision > 1 && (
                  <button
                    type="button"
                    onClick={() => void compare(r.revision - 1, r.revision)}
                    aria-label={`What changed: revision ${r.revision}`}
                  >
                    What changed
                  </button>
                )}
                {r.revision !== revision && (
                  <>
                    <button
                      type="button"
                      onClick={() => void compare(r.revision, revision)}
                      aria-label={`Compare with now: revision ${r.revision}`}
                    >
                      Compare with now
                    </button>
                    <button
                      type="button"
                      onClick={() => void restore(r.revision)}
                      aria-label={`Bring back: revision ${r.revision}`}
                    >
                      Bring back
                    </button>
                  </>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Compared({ from, to, changes }: { from: number; to: number; changes: readonly Change[] }) {
  return (
    <div className="compared" role="status">
      <h4>
        From revision {from} to revision {to}
      </h4>
      {changes.length === 0 ? (
        <p>Nothing differs.</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Before</th>
              <th scope="col">After</th>
            </tr>
          </thead>
          <tbody>
            {changes.map((c) => (
              <tr key={c.path}>
                <th scope="row">{pathWords(c.path)}</th>
                <td data-label="Before">{c.before}</td>
                <td data-label="After">{c.after}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
}

function changesBetween(before: Json, after: Json): Change[] {
  return differingPaths(before, after).map((path) => ({
    path,
    before: valueWords(placed(before, path)),
    after: valueWords(placed(after, path)),
  }));
}

/** The value at a path in which records go by their id; of an order, the ids in it. */
function placed(document: Json, path: string): Json | undefined {
  const [where = '', order] = path.split(': ');
  const value = (where.match(/[^.[\]]+/g) ?? []).reduce<Json | undefined>((node, step) => {
    if (!Array.isArray(node)) return valueAt(node, [step]);
    return node.find((entry) => valueAt(entry, ['id']) === step);
  }, document);
  return order === undefined || !Array.isArray(value) ? value : value.map((entry) => valueAt(entry, ['id']) ?? '');
}

function timeWords(at: string): string {
  const time = new Date(at);
  return Number.isNaN(time.getTime())
    ? at
    : time.toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}
