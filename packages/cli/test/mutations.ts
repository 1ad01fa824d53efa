/** Documents near to real ones: the examples with fields taken out, put twice, or filled with what people and programs write by mistake. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';

export const jobNames = ['valve-guide-pin', 'plunger', 'gland-spindle'] as const;
export const examplesFolder = new URL('../../../examples/', import.meta.url);

export function exampleDocument(file: string): unknown {
  return JSON.parse(readFileSync(new URL(file, examplesFolder), 'utf8'));
}

type Path = readonly (string | number)[];

/** Every place in a document, the document itself left out. */
function placesIn(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const here = [...path, Array.isArray(value) ? Number(key) : key];
    return [here, ...placesIn(inner, here)];
  });
}

export interface Mutation {
  /** Which place, as a share of all there are. */
  readonly where: number;
  readonly how: 'take out' | 'put in' | 'twice' | 'scale';
  readonly value: unknown;
  readonly factor: number;
}

const oddValues: readonly unknown[] = [
  ...[
    null,
    true,
    0,
    -1,
    1e9,
    1e-9,
    1e308,
    -0,
    0.5,
    3,
    3000,
    'NaN',
    'Infinity',
    '',
    ' ',
    '0',
    '-5',
    '1/0',
    '12,5',
    '1e5',
  ],
  ...[
    '40 f7',
    '6 H7',
    '10 ±20',
    '5/16 in',
    'M12x1.25-6g',
    'M3',
    '1/2 BSF',
    'through',
    'none',
    '\u0000\u001b[31m',
    '…'.repeat(50),
  ],
  ...[
    [],
    {},
    [[]],
    { kind: 'cylinder' },
    'start',
    'end',
    'left',
    'right',
    'guide',
    'guide.diameter',
    'bonded',
    'o-ring',
  ],
];

export const mutation: fc.Arbitrary<Mutation> = fc.record({
  // Without bias, which would take the first place again and again.
  where: fc.noBias(fc.integer({ min: 0, max: 999_999 })).map((share) => share / 1e6),
  // A value of another kind is mostly refused; what is taken out or scaled is mostly assessed.
  how: fc.constantFrom('take out', 'take out', 'put in', 'twice', 'scale', 'scale', 'scale', 'scale'),
  value: fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...oddValues) }, { weight: 1, arbitrary: fc.jsonValue() }),
  factor: fc.constantFrom(0.01, 0.1, 0.3, 0.7, 0.98, 1.02, 1.5, 3, 10, 100),
});

/** A copy of the document with the mutations made one after another. */
export function mutated(document: unknown, mutations: readonly Mutation[]): unknown {
  const copy: unknown = structuredClone(document);
  for (const { where, how, value, factor } of mutations) {
    const places = placesIn(copy);
    const place = places[Math.floor(where * places.length)];
    if (place) change(copy, place, how, value, factor);
  }
  return copy;
}

function change(document: unknown, place: Path, how: Mutation['how'], value: unknown, factor: number): void {
  const holder: unknown = place.slice(0, -1).reduce<unknown>((at, step) => Reflect.get(Object(at), step), document);
  const key = place.at(-1) ?? 0;
  if (typeof holder !== 'object' || holder === null) return;
  const old: unknown = Reflect.get(holder, key);
  if (how === 'take out' && Array.isArray(holder)) holder.splice(Number(key), 1);
  else if (how === 'take out') Reflect.deleteProperty(holder, key);
  else if (how === 'twice' && Array.isArray(holder)) holder.splice(Number(key), 0, structuredClone(old));
  else if (how === 'scale') Reflect.set(holder, key, scaled(old, factor));
  else Reflect.set(holder, key, structuredClone(value));
}

/** A number, or the first number in a text, made larger or smaller; everything else as it was. */
function scaled(old: unknown, factor: number): unknown {
  if (typeof old === 'number') return Number((old * factor).toPrecision(6));
  if (typeof old !== 'string') return old;
  return old.replace(/\d+(?:[.,]\d+)?/, (digits) =>
    String(Number((Number(digits.replace(',', '.')) * factor).toPrecision(6))),
  );
}
