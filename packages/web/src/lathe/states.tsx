/** Named states of the lathe, kept and compared: as it was, and after each alteration. */

import type { Json } from '@sparewright/core/job/merge';
import { alterableIds } from '@sparewright/core/lathe/elements';
import { useState } from 'react';
import { freeId, isObject, listAt, type Path, textAt, valueAt, withValue } from '../document.ts';
import { choice, text } from '../forms/fields.ts';
import { Fields } from '../forms/record-table.tsx';
import type { Form } from '../use-job.ts';
import { type Range, rangeWords } from './figures.ts';
import { partNames } from './part-names.ts';
import { testKinds } from './test-kinds.ts';
import { useAnswer } from './use-answer.ts';

const tests: Path = ['lathe', 'tests'];
const states: Path = [...tests, 'states'];

interface Props {
  readonly workshop: Form;
  /** Documents the questions are asked with. */
  readonly document: Json;
}

export function States({ workshop, document }: Props) {
  const named = listAt(workshop.document, states);
  const add = (): void =>
    workshop.edit((d) => {
      const id = freeId('state', listAt(d, states));
      return withValue(d, states, [...listAt(d, states), { id, name: 'after the change', changes: ['topSlide'] }]);
    });
  return (
    <section aria-labelledby="states">
      <h3 className="large" id="states">
        Before and after: states of the lathe
      </h3>
      <p className="secondary">
        Name what was altered and what may have changed by it; tests made since then are marked with that state. All
        that was not touched stays known.
      </p>
      {named.length > 0 && (
        <Fields
          form={workshop}
          at={tests}
          title="The lathe now"
          fields={[
            choice('state', 'State it is in', {
              choices: named.map((s) => ({ value: textAt(s, ['id']), words: textAt(s, ['name']) })),
            }),
          ]}
        />
      )}
      {named.map((s, i) => (
        <StateForm key={textAt(s, ['id'])} workshop={workshop} state={s} at={i} />
      ))}
      <p>
        <button type="button" onClick={add}>
          Name a state
        </button>
      </p>
      {named.length > 0 && <Compared document={document} named={named} />}
    </section>
  );
}

function StateForm({ workshop, state, at }: { readonly workshop: Form; readonly state: Json; readonly at: number }) {
  const path = [...states, at];
  const changes = listAt(state, ['changes']);
  const toggle = (id: string): void => {
    const next = changes.includes(id) ? changes.filter((c) => c !== id) : [...changes, id];
    // A state that changes nothing would be the one before it.
    if (next.length > 0) workshop.put([...path, 'changes'], next);
  };
  const name = textAt(state, ['name']);
  return (
    <div className="state">
      <Fields
        form={workshop}
        at={path}
        title={`State ${at + 1}`}
        fields={[text('name', 'What was altered', { needed: true, wide: true })]}
      />
      <fieldset className="changes">
        <legend>May have changed by it</legend>
        {alterableIds.map((id) => (
          <label key={id}>
            <input type="checkbox" checked={changes.includes(id)} onChange={() => toggle(id)} /> {partNames[id]}
          </label>
        ))}
      </fieldset>
      <p>
        <button
          type="button"
          aria-label={`Remove this state and its tests: ${name}`}
          onClick={() => workshop.edit((d) => withoutState(d, textAt(state, ['id'])))}
        >
          Remove this state and its tests
        </button>
      </p>
    </div>
  );
}

/** A test of a state that is not there would say nothing. */
function withoutState(document: Json, id: string): Json {
  const kept = testKinds.reduce((d, kind) => {
    const path = [...tests, kind];
    const list = listAt(d, path);
    return list.length === 0
      ? d
      : withValue(
          d,
          path,
          list.filter((t) => textAt(t, ['state']) !== id),
        );
  }, document);
  const without = withValue(
    kept,
    states,
    listAt(kept, states).filter((s) => textAt(s, ['id']) !== id),
  );
  return textAt(without, [...tests, 'state']) === id ? withValue(without, [...tests, 'state'], undefined) : without;
}

const original = '';

function Compared({ document, named }: { readonly document: Json; readonly named: readonly Json[] }) {
  const [pair, setPair] = useState<readonly [string, string]>([original, textAt(named.at(-1), ['id'])]);
  const [a, b] = pair.map((id) => (named.some((s) => textAt(s, ['id']) === id) ? id : original));
  const before = useAnswer('lathe-knowledge', askedOf(document, a ?? original));
  const after = useAnswer('lathe-knowledge', askedOf(document, b ?? original));
  const gives = [
    useAnswer('stiffness-budget', askedOf(document, a ?? original)),
    useAnswer('stiffness-budget', askedOf(document, b ?? original)),
  ];
  const choices = [['', 'as it was at first'], ...named.map((s) => [textAt(s, ['id']), textAt(s, ['name'])])];
  const select = (which: 0 | 1, label: string) => (
    <label>
      {label}{' '}
      <select
        value={pair[which]}
        onChange={(e) => setPair(which === 0 ? [e.target.value, pair[1]] : [pair[0], e.target.value])}
      >
        {choices.map(([id, words]) => (
          <option key={id} value={id}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
  const rows = (before.answer?.elements ?? []).flatMap((e) => {
    const other = after.answer?.elements.find((o) => o.id === e.id);
    return other && rangeWords(e.now) !== rangeWords(other.now) ? [{ e, other }] : [];
  });
  const trouble = before.trouble || after.trouble;
  return (
    <div className="compared">
      <p className="states-pair">
        {select(0, 'Compare')} {select(1, 'with')}
      </p>
      {trouble !== '' && <p className="refusal">{trouble}</p>}
      {before.answer && after.answer && rows.length === 0 && (
        <p role="status">Nothing that is known differs between the two.</p>
      )}
      {rows.length > 0 && (
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col">{choices.find(([id]) => id === a)?.[1]}</th>
              <th scope="col">{choices.find(([id]) => id === b)?.[1]}</th>
            </tr>
          </thead>
          <tbody>
            {gives[0]?.answer?.directions.map((d) => {
              const other = gives[1]?.answer?.directions.find((o) => o.direction === d.direction);
              return (
                other && (
                  <tr key={d.direction}>
                    <th scope="row">
                      A pin Ø10 × 40 gives, {directionWords[d.direction]} <span className="unit">µm under 100 N</span>
                    </th>
                    <td>{rangeWords(hundredfold(d.give))}</td>
                    <td>{rangeWords(hundredfold(other.give))}</td>
                  </tr>
                )
              );
            })}
            {rows.map(({ e, other }) => (
              <tr key={e.id}>
                <th scope="row">
                  {e.what} <span className="unit">{e.unit === '-' ? '' : e.unit}</span>
                </th>
                <td>{rangeWords(e.now)}</td>
                <td>{rangeWords(other.now)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
}

const directionWords = {
  radial: 'away from the axis',
  axial: 'along the axis',
  tangential: 'the way of the cutting force',
} as const;

/** From micrometres for a newton to those for a hundred. */
const hundredfold = ({ low, middle, high }: Range): Range => ({
  low: 100 * low,
  middle: 100 * middle,
  high: 100 * high,
});

/** The state asked about; the first one is that of a workshop that says no other is there now. */
function askedOf(workshop: Json, state: string): object {
  if (state !== original) return { workshop, state };
  const { state: _, ...rest } = objectAt(workshop, tests);
  return { workshop: withValue(workshop, tests, rest) };
}

function objectAt(document: Json, path: Path) {
  const value = valueAt(document, path);
  return isObject(value) ? value : {};
}
