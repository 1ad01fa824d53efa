/** What the part must do, typed: loads, the parts it works against, its seals and joints. */
import type { Json } from '@sparewright/core/job/merge';
import type { SizeRow } from '@sparewright/output/present/job-view';
import { freeId, listAt, type Path, textAt } from '../document.ts';
import type { Form } from '../use-job.ts';
import { type Choice, choice, column, number, size, text, words } from './fields.ts';
import { Fields, RecordTable } from './record-table.tsx';

const mates: Path = ['mates'];
const seals: Path = ['duty', 'seals'];
const bonds: Path = ['duty', 'bonds'];

export function DutyForms({ form, sizes }: { readonly form: Form; readonly sizes: readonly SizeRow[] }) {
  const dimensions = sizes.map(({ id, title }) => ({ value: id, words: title }));
  const grooves = named(form, ['part', 'grooves']);
  const features = [...named(form, ['part', 'notTurned']), ...named(form, ['part', 'outside'])];
  const against = named(form, mates);
  return (
    <>
      <h3 className="large">Enter what it must do</h3>
      <Fields
        form={form}
        at={['duty']}
        title="Load"
        fields={[
          number('pressure', 'Highest pressure', { unit: 'MPa' }),
          text('medium', 'What it holds back'),
          number('temperature.from', 'Coldest', { unit: '°C' }),
          number('temperature.to', 'Hottest', { unit: '°C' }),
        ]}
      />
      <RecordTable
        form={form}
        path={mates}
        title="Parts it works against"
        one="mate"
        columns={[
          column(text('name', 'What it is', { needed: true })),
          column(choice('kind', 'It is a', { choices: words('bore', 'shaft'), needed: true })),
          column(choice('with', 'Meets', { choices: dimensions, needed: true })),
          column(size('size', 'Its size today')),
          column(text('material', 'Of')),
          { title: 'Clearance', fields: [size('wanted.least', 'Least'), size('wanted.most', 'Most')] },
        ]}
        more={[choice('sameAs', 'The same piece as', { choices: against }), text('note', 'Its state', { wide: true })]}
        add={(document) => ({
          id: freeId('mate', listAt(document, mates)),
          name: 'mating part',
          kind: 'bore',
          with: dimensions[0]?.value ?? 'section.diameter',
        })}
      />
      <RecordTable
        form={form}
        path={seals}
        title="Seals"
        one="seal"
        columns={[
          column(choice('groove', 'In the', { choices: grooves, needed: true })),
          column(choice('mate', 'Against the', { choices: against, needed: true })),
          column(text('ring', 'Ring: inside × thickness, or number', { needed: true })),
          column(text('elastomer', 'Rubber')),
          column(number('hardness', 'Hardness', { unit: 'Shore A', needed: true })),
          column(choice('motion', 'Motion', { choices: words('static', 'moving'), needed: true })),
        ]}
        add={(document) => ({
          id: freeId('seal', listAt(document, seals)),
          groove: first(document, ['part', 'grooves'], 'groove'),
          mate: first(document, mates, 'mate'),
          ring: '',
          hardness: 70,
          motion: 'static',
        })}
      />
      <RecordTable
        form={form}
        path={bonds}
        title="Bonded joints"
        one="joint"
        columns={[
          column(choice('feature', 'Bonded in', { choices: features, needed: true })),
          column(size('diameter', 'Diameter', { needed: true })),
          column(size('length', 'Engaged length', { needed: true })),
          column(size('gap', 'Gap on the diameter')),
          column(number('strength', 'Strength by its data sheet', { unit: 'MPa', needed: true })),
          {
            title: 'Carries',
            fields: [number('torque', 'Torque', { unit: 'N·m' }), number('force', 'Force', { unit: 'N' })],
          },
        ]}
        add={(document) => ({
          id: freeId('joint', listAt(document, bonds)),
          feature: features[0]?.value ?? 'section',
          diameter: '10 mm',
          length: '10 mm',
          strength: 20,
        })}
      />
    </>
  );
}

function named(form: Form, path: Path): Choice[] {
  return listAt(form.document, path).map((record) => {
    const value = textAt(record, ['id']);
    return { value, words: textAt(record, ['name']) || value.replaceAll('-', ' ') };
  });
}

function first(document: Json, path: Path, otherwise: string): string {
  return textAt(listAt(document, path)[0], ['id']) || otherwise;
}
