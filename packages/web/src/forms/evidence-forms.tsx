/** What was measured, typed: originals in hand, readings, and what an old manual says. */

import { conditions } from '@sparewright/core/evidence/reading-kinds';
import type { Json } from '@sparewright/core/job/merge';
import type { SizeRow } from '@sparewright/output/present/job-view';
import { freeId, listAt, type Path, textAt } from '../document.ts';
import { measuredSizes } from '../evidence/measured-sizes.ts';
import type { Form } from '../use-job.ts';
import { type Choice, choice, column, number, size, text, words } from './fields.ts';
import { RecordTable } from './record-table.tsx';

interface Props {
  readonly form: Form;
  readonly sizes: readonly SizeRow[];
  /** Of the workshop. */
  readonly gauges: readonly Choice[];
}

/** The heading over these is that of the next reading. */
export function EvidenceForms({ form, sizes, gauges }: Props) {
  const threads = listAt(form.document, ['part', 'threads']).map((t): Choice => {
    const value = textAt(t, ['id']);
    return { value, words: `thread on the ${textAt(t, ['on']).replaceAll('-', ' ')}` };
  });
  return (
    <>
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
          column(choice('of', 'Of', { choices: measuredSizes(form, sizes), needed: true, wide: true })),
          column(size('size', 'Size with its limits', { needed: true })),
          column(text('note', 'Where it stands', { wide: true })),
        ]}
        add={(document) => ({
          of: measuredSizes(form, sizes)[0]?.value ?? '',
          size: listAt(document, manual).length === 0 ? '10 ±0.1' : '10',
        })}
      />
      {(threads.length > 0 || listAt(form.document, flankAngles).length > 0) && (
        <RecordTable
          form={form}
          path={flankAngles}
          title="Flank angles of threads, found with gauges against the light"
          one="flank angle"
          columns={[
            column(choice('of', 'Of the thread', { choices: threads, needed: true, wide: true })),
            column(number('angle', 'Between the flanks', { unit: '°', needed: true })),
            column(number('uncertainty', 'Sure to, one standard uncertainty', { unit: '°' })),
          ]}
          add={() => ({ of: threads[0]?.value ?? '', angle: 60 })}
        />
      )}
    </>
  );
}

const specimens: Path = ['evidence', 'specimens'];
const manual: Path = ['evidence', 'manual'];
const flankAngles: Path = ['evidence', 'flankAngles'];

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
  const dimensions = measuredSizes(form, sizes);
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
        number('gaugeTemperature', 'Temperature of the gauge', { unit: '°C' }),
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

function named(record: Json): Choice {
  const value = textAt(record, ['id']);
  return { value, words: textAt(record, ['name']) || value };
}
