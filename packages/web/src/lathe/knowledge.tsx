/** What is known of the lathe, element by element; what each test taught; which one is worth doing next. */
import type { Json } from '@sparewright/core/job/merge';
import { listAt, textAt } from '../document.ts';
import { rangeWords } from './figures.ts';
import { type BegunTest, kinds, testKinds, testWords } from './test-kinds.ts';
import type { useAnswer } from './use-answer.ts';

type Knowledge = NonNullable<ReturnType<typeof useAnswer<'lathe-knowledge'>>['answer']>;

const mostNext = 3;

export function NextTests({
  knowledge,
  choose,
}: {
  readonly knowledge: Knowledge;
  readonly choose: (test: BegunTest) => void;
}) {
  const next = knowledge.next.slice(0, mostNext);
  return (
    <section aria-labelledby="next-tests">
      <h3 className="large" id="next-tests">
        Which test is worth doing next
      </h3>
      <ol className="next-tests">
        {next.map((n) => (
          <li key={n.test}>
            <p>
              <strong>{n.test}</strong>, about {n.minutes} min: {n.how}.
            </p>
            <p className="secondary">
              {gainWords(n)}{' '}
              <button type="button" onClick={() => choose(begunOf(n.test))}>
                Write it down<span className="unseen">: {n.test}</span>
              </button>
            </p>
          </li>
        ))}
      </ol>
    </section>
  );
}

function gainWords({ give, limit }: Knowledge['next'][number]): string {
  const gains = [
    { gain: 1 - give, of: 'how far a pin Ø10 × 40 gives way' },
    { gain: 1 - limit, of: 'when it sings' },
  ].filter(({ gain }) => gain >= 0.01);
  if (gains.length === 0) return 'Teaches hardly anything about a pin Ø10 × 40.';
  return `Takes ${gains.map(({ gain, of }) => `${share(gain)} off the doubt ${of}`).join(', ')}.`;
}

const share = (value: number) => `${Math.round(100 * Math.max(0, value))} %`;

/** The form of a test that is proposed, begun with what its name says. */
function begunOf(test: string): BegunTest {
  const at = /at the (.+)$/.exec(test)?.[1];
  if (test.includes('tap')) return { kind: 'taps', begins: at === undefined ? {} : { at } };
  if (at === undefined) return { kind: 'pushes', begins: { at: 'spindle nose', direction: 'axial' } };
  return { kind: 'pushes', begins: { at, direction: 'radial' } };
}

export function Taught({ knowledge, document }: { readonly knowledge: Knowledge; readonly document: Json }) {
  if (knowledge.learnt.length === 0) return null;
  return (
    <section aria-labelledby="taught">
      <h3 className="large" id="taught">
        What each test taught
      </h3>
      <ul className="taught">
        {knowledge.learnt.map((l) => (
          <li key={l.test}>
            <strong>{wordsOf(l.test, document) ?? l.what}</strong>
            {l.changed.length === 0 ? (
              <p>Nothing that was not known already.</p>
            ) : (
              <table className="figures">
                <thead>
                  <tr>
                    <th scope="col">Part</th>
                    <th scope="col">Before</th>
                    <th scope="col">After</th>
                  </tr>
                </thead>
                <tbody>
                  {l.changed.map((c) => (
                    <tr key={c.id}>
                      <th scope="row">
                        {c.what} <span className="unit">{c.unit === '-' ? '' : c.unit}</span>
                      </th>
                      <td>{rangeWords(c.from)}</td>
                      <td>{rangeWords(c.to)}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The test as it was typed; undefined when it is no longer there. */
function wordsOf(id: string, document: Json): string | undefined {
  const own = id.replace(' (dying away)', '');
  for (const kind of testKinds) {
    const tests = listAt(document, ['lathe', 'tests', kind]);
    const at = tests.findIndex((t) => textAt(t, ['id']) === own);
    const test = tests[at];
    if (test !== undefined)
      return `${kinds[kind].one} ${at + 1}: ${testWords(kind, test)}${own === id ? '' : ', its dying away'}`;
  }
  return undefined;
}

export function Elements({ knowledge }: { readonly knowledge: Knowledge }) {
  return (
    <section aria-labelledby="elements">
      <h3 className="large" id="elements">
        What is known, part by part
      </h3>
      <p className="secondary">
        The most likely value, and between which nine in ten such lathes lie. Doubt left: 100 % where nothing was
        learnt.
      </p>
      <table className="plain elements">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Unit</th>
            <th scope="col">Before any test</th>
            <th scope="col">Now</th>
            <th scope="col">Doubt left</th>
            <th scope="col">Rests on</th>
          </tr>
        </thead>
        <tbody>
          {knowledge.elements.map((e) => (
            <tr key={e.id}>
              <th scope="row">{e.what}</th>
              <td data-label="Unit">{e.unit === '-' ? '' : e.unit}</td>
              <td data-label="Before any test">{rangeWords(e.before)}</td>
              <td data-label="Now">{e.left < 0.995 ? <strong>{rangeWords(e.now)}</strong> : rangeWords(e.now)}</td>
              <td data-label="Doubt left">
                <span className="doubt">
                  <meter min={0} max={1} value={e.left} aria-label={`Doubt left: ${e.what}`} /> {share(e.left)}
                </span>
              </td>
              <td data-label="Rests on">
                <details className="folded">
                  <summary>
                    {e.basis}
                    <span className="unseen">: {e.what}</span>
                  </summary>
                  {e.note} <span className="source">{e.source}</span>
                </details>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
