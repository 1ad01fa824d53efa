/** A test as it is being written down; it counts only once all that it needs is there. */
import type { Json } from '@sparewright/core/job/merge';
import { type ReactNode, useState } from 'react';
import { freeId, isObject, listAt, type Path, textAt, withValue } from '../document.ts';
import type { FieldSpec } from '../forms/fields.ts';
import { Fields } from '../forms/record-table.tsx';
import type { Form } from '../use-job.ts';
import { SetUpPicture } from './set-up-picture.tsx';
import { type BegunTest, kinds } from './test-kinds.ts';

interface Props {
  readonly workshop: Form;
  readonly begun: BegunTest;
  readonly fields: readonly FieldSpec[];
  /** More of the form, over the same record. */
  readonly more?: ((form: Form) => ReactNode) | undefined;
  /** What is still missing beside empty fields; empty when nothing is. */
  readonly lacks?: ((record: Json) => string) | undefined;
  /** Last touch before it is written down. */
  readonly finish?: ((record: Json) => Json) | undefined;
}

export function NewTest({ workshop, begun, fields, more, lacks, finish }: Props) {
  const { kind } = begun;
  const path: Path = ['lathe', 'tests', kind];
  const tests = listAt(workshop.document, path);
  const { one, stem } = kinds[kind];
  const state = textAt(workshop.document, ['lathe', 'tests', 'state']);
  const begins = { ...kinds[kind].begins, ...(state === '' ? {} : { state }), ...begun.begins };
  const [record, setRecord] = useState<Json>(() => ({ ...begins, ...lastBar(tests) }));
  const [said, setSaid] = useState('');
  const form: Form = {
    document: record,
    refusals: {},
    put: (at, value) => setRecord((r) => withValue(r, at, value)),
    edit: (change) => setRecord(change),
  };
  const shown = fields.filter((f) => f.of === undefined || f.of(record));
  const empty = shown.filter((f) => f.needed && textAt(record, f.path).trim() === '');
  const missing = [...empty.map((f) => f.title.toLowerCase()), lacks?.(record) ?? ''].filter((w) => w !== '');
  const write = (): void => {
    const whole = finish?.(record) ?? record;
    workshop.edit((document) => {
      const list = listAt(document, path);
      return withValue(document, path, [...list, { id: freeId(stem, list), ...(isObject(whole) ? whole : {}) }]);
    });
    setRecord({ ...begins, ...lastBar([record]) });
    setSaid(`${one} written down`);
  };
  return (
    <section className="new-test" aria-label={`New ${one}`}>
      <SetUpPicture kind={kind} record={record} />
      <Fields form={form} at={[]} title={`New ${one}`} fields={shown} />
      {more?.(form)}
      <p>
        <button type="button" disabled={missing.length > 0} onClick={write}>
          Write it down
        </button>{' '}
        <span role="status" className="understood">
          {missing.length > 0 && missing.length < shown.length ? `Still open: ${missing.join(', ')}` : said}
        </span>
      </p>
    </section>
  );
}

/** Tests are made in rows, on one bar. */
function lastBar(tests: readonly Json[]): { bar?: Json } {
  const last = tests.at(-1);
  const bar = isObject(last) ? last.bar : undefined;
  return bar === undefined ? {} : { bar };
}
