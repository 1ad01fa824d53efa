/** The fields of sections and bores, and what becomes of a section when its shape is changed. */
import type { Json } from '@sparewright/core/job/merge';
import { roles } from '@sparewright/core/part/roles';
import { textAt, valueAt, withValue } from '../document.ts';
import { type Choice, type Column, choice, column, type FieldSpec, number, size, text, words } from './fields.ts';

export const is =
  (...kinds: readonly string[]) =>
  (record: Json): boolean =>
    kinds.includes(textAt(record, ['kind']));

export const name = column(text('name', 'Name'));
const forWhat = column(choice('role', 'For', { choices: words(...roles) }));
export const finish = number('finish', 'Roughness Ra', { unit: 'µm' });
const sizes = (...fields: readonly FieldSpec[]): Column => ({ title: 'Diameter', fields });

const edgeKinds: readonly Choice[] = [
  { value: 'chamfer', words: 'chamfer' },
  { value: 'fillet', words: 'radius' },
  { value: 'relief', words: 'relief' },
];
/** An edge of another kind has other sizes: it begins with common ones. */
const edgeOf: Readonly<Record<string, Json>> = {
  chamfer: { kind: 'chamfer', size: '0.5 mm' },
  fillet: { kind: 'fillet', radius: '0.4 mm' },
  relief: { kind: 'relief', width: '1.5 mm', depth: '0.2 mm' },
};

function edge(key: 'startEdge' | 'endEdge', title: string): FieldSpec[] {
  const kind = (record: Json): string => textAt(record, [key, 'kind']);
  const when = (...kinds: readonly string[]) => ({ of: (record: Json) => kinds.includes(kind(record)) });
  return [
    choice(`${key}.kind`, title, {
      choices: edgeKinds,
      become: (record, value) => withValue(record, [key], edgeOf[value]),
    }),
    size(`${key}.size`, `${title}: chamfer along the part`, { ...when('chamfer'), needed: true }),
    number(`${key}.angle`, `${title}: angle to the axis`, { ...when('chamfer'), unit: '°' }),
    size(`${key}.radius`, `${title}: radius`, { ...when('fillet'), needed: true }),
    size(`${key}.width`, `${title}: width of the relief`, { ...when('relief'), needed: true }),
    size(`${key}.depth`, `${title}: depth of the relief`, { ...when('relief'), needed: true }),
  ];
}

/** What every section of another kind keeps, and what that kind cannot be without. */
function sectionOfKind(record: Json, kind: string): Json {
  const kept = ['id', 'name', 'role', 'finish', 'length', 'depth', 'startEdge', 'endEdge', 'diameter'];
  const tapers = kind === 'cone' || kind === 'arc';
  const has = (key: string) => (tapers ? key !== 'diameter' : true);
  const base = kept.filter(has).reduce<Json>((r, key) => withKept(r, key, valueAt(record, [key])), { kind });
  const diameter = valueAt(record, ['diameter']) ?? valueAt(record, ['startDiameter']);
  if (kind === 'curve') {
    const [from, to] = [plainSize(diameter), plainSize(valueAt(record, ['length']))];
    const points = [
      { along: '0', diameter: from },
      { along: to, diameter: from },
    ];
    return withValue(withValue(base, ['diameter'], undefined), ['points'], points);
  }
  if (tapers) return withKept(withKept(base, 'startDiameter', diameter), 'endDiameter', diameter, kind === 'arc');
  return withKept(base, 'diameter', diameter);
}

/** A point of a curve is a plain length: the size without its tolerance. */
function plainSize(size: Json | undefined): string {
  const text = typeof size === 'string' || typeof size === 'number' ? String(size) : '';
  return /^\s*[\d.,/ ]+\s*(?:mm|in|")?/.exec(text)?.[0].trim() || '10 mm';
}

export function withKept(record: Json, key: string, value: Json | undefined, arc = false): Json {
  const next = value === undefined ? record : withValue(record, [key], value);
  return arc ? withValue(next, ['bulge'], 'outward') : next;
}

export const sectionColumns: readonly Column[] = [
  name,
  column(
    choice('kind', 'Shape', {
      choices: words('cylinder', 'cone', 'arc', 'crown', 'curve'),
      needed: true,
      become: sectionOfKind,
    }),
  ),
  sizes(
    size('diameter', 'Diameter', { of: is('cylinder', 'crown') }),
    size('startDiameter', 'Left', { of: is('cone', 'arc') }),
    size('endDiameter', 'Right', { of: is('cone', 'arc') }),
    size('radius', 'Radius', { of: is('arc') }),
    choice('bulge', 'Bulges', { of: is('arc'), choices: words('outward', 'inward'), needed: true }),
  ),
  column(size('length', 'Length')),
  forWhat,
];

export const boreColumns: readonly Column[] = [
  name,
  column(
    choice('kind', 'Shape', {
      choices: words('drilled', 'bored', 'cone', 'undercut'),
      needed: true,
      become: sectionOfKind,
    }),
  ),
  sizes(
    size('diameter', 'Diameter', { of: is('drilled', 'bored', 'undercut') }),
    size('startDiameter', 'At the face', { of: is('cone') }),
    size('endDiameter', 'At the far end', { of: is('cone') }),
    size('width', 'Width', { of: is('undercut') }),
  ),
  column(size('depth', 'Depth, or through')),
  forWhat,
];

export const leftEdge = edge('startEdge', 'Left edge');
export const rightEdge = edge('endEdge', 'Right edge');
export const nearEdge = edge('startEdge', 'Edge nearer the face');
export const farEdge = edge('endEdge', 'Edge at the far end');
