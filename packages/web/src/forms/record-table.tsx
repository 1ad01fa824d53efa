/** A list of records as a table one types into: rows added, moved and removed. */

import type { Json } from '@sparewright/core/job/merge';
import { useRef, useState } from 'react';
import { listAt, moved, type Path, pathText, textAt, withValue } from '../document.ts';
import type { Form } from '../use-job.ts';
import { Field } from './field.tsx';
import type { Column, FieldSpec } from './fields.ts';

export interface RecordTableSpec {
  readonly path: Path;
  /** Over the table. */
  readonly title: string;
  readonly columns: readonly Column[];
  /** Below a row, when it is unfolded. */
  readonly more?: readonly FieldSpec[] | undefined;
  readonly moreTitle?: string | undefined;
  /** What one record is: `section`. */
  readonly one: string;
  readonly add: (document: Json) => Json;
  /** Whether the order says something. */
  readonly ordered?: boolean | undefined;
  /** Another way of taking a record out than leaving it out of its list. */
  readonly remove?: ((document: Json, place: number) => Json) | undefined;
}

interface Props extends RecordTableSpec {
  readonly form: Form;
}

export function RecordTable({ form, ...spec }: Props) {
  const { path, title, columns, one, ordered } = spec;
  const records = listAt(form.document, path);
  const table = useRef<HTMLTableElement>(null);
  const [said, setSaid] = useState('');

  const change = (what: string, edit: (document: Json) => Json, focusRow?: number): void => {
    form.edit(edit);
    setSaid(what);
    if (focusRow === undefined) return;
    // The row is there once the change is on the page.
    requestAnimationFrame(() => table.current?.querySelectorAll('tbody')[focusRow]?.querySelector('input')?.focus());
  };
  const add = () =>
    change(
      `${one} added`,
      (document) => withValue(document, path, [...listAt(document, path), spec.add(document)]),
      records.length,
    );
  const move = (from: number, to: number) =>
    change(`${nameOf(records[from], one, from)} moved`, (document) =>
      withValue(document, path, moved(listAt(document, path), from, to)),
    );
  const remove = (place: number) =>
    change(`${nameOf(records[place], one, place)} removed; Undo brings it back`, (document) =>
      spec.remove
        ? spec.remove(document, place)
        : withValue(
            document,
            path,
            listAt(document, path).filter((_, i) => i !== place),
          ),
    );
  const refusal = form.refusals[pathText(path)];
  return (
    <section className="records" aria-label={title}>
      {records.length > 0 && (
        <table ref={table}>
          <caption>{title}</caption>
          <thead>
            <tr>
              {columns.map((c) => (
                <th key={c.title} scope="col">
                  {c.title}
                  {unitOf(c) !== undefined && <span className="unit">, {unitOf(c)}</span>}
                </th>
              ))}
              <th scope="col">
                <span className="unseen">Change the list</span>
              </th>
            </tr>
          </thead>
          {records.map((record, i) => (
            <Row
              key={textAt(record, ['id']) || i}
              form={form}
              spec={spec}
              record={record}
              place={i}
              tools={
                <>
                  {ordered && i > 0 && <Tool words="Up" of={nameOf(record, one, i)} press={() => move(i, i - 1)} />}
                  {ordered && i < records.length - 1 && (
                    <Tool words="Down" of={nameOf(record, one, i)} press={() => move(i, i + 1)} />
                  )}
                  <Tool words="Remove" of={nameOf(record, one, i)} press={() => remove(i)} />
                </>
              }
            />
          ))}
        </table>
      )}
      {records.length === 0 && <p className="secondary">{title}: none yet.</p>}
      {refusal !== undefined && <p className="refusal">{refusal}</p>}
      <p className="after-records">
        <button type="button" onClick={add}>
          Add a {one}
        </button>{' '}
        <span role="status" className="understood">
          {said}
        </span>
      </p>
    </section>
  );
}

interface RowProps {
  readonly form: Form;
  readonly spec: RecordTableSpec;
  readonly record: Json;
  readonly place: number;
  readonly tools: React.ReactNode;
}

function Row({ form, spec, record, place, tools }: RowProps) {
  const at = [...spec.path, place];
  const name = nameOf(record, spec.one, place);
  const more = (spec.more ?? []).filter((f) => hasField(record, f));
  const refusedInside = more.some((f) => form.refusals[pathText([...at, ...f.path])] !== undefined);
  return (
    <tbody>
      <tr>
        {spec.columns.map((c) => (
          <td key={c.title} data-label={c.title}>
            <div className="cell">
              <Cell form={form} at={at} column={c} record={record} of={name} />
            </div>
          </td>
        ))}
        <td className="tools">{tools}</td>
      </tr>
      {more.length > 0 && (
        <tr className="more">
          <td colSpan={spec.columns.length + 1}>
            <details className="folded" open={refusedInside || undefined}>
              <summary>
                {spec.moreTitle ?? 'More'}
                <span className="unseen"> of {name}</span>
              </summary>
              <div className="fields">
                {more.map((f) => (
                  <Field key={f.path.join('.')} form={form} at={at} spec={f} of={name} titled />
                ))}
              </div>
            </details>
          </td>
        </tr>
      )}
    </tbody>
  );
}

interface CellProps {
  readonly form: Form;
  readonly at: Path;
  readonly column: Column;
  readonly record: Json;
  readonly of: string;
}

/** A field says its own name where the heading of its column does not. */
function Cell({ form, at, column, record, of }: CellProps) {
  return column.fields
    .filter((f) => hasField(record, f))
    .map((f) => (
      <Field key={f.path.join('.')} form={form} at={at} spec={f} of={of} titled={f.title !== column.title} />
    ));
}

const hasField = (record: Json, { of }: FieldSpec): boolean => of === undefined || of(record);

function Tool({ words, of, press }: { readonly words: string; readonly of: string; readonly press: () => void }) {
  return (
    <button type="button" onClick={press} aria-label={`${words}: ${of}`}>
      {words}
    </button>
  );
}

function nameOf(record: Json | undefined, one: string, place: number): string {
  const name = record === undefined ? '' : textAt(record, ['name']) || textAt(record, ['id']).replaceAll('-', ' ');
  return name === '' ? `${one} ${place + 1}` : name;
}

function unitOf({ fields }: Column): string | undefined {
  return fields.length === 1 ? fields[0]?.unit : undefined;
}

/** Fields of one record, in a row of their own. */
export function Fields({
  form,
  at,
  fields,
  title,
}: {
  form: Form;
  at: Path;
  fields: readonly FieldSpec[];
  title: string;
}) {
  return (
    <fieldset className="fields">
      <legend>{title}</legend>
      {fields.map((f) => (
        <Field key={f.path.join('.')} form={form} at={at} spec={f} titled />
      ))}
    </fieldset>
  );
}
