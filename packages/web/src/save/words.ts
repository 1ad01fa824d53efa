/** Places and values of a document in words. */
import type { Json } from '@sparewright/core/job/merge';
import { isObject, textAt } from '../document.ts';

const known: Readonly<Record<string, string>> = {
  outside: 'sections',
  inside: 'bores',
  notTurned: 'made off the lathe',
  of: 'of',
};

/** `part.outside[guide].floorDiameter` as `part, sections, guide, floor diameter`. */
export function pathWords(path: string): string {
  if (path === '') return 'the whole document';
  return (path.match(/[^.[\]]+/g) ?? [])
    .map(
      (step) => known[step] ?? step.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`),
    )
    .map((step) => step.replaceAll('-', ' '))
    .join(', ');
}

export function valueWords(value: Json | undefined): string {
  if (value === undefined || value === null) return 'nothing';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value !== 'object') return value === '' ? 'nothing' : String(value);
  if (Array.isArray(value)) return value.length === 0 ? 'nothing' : value.map(valueWords).join('; ');
  const name = textAt(value, ['name']) || textAt(value, ['id']);
  const rest = Object.entries(value)
    .filter(([key]) => key !== 'name' && key !== 'id')
    .map(([key, inner]) => `${pathWords(key)} ${isObject(inner) ? `(${valueWords(inner)})` : valueWords(inner)}`);
  return [name, ...rest].filter((part) => part !== '').join(', ');
}
