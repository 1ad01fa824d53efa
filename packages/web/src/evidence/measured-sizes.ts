/** What a reading may be of: the sizes of the part, its threads and its mates, and sizes that the part does not have yet. */
import type { Json } from '@sparewright/core/job/merge';
import type { SizeRow } from '@sparewright/output/present/job-view';
import { listAt, textAt } from '../document.ts';
import type { Choice } from '../forms/fields.ts';

type Documented = { readonly document: Json | undefined };

export function measuredSizes({ document }: Documented, sizes: readonly SizeRow[]): Choice[] {
  const known = [
    ...sizes.map(({ id, title }) => ({ value: id, words: title })),
    ...listAt(document, ['part', 'threads']).flatMap(ofThread),
    ...listAt(document, ['part', 'outside']).flatMap(ofCurve),
    ...listAt(document, ['mates']).map((mate) => {
      const id = textAt(mate, ['id']);
      return { value: `${id}.size`, words: `size of the ${textAt(mate, ['name']) || id}` };
    }),
  ];
  const taken = new Set(known.map((k) => k.value));
  const others = new Set(
    listAt(document, ['evidence', 'readings'])
      .map((r) => textAt(r, ['of']))
      .filter((of) => of !== '' && !taken.has(of)),
  );
  return [...known, ...[...others].map((of) => ({ value: of, words: inWords(of) }))];
}

function ofThread(thread: Json): Choice[] {
  const id = textAt(thread, ['id']);
  const name = `thread on the ${textAt(thread, ['on']).replaceAll('-', ' ')}`;
  return [
    { value: `${id}.crest`, words: `crest of the ${name}` },
    { value: `${id}.pitch`, words: `pitch of the ${name}` },
  ];
}

/** Curved sections are measured by points, each at its place. */
function ofCurve(section: Json): Choice[] {
  const [id, kind] = [textAt(section, ['id']), textAt(section, ['kind'])];
  const name = textAt(section, ['name']) || id.replaceAll('-', ' ');
  if (kind === 'cylinder') return [];
  const profile = { value: `${id}.profile`, words: `diameter at a place along the ${name}` };
  const depths = { value: `${id}.depths`, words: `depth of the ${name} at a distance from the axis` };
  return kind === 'crown' ? [profile, depths] : [profile];
}

/** `guide.floorDiameter` is the floor diameter of the guide. */
export function inWords(of: string): string {
  const [id = '', field = ''] = of.split('.');
  if (field === 'profile') return `diameter along the ${id.replaceAll('-', ' ')}`;
  if (field === 'depths') return `depth of the ${id.replaceAll('-', ' ')}`;
  const words = field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return words === '' ? id : `${words} of the ${id.replaceAll('-', ' ')}`;
}

export const newKinds = [
  { value: 'outside', words: 'outside diameter' },
  { value: 'inside', words: 'inside diameter' },
  { value: 'length', words: 'length' },
  { value: 'depth', words: 'depth' },
  { value: 'width', words: 'width' },
  { value: 'crest', words: 'crest of a thread' },
  { value: 'pitch', words: 'pitch of a thread' },
] as const satisfies readonly Choice[];

/** The dimension of a feature that the part does not have yet; undefined while its name has no letters. */
export function newDimension(name: string, kind: string): string | undefined {
  const id = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+|-+$/g, '')
    .slice(0, 50);
  if (id === '') return undefined;
  if (kind === 'outside') return `${id}.diameter`;
  // An inside diameter is told from an outside one by the name alone until the part has the feature.
  if (kind === 'inside') return `${/bore|hole|socket/.test(id) ? id : `${id}-bore`}.diameter`;
  return `${id}.${kind}`;
}
