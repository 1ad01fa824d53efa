/** The workshop's lists and the lathe's own numbers, as fields. */

import { cutterKinds, drillKinds } from '@sparewright/core/cutting/cutter-kinds';
import { edgeConditions } from '@sparewright/core/cutting/edge';
import { gaugeKinds } from '@sparewright/core/evidence/reading-kinds';
import { bearingKinds } from '@sparewright/core/lathe/prior-beliefs';
import { freeId, listAt, textAt, withValue } from '../document.ts';
import { choice, column, type FieldSpec, number, numbers, prose, size, text, words } from '../forms/fields.ts';
import type { RecordTableSpec } from '../forms/record-table.tsx';
import type { WorkshopPart } from '../place.ts';

const materials = words('high-speed steel', 'carbide');
const name = (title: string) => column(text('name', title, { needed: true, wide: true }));

const dial = (key: string, title: string, needed: boolean): FieldSpec[] => [
  size(`dials.${key}.division`, `${title}: one division`, { needed }),
  size(`dials.${key}.perTurn`, `${title}: one turn`, { needed }),
  choice(`dials.${key}.reads`, `${title} reads`, { choices: words('radius', 'diameter', 'travel'), needed }),
];

export const wholeWorkshop: readonly FieldSpec[] = [
  text('name', 'Whose workshop', { needed: true, wide: true }),
  prose('note', 'Note', { wide: true }),
];

/** Groups of fields of the lathe. */
export const latheFields: readonly { readonly title: string; readonly fields: readonly FieldSpec[] }[] = [
  {
    title: 'The lathe',
    fields: [
      text('name', 'What it is called', { needed: true, wide: true }),
      size('swing', 'Largest diameter over the bed', { needed: true }),
      size('swingOverSlide', 'Largest diameter over the cross slide'),
      size('betweenCentres', 'Between centres', { needed: true }),
      size('spindleBore', 'Largest bar through the spindle', { needed: true }),
    ],
  },
  {
    title: 'Speeds and drive',
    fields: [
      choice('speeds.kind', 'Speeds are', {
        choices: [
          { value: 'steps', words: 'in steps' },
          { value: 'range', words: 'any in a range' },
        ],
        needed: true,
        become: (lathe, kind) =>
          withValue(
            lathe,
            ['speeds'],
            kind === 'range' ? { kind, from: 100, to: 2000 } : { kind: 'steps', rpm: [125, 250, 500, 1000] },
          ),
      }),
      numbers('speeds.rpm', 'Steps, one after the other', {
        unit: 'rpm',
        wide: true,
        needed: true,
        of: (lathe) => textAt(lathe, ['speeds', 'kind']) === 'steps',
      }),
      number('speeds.from', 'Slowest', { unit: 'rpm', needed: true, of: isRange }),
      number('speeds.to', 'Fastest', { unit: 'rpm', needed: true, of: isRange }),
      number('drive.power', 'Power of the motor', { unit: 'W', needed: true }),
      number('drive.efficiency', 'Share that reaches the spindle (0.75)'),
      choice('drive.behaviour', 'Drive gives', { choices: words('constant power', 'constant torque'), needed: true }),
      number('drive.baseSpeed', 'Torque no longer rises below', { unit: 'rpm' }),
      numbers('feeds', 'Power feeds, one after the other', { unit: 'mm/rev', wide: true, needed: true }),
    ],
  },
  {
    title: 'Spindle and cutters',
    fields: [
      choice('tests.bearings', 'Bearings of the spindle', { choices: words(...bearingKinds) }),
      size('tests.axialFloat', 'Spindle moves freely along its axis by'),
      size('tests.shank', 'Shank of the cutters, square'),
    ],
  },
  {
    title: 'Dials',
    fields: [
      ...dial('crossSlide', 'Cross slide', true),
      ...dial('topSlide', 'Top slide', false),
      size('dials.topSlideTravel', 'Travel of the top slide'),
      ...dial('saddle', 'Saddle', false),
      ...dial('tailstock', 'Tailstock quill', false),
    ],
  },
  {
    title: 'Tailstock and screw',
    fields: [
      choice('tailstock.centre', 'Centre', { choices: words('dead', 'live', 'none') }),
      size('tailstock.travel', 'Travel of the quill'),
      size('tailstock.largestDrill', 'Largest drill held'),
      choice('leadscrew.kind', 'Leadscrew', {
        choices: words('metric', 'inch'),
        become: (lathe, kind) =>
          withValue(
            lathe,
            ['leadscrew'],
            kind === '' ? undefined : kind === 'inch' ? { kind, threadsPerInch: 8 } : { kind, pitch: 1.5 },
          ),
      }),
      number('leadscrew.pitch', 'Its pitch', { unit: 'mm', of: hasScrew('metric') }),
      number('leadscrew.threadsPerInch', 'Its threads', { unit: 'per inch', of: hasScrew('inch') }),
      numbers('changeGears', 'Change gears, teeth', { wide: true }),
      number('threadDial.divisions', 'Thread dial, its lines', { of: hasScrew('inch') }),
      number('threadDial.travelPerTurn', 'One turn of it is', { unit: 'in', of: hasScrew('inch') }),
    ],
  },
];

function isRange(lathe: Parameters<NonNullable<FieldSpec['of']>>[0]): boolean {
  return textAt(lathe, ['speeds', 'kind']) === 'range';
}

function hasScrew(kind: string): NonNullable<FieldSpec['of']> {
  return (lathe) => textAt(lathe, ['leadscrew', 'kind']) === kind;
}

export const chucks: RecordTableSpec = {
  path: ['lathe', 'chucks'],
  title: 'Chucks',
  one: 'chuck',
  columns: [
    name('Name'),
    column(choice('kind', 'Kind', { choices: words('self-centring', 'independent', 'collet'), needed: true })),
    column(number('jaws', 'Jaws', { needed: true })),
    { title: 'Holds', fields: [size('from', 'From', { needed: true }), size('to', 'To', { needed: true })] },
    column(size('jawLength', 'Depth of grip', { needed: true })),
    column(size('runout', 'Run-out')),
  ],
  add: (document) => ({
    id: freeId('chuck', listAt(document, ['lathe', 'chucks'])),
    name: 'chuck',
    jaws: 3,
    kind: 'self-centring',
    from: '3 mm',
    to: '80 mm',
    jawLength: '18 mm',
  }),
};

const kindIs =
  (...kinds: readonly string[]): NonNullable<FieldSpec['of']> =>
  (record) =>
    kinds.includes(textAt(record, ['kind']));

export const lists: Readonly<Record<Exclude<WorkshopPart, 'lathe' | 'known'>, RecordTableSpec>> = {
  cutters: {
    path: ['cutters'],
    title: 'Cutters',
    one: 'cutter',
    columns: [
      name('Name'),
      column(
        choice('kind', 'For', {
          choices: words(...cutterKinds),
          needed: true,
          become: (record, kind) =>
            Object.entries(neededBy[kind] ?? {}).reduce(
              (r, [key, value]) => (textAt(r, [key]) === '' ? withValue(r, [key], value) : r),
              withValue(record, ['kind'], kind),
            ),
        }),
      ),
      column(choice('material', 'Edge of', { choices: materials, needed: true })),
      column(size('noseRadius', 'Nose radius', { needed: true })),
      {
        title: 'Its own sizes',
        fields: [
          size('width', 'Width', { of: kindIs('grooving', 'parting') }),
          size('bladeHeight', 'Blade height', { of: kindIs('grooving', 'parting') }),
          size('barDiameter', 'Bar Ø', { of: kindIs('boring') }),
          size('minBore', 'Smallest bore', { of: kindIs('boring') }),
          number('flankAngle', 'Flank angle', { unit: '°', of: kindIs('threading') }),
        ],
      },
      column(size('maxDepth', 'Deepest cut', { needed: true })),
    ],
    more: [
      choice('hand', 'Hand', { choices: words('left', 'right', 'neutral'), needed: true }),
      number('approachAngle', 'Edge against the feed', { unit: '°', needed: true }),
      number('rake', 'Rake', { unit: '°', needed: true }),
      choice('edge', 'Edge is', { choices: words(...edgeConditions), needed: true }),
      size('overhang', 'Stands out by', { needed: true }),
      text('note', 'Note', { wide: true }),
    ],
    moreTitle: 'Angles and overhang',
    add: (document) => ({
      id: freeId('cutter', listAt(document, ['cutters'])),
      name: 'new cutter',
      kind: 'turning',
      hand: 'right',
      material: 'high-speed steel',
      noseRadius: '0.4 mm',
      approachAngle: 93,
      rake: 8,
      edge: 'sharp',
      overhang: '20 mm',
      maxDepth: '0.5 mm',
    }),
  },
  drills: {
    path: ['drills'],
    title: 'Drills and reamers',
    one: 'drill',
    columns: [
      column(size('diameter', 'Diameter', { needed: true })),
      column(choice('kind', 'Kind', { choices: words(...drillKinds), needed: true })),
      column(number('pointAngle', 'Point', { unit: '°', needed: true })),
      column(choice('material', 'Of', { choices: materials, needed: true })),
    ],
    add: (document) => ({
      id: freeId('drill', listAt(document, ['drills'])),
      diameter: '6 mm',
      kind: 'twist',
      pointAngle: 118,
      material: 'high-speed steel',
    }),
  },
  gauges: {
    path: ['gauges'],
    title: 'Gauges: everything that measures',
    one: 'gauge',
    columns: [
      name('Name'),
      column(choice('kind', 'Kind', { choices: words(...gaugeKinds), needed: true })),
      column(size('resolution', 'Smallest step read')),
      column(size('permissibleError', 'Permissible error')),
      { title: 'Takes', fields: [size('from', 'From'), size('to', 'To')] },
      column(size('zeroError', 'Shows too much by')),
    ],
    add: (document) => ({
      id: freeId('gauge', listAt(document, ['gauges'])),
      name: 'new gauge',
      kind: 'outside micrometer',
      resolution: '0.01 mm',
    }),
  },
  bars: {
    path: ['bars'],
    title: 'Bars on the rack',
    one: 'bar',
    columns: [
      column(text('material', 'Material', { needed: true })),
      column(size('diameter', 'Diameter', { needed: true })),
      column(size('length', 'Length left', { needed: true })),
      column(text('note', 'Note', { wide: true })),
    ],
    add: (document) => ({
      id: freeId('bar', listAt(document, ['bars'])),
      material: '303',
      diameter: '20 mm',
      length: '300 mm',
    }),
  },
};

/** Sizes that a cutter of a kind cannot be without, to begin with. */
const neededBy: Readonly<Record<string, Readonly<Record<string, string | number>>>> = {
  grooving: { width: '2 mm' },
  parting: { width: '2 mm' },
  boring: { barDiameter: '8 mm', minBore: '10 mm' },
  threading: { flankAngle: 60 },
};
