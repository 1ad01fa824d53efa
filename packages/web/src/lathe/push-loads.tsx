/** The loads of a push test, up and down: a few rows to fill in. */
import type { Json } from '@sparewright/core/job/merge';
import { listAt, textAt, withValue } from '../document.ts';
import { Field } from '../forms/field.tsx';
import { number } from '../forms/fields.ts';
import type { Form } from '../use-job.ts';

/** Usual loads; another may be typed in their place [N]. */
const usualLoads = [0, 50, 100, 150, 200];

const force = number('force', 'Force');
const up = number('up', 'While it rises');
const down = number('down', 'While it falls');

export function PushLoads({ form }: { readonly form: Form }) {
  const typed = listAt(form.document, ['readings']);
  const rows = usualLoads.map((load, i) => typed[i] ?? { force: load });
  // A row is there from the first letter typed into it, and those before it with it.
  const filled: Form = {
    ...form,
    document: { readings: rows },
    put: (path, value) =>
      form.edit((record) => withValue(withValue(record, ['readings'], [...readingsOf(record)]), path, value)),
  };
  return (
    <table className="figures loads">
      <caption>Readings of the indicator; leave out what you did not read</caption>
      <thead>
        <tr>
          {[
            ['Force', 'N'],
            ['While it rises', 'µm'],
            ['While it falls', 'µm'],
          ].map(([title, unit]) => (
            <th key={title} scope="col">
              {title} <span className="unit">{unit}</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, i) => (
          // Rows stand for their place; they are neither moved nor taken out.
          <tr key={usualLoads[i]}>
            {[force, up, down].map((spec) => (
              <td key={spec.title}>
                <Field
                  form={filled}
                  at={['readings', i]}
                  spec={spec}
                  of={`${textAt(row, ['force'])} N`}
                  titled={false}
                />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function readingsOf(record: Json): Json[] {
  const typed = listAt(record, ['readings']);
  return usualLoads.map((load, i) => typed[i] ?? { force: load });
}

const isRead = (row: Json) => textAt(row, ['up']) !== '' || textAt(row, ['down']) !== '';

/** What a push still lacks; empty when it says something. */
export function lackedByLoads(record: Json): string {
  const read = listAt(record, ['readings']).filter(isRead);
  return new Set(read.map((r) => textAt(r, ['force']))).size >= 2 ? '' : 'readings at two forces or more';
}

/** Without the rows nobody read. */
export function withReadLoads(record: Json): Json {
  return withValue(record, ['readings'], listAt(record, ['readings']).filter(isRead));
}
