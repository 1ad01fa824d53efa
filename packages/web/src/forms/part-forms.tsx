/** The part, typed: its sections in their order, bores, grooves, threads, and what is made off the lathe. */
import type { Json } from '@sparewright/core/job/merge';
import { freeId, listAt, type Path, textAt, valueAt, withValue } from '../document.ts';
import { typedInto } from '../evidence/decide.ts';
import type { Form } from '../use-job.ts';
import { type Choice, choice, column, number, size, text, words, yes } from './fields.ts';
import { Fields, RecordTable } from './record-table.tsx';
import {
  boreColumns,
  farEdge,
  finish,
  is,
  leftEdge,
  name,
  nearEdge,
  rightEdge,
  sectionColumns,
  withKept,
} from './section-fields.ts';

const outside: Path = ['part', 'outside'];
const grooves: Path = ['part', 'grooves'];
const threads: Path = ['part', 'threads'];
const notTurned: Path = ['part', 'notTurned'];
const bores = { left: ['part', 'inside', 'left'], right: ['part', 'inside', 'right'] } as const;

export function PartForms({ form: job }: { readonly form: Form }) {
  // Whoever types a size settles it.
  const form: Form = { ...job, put: (at, value) => job.edit((document) => typedInto(document, at, value)) };
  const sections = choicesFrom(listAt(form.document, outside));
  const carriers = [
    ...sections,
    ...choicesFrom([...listAt(form.document, bores.left), ...listAt(form.document, bores.right)]),
  ];
  const on = (choices: readonly Choice[]) => column(choice('on', 'On', { choices, needed: true }));
  return (
    <>
      <h3 className="large">Change the part</h3>
      <Fields
        form={form}
        at={['part']}
        title="The whole part"
        fields={[
          text('name', 'Name of the part', { needed: true }),
          text('material', 'Material, as you name it'),
          choice('generalTolerance', 'Sizes without limits', { choices: toleranceClasses }),
          finish,
          size('edgeBreak', 'Edges broken by'),
          size('minimumWall', 'Thinnest wall'),
        ]}
      />
      <RecordTable
        form={form}
        path={outside}
        title="Sections, from the left face to the right"
        one="section"
        columns={sectionColumns}
        more={[...leftEdge, ...rightEdge, finish]}
        moreTitle="Edges and finish"
        ordered
        add={addSection}
        remove={removeSection}
      />
      {listAt(form.document, outside).map((section, i) =>
        is('curve')(section) ? (
          <RecordTable
            key={textAt(section, ['id'])}
            form={form}
            path={[...outside, i, 'points']}
            title={`Points of the curve of the ${textAt(section, ['name']) || textAt(section, ['id'])}, from its left end`}
            one="point"
            columns={[
              column(size('along', 'From its left end', { needed: true })),
              column(size('diameter', 'Diameter there', { needed: true })),
            ]}
            ordered
            add={(document) => listAt(document, [...outside, i, 'points']).at(-1) ?? { along: '0', diameter: '10 mm' }}
          />
        ) : null,
      )}
      {(['left', 'right'] as const).map((side) => (
        <RecordTable
          key={side}
          form={form}
          path={bores[side]}
          title={`Bores from the ${side} face, in the order in which they follow inward`}
          one="bore"
          columns={boreColumns}
          more={[
            ...nearEdge,
            ...farEdge,
            number('pointAngle', 'Point of the drill', { unit: '°', of: is('drilled') }),
            finish,
          ]}
          moreTitle="Edges and finish"
          ordered
          add={(document) => ({ id: newId(document, 'bore'), name: 'bore', kind: 'bored' })}
        />
      ))}
      <RecordTable
        form={form}
        path={grooves}
        title="Grooves"
        one="groove"
        columns={[
          name,
          on(carriers),
          column(size('along', 'From its left end')),
          column(size('width', 'Width')),
          column(size('floorDiameter', 'Floor Ø')),
          column(choice('purpose', 'For', { choices: groovePurposes, needed: true })),
        ]}
        more={[size('floorRadius', 'Radius at the floor'), size('edgeRadius', 'Edges broken by'), finish]}
        moreTitle="Radii and finish"
        add={(document) => ({ id: newId(document, 'groove'), on: firstSection(document), purpose: 'other' })}
      />
      <RecordTable
        form={form}
        path={threads}
        title="Threads"
        one="thread"
        columns={[
          on(carriers),
          column(text('designation', 'Thread, as you write it')),
          column(size('length', 'Full thread for')),
          column(choice('from', 'Begins at its', { choices: threadEnds })),
        ]}
        add={(document) => ({ id: newId(document, 'thread'), on: firstSection(document), from: 'end' })}
      />
      <NotTurnedTable form={form} sections={sections} />
    </>
  );
}

function NotTurnedTable({ form, sections }: { readonly form: Form; readonly sections: readonly Choice[] }) {
  const inFace = is('hexagon socket', 'slot');
  return (
    <RecordTable
      form={form}
      path={notTurned}
      title="Made off the lathe: hexagons, flats, cross holes, slots, knurls"
      one="feature"
      columns={[
        name,
        column(
          choice('kind', 'Kind', { choices: words(...Object.keys(offLathe)), needed: true, become: offLatheOfKind }),
        ),
        {
          title: 'Where',
          fields: [
            choice('face', 'Face', { of: inFace, choices: words('left', 'right'), needed: true }),
            choice('on', 'On', { of: (r) => !inFace(r), choices: sections, needed: true }),
            size('along', 'From its left end', { of: is('flats', 'cross hole') }),
          ],
        },
        {
          title: 'Sizes',
          fields: [
            size('acrossFlats', 'Across flats', { of: is('hexagon socket', 'hexagon', 'flats') }),
            size('diameter', 'Diameter', { of: is('cross hole') }),
            size('width', 'Width', { of: is('slot') }),
            size('depth', 'Depth', { of: inFace }),
            size('length', 'Length', { of: is('flats') }),
            size('pitch', 'Pitch', { of: is('knurl') }),
          ],
        },
        {
          title: 'How',
          fields: [
            choice('made', 'Made', {
              of: is('hexagon socket'),
              choices: words('broached', 'bonded insert', 'pinned insert'),
            }),
            number('count', 'Flats', { of: is('flats'), needed: true }),
            yes('through', 'Through both walls', { of: is('cross hole') }),
            choice('pattern', 'Pattern', { of: is('knurl'), choices: words('straight', 'diamond'), needed: true }),
          ],
        },
      ]}
      add={(document) => ({ id: newId(document, 'feature'), kind: 'slot', face: 'left' })}
    />
  );
}

const toleranceClasses: readonly Choice[] = [
  { value: 'f', words: 'ISO 2768 fine' },
  { value: 'm', words: 'ISO 2768 medium' },
  { value: 'c', words: 'ISO 2768 coarse' },
  { value: 'v', words: 'ISO 2768 very coarse' },
];
const groovePurposes = words('o-ring', 'square seal', 'retaining ring', 'thread relief', 'oil', 'other');
const threadEnds: readonly Choice[] = [
  { value: 'start', words: 'left end' },
  { value: 'end', words: 'right end' },
];

/** What each kind cannot be without. */
const offLathe: Readonly<Record<string, (on: string) => Json>> = {
  'hexagon socket': () => ({ face: 'left' }),
  hexagon: (on) => ({ on }),
  flats: (on) => ({ on, count: 2 }),
  'cross hole': (on) => ({ on, through: true }),
  slot: () => ({ face: 'left' }),
  knurl: (on) => ({ on, pattern: 'straight' }),
};

function offLatheOfKind(record: Json, kind: string): Json {
  const on = textAt(record, ['on']);
  const needed = offLathe[kind]?.(on);
  const common = { id: textAt(record, ['id']), kind };
  const named = withKept(common, 'name', valueAt(record, ['name']));
  return typeof needed === 'object' && needed !== null && typeof named === 'object' && named !== null
    ? { ...named, ...needed }
    : named;
}

function choicesFrom(records: readonly Json[]): Choice[] {
  return records.map((r) => {
    const value = textAt(r, ['id']);
    return { value, words: textAt(r, ['name']) || value.replaceAll('-', ' ') };
  });
}

/** Grooves, threads and the rest refer to sections by a name that nothing else in the part may have. */
function newId(document: Json, stem: string): string {
  const lists = [outside, bores.left, bores.right, grooves, threads, notTurned];
  return freeId(
    stem,
    lists.flatMap((list) => listAt(document, list)),
  );
}

const firstSection = (document: Json): string => textAt(listAt(document, outside)[0] ?? '', ['id']);

/** A new section goes on with the diameter of the last one. */
function addSection(document: Json): Json {
  const last = listAt(document, outside).at(-1);
  const diameter = textAt(last, ['diameter']) || textAt(last, ['endDiameter']) || '10 mm';
  return { id: newId(document, 'section'), name: 'new section', kind: 'cylinder', diameter, length: '5 mm' };
}

/** What stood on a section goes with it. */
function removeSection(document: Json, place: number): Json {
  const id = textAt(listAt(document, outside)[place], ['id']);
  const others = [grooves, threads, notTurned].reduce<Json>((changed, list) => {
    const records = listAt(changed, list);
    const left = records.filter((r) => textAt(r, ['on']) !== id);
    return left.length === records.length ? changed : withValue(changed, list, left);
  }, document);
  return withValue(
    others,
    outside,
    listAt(others, outside).filter((_, i) => i !== place),
  );
}
