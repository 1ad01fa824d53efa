/** The fields of a schema, flattened for a table: `part.outside[].diameter`, its kind and its meaning. */
import type { z } from 'zod';
import { jsonSchema } from './json-schema.ts';

export interface Field {
  readonly path: string;
  /** `number`, `text`, `H7 or H8`, `list of number` … */
  readonly kind: string;
  readonly meaning: string;
  readonly optional: boolean;
  readonly numeric: boolean;
}

type Shape = z.core.JSONSchema.JSONSchema;

/** How deep a field is still shown: deeper ones belong to documents that have their own schema page. */
const deepest = 3;

export function fieldsOf(schema: z.ZodType, io: 'input' | 'output'): Field[] {
  const whole = jsonSchema(schema, io);
  const found: Field[] = [];
  const walk = (shape: Shape, path: string, depth: number): void => {
    const required = new Set(shape.required ?? []);
    for (const [name, given] of Object.entries(shape.properties ?? {})) {
      const field = resolve(given);
      if (typeof field === 'boolean') continue;
      const at = path === '' ? name : `${path}.${name}`;
      found.push({
        path: at,
        kind: kindOf(field),
        meaning: field.description ?? '',
        optional: io === 'input' && !required.has(name),
        numeric: isNumeric(field),
      });
      if (depth < deepest) for (const [inner, mark] of below(field)) walk(inner, at + mark, depth + 1);
    }
  };
  const resolve = (shape: Shape | boolean): Shape | boolean => {
    const name = typeof shape === 'object' ? /^#\/\$defs\/(.+)$/.exec(shape.$ref ?? '')?.[1] : undefined;
    const meant = name === undefined ? undefined : whole.$defs?.[name];
    return meant && typeof shape === 'object'
      ? { ...meant, ...(shape.description ? { description: shape.description } : {}) }
      : shape;
  };
  const below = (field: Shape): [Shape, string][] =>
    alternatives(field).flatMap((alternative): [Shape, string][] => {
      const shape = resolve(alternative);
      if (typeof shape === 'boolean') return [];
      const item = itemOf(shape);
      const items = item === undefined ? [] : below(item).map(([inner, mark]): [Shape, string] => [inner, `[]${mark}`]);
      return shape.properties ? [[shape, ''], ...items] : items;
    });
  for (const choice of alternatives(whole)) {
    const shape = resolve(choice);
    if (typeof shape === 'object') walk(shape, '', 1);
  }
  // Alternatives often share a field: it is shown once for each meaning it has.
  const shown = new Map(found.map((field) => [`${field.path}|${field.kind}|${field.meaning}`, field]));
  return [...shown.values()];
}

const alternatives = (field: Shape): readonly (Shape | boolean)[] => field.anyOf ?? field.oneOf ?? [field];

function itemOf(field: Shape): Shape | undefined {
  return field.type === 'array' && typeof field.items === 'object' && !Array.isArray(field.items)
    ? field.items
    : undefined;
}

/** A number, a list of numbers, or one of several things of which one is a number. */
function isNumeric(field: Shape): boolean {
  if (field.type === 'number' || field.type === 'integer') return true;
  const item = itemOf(field);
  if (item) return isNumeric(item);
  return [...(field.anyOf ?? []), ...(field.oneOf ?? [])].some(
    (choice) => typeof choice === 'object' && isNumeric(choice),
  );
}

function kindOf(field: Shape): string {
  if (field.const !== undefined) return JSON.stringify(field.const);
  if (field.enum) return field.enum.map((value) => JSON.stringify(value)).join(' or ');
  const choices = field.anyOf ?? field.oneOf;
  if (choices) return [...new Set(choices.map((c) => (typeof c === 'object' ? kindOf(c) : 'any')))].join(' or ');
  if (field.type === 'array') {
    const item = itemOf(field);
    return `list of ${item ? kindOf(item) : 'any'}`;
  }
  if (field.$ref) return 'record';
  return (
    { string: 'text', object: 'record', boolean: 'yes or no', integer: 'whole number' }[String(field.type)] ??
    String(field.type ?? 'any')
  );
}
