/** What was measured, typed: originals in hand, readings, and what an old manual says. */
import type { Json } from '@sparewright/core/job/merge';
import type { SizeRow } from '@sparewright/output/present/job-view';
import { freeId, listAt, type Path, textAt } from '../document.ts';
import type { Form } from '../use-job.ts';
import { conditions } from './choices.ts';
import { type Choice, choice, column, number, size, text, words } from './fields.ts';
import { RecordTable } from './record-table.tsx';

interface Props {
  readonly form: Form;
  readonly sizes: readonly SizeRow[];
  /** Of the workshop. */
  readonly gauges: readonly Choice[];
}

export function EvidenceForms({ form, sizes, gauges }: Props) {
  return (
    <>
      <h3 className="large">Enter what you measured</h3>
      <RecordTable
        form={form}
        path={specimens}
        title="Originals in hand"
        one="specimen"
        columns={[
          column(text('name', 'Which one', { needed: true, wide: true })),
          column(text('note', 'Its state', { wide: true })),
        ]}
        add={(document) => ({ id: freeId('specimen', listAt(document, specimens)), name: 'original' })}
      />
      <ReadingTable
        form={form}
        sizes={sizes}
        gauges={gauges}
        path={['evidence', 'readings']}
        title="Readings"
        originals
      />
      <RecordTable
        form={form}
        path={manual}
        title="Limits from a manual or an old drawing"
        one="limit"
        columns={[
          column(choice('of', 'Of', { choices: dimensionsOf(form, sizes), needed: true, wide: true })),
          column(size('size', 'Size with its limits', { needed: true })),
          column(text('note', 'Where it stands', { wide: true })),
        ]}
        add={(document) => ({
          of: dimensionsOf(form, sizes)[0]?.value ?? '',
          size: listAt(document, manual).length === 0 ? '10 ±0.1' : '10',
        })}
      />
    </>
  );
}

const specimens: Path = ['evidence', 'specimens'];
const manual: Path = ['evidence', 'manual'];

export function InspectionForms({ form, sizes, gauges }: Props) {
  return (
    <>
      <h3 className="large">Enter what the new part measures</h3>
      <ReadingTable
        form={form}
        sizes={sizes}
        gauges={gauges}
        path={['inspection', 'readings']}
        title="Readings on the new part"
        originals={false}
      />
    </>
  );
}

interface ReadingsProps extends Props {
  readonly path: Path;
  readonly title: string;
  /** Taken on worn originals, whose state matters. */
  readonly originals: boolean;
}

function ReadingTable({ form, sizes, gauges, path, title, originals }: ReadingsProps) {
  const dimensions = dimensionsOf(form, sizes);
  const taken: Choice[] = [
    ...listAt(form.document, specimens).map(named),
    ...listAt(form.document, ['mates']).map(named),
  ];
  return (
    <RecordTable
      form={form}
      path={path}
      title={title}
      one="reading"
      columns={[
        column(choice('of', 'Of', { choices: dimensions, needed: true, wide: true })),
        column(size('value', 'The gauge showed', { needed: true })),
        column(choice('gauge', 'Gauge', { choices: gauges })),
        column(size('along', 'Along')),
        column(number('angle', 'Round', { unit: '°' })),
        ...(originals
          ? [
              column(choice('condition', 'Surface there', { choices: words(...conditions) })),
              column(choice('specimen', 'On', { choices: taken })),
            ]
          : []),
      ]}
      more={[
        number('temperature', 'Temperature of the part', { unit: '°C' }),
        number('crests', 'Pitches spanned, for a thread'),
        text('note', 'Note', { wide: true }),
      ]}
      add={(document) => nextReading(document, path, dimensions[0]?.value ?? 'section.diameter')}
    />
  );
}

/** Readings come in rows: the next one is of the same size, with the same gauge, until it is said otherwise. */
function nextReading(document: Json, path: Path, first: string): Json {
  const readings = listAt(document, path);
  const last = readings.at(-1);
  const same = ['of', 'gauge', 'specimen', 'condition'].flatMap((key): [string, Json][] => {
    const value = textAt(last, [key]);
    return value === '' ? [] : [[key, value]];
  });
  return { of: first, ...Object.fromEntries(same), id: freeId('r', readings), value: '' };
}

function dimensionsOf(form: Form, sizes: readonly SizeRow[]): Choice[] {
  const mates = listAt(form.document, ['mates']).map(named);
  return [
    ...sizes.map(({ id, title }) => ({ value: id, words: title })),
    ...mates.map(({ value, words: what }) => ({ value: `${value}.size`, words: `size of the ${what}` })),
  ];
}

function named(record: Json): Choice {
  const value = textAt(record, ['id']);
  return { value, words: textAt(record, ['name']) || value };
}
