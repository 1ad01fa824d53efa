/**
 * A job's unit changed without changing the job: a bare number gets the unit behind it that it was typed in, `6 f7` becomes
 * `6 mm f7`. Nothing is converted, so nothing is rounded, and what was typed stays as it was typed.
 */
import { InputError } from '../errors.ts';
import type { LengthUnit } from '../units/length.ts';
import { readJob } from './read-document.ts';
import type { Job } from './schema.ts';

/** A parsed file. */
type Document = Readonly<Record<string, unknown>>;

interface Leaf {
  /** `part.outside[2].diameter` */
  readonly path: string;
  readonly value: string | number;
  /** The same for all entries of a list that are of one kind. */
  readonly family: string;
}

/**
 * The same job, its bare numbers from now on in another unit.
 *
 * @param document  a job as in a file
 * @param to  unit of bare numbers from now on
 * @returns a document that reads as the same sizes
 * @throws InputError when the document is no job, or a place in it cannot take a unit
 */
export function withUnits(document: Document, to: LengthUnit): Document {
  const before = readJob(document);
  const from = before.units;
  if (from === to) return document;
  const lengths = new Map<string, boolean>();
  /** Of each family one is tried: a length means the same with its unit written, anything else does not, or is refused. */
  const isLength = ({ path, value, family }: Leaf): boolean => {
    if (!takesUnit(value)) return false;
    const known = lengths.get(family);
    if (known !== undefined) return known;
    const tried = mapped(document, (leaf) => (leaf.path === path ? written(value, from) : leaf.value));
    const found = readsAs(before, tried);
    lengths.set(family, found);
    return found;
  };
  const marked = mapped(document, (leaf) => (isLength(leaf) ? written(leaf.value, from) : leaf.value));
  const changed = { ...(isObject(marked) ? marked : {}), units: to };
  const at = difference(readJob(changed), { ...before, units: to });
  if (at === undefined) return changed;
  throw new InputError([
    { path: at, value: to, expected: 'a size that can be written with its unit', example: '12 mm f7' },
  ]);
}

const number = String.raw`(?:\d+\s+\d+/\d+|\d+\s*-\s*\d+/\d+|\d+/\d+|\d*\s*[½¼¾⅛⅜⅝⅞]|\d+(?:[.,]\d+)?|[.,]\d+)`;
const opening = new RegExp(String.raw`^\s*[+-]?\s*(?:[⌀∅Øø]\s*|dia\.?\s*|diameter\s*)?${number}`, 'i');
const ownUnit = new RegExp(
  String.raw`${opening.source}\s*(?:mm|cm|m|µm|um|inches|inch|in|"|″|''|thou|mil)(?![a-z0-9])`,
  'i',
);
/** Two limits: a unit at the end holds for both. */
const pair = /\.\.|…|\bto\b|^[\d.,\s]+\/[\d.,\s]+$/;

/** A number with no unit of its own. */
function takesUnit(value: string | number): boolean {
  return opening.test(String(value)) && !ownUnit.test(String(value));
}

function written(value: string | number, unit: LengthUnit): string {
  const text = String(value);
  const first = opening.exec(text)?.[0];
  if (first === undefined || (pair.test(text) && !/^\d+\/\d+$/.test(text.trim()))) return `${text} ${unit}`;
  return `${first} ${unit}${text.slice(first.length)}`;
}

function readsAs(before: Job, document: unknown): boolean {
  try {
    return difference(readJob(document), before) === undefined;
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}

/** Where two jobs differ, but for the text of sizes, where the unit is now written; undefined where they do not. */
function difference(a: unknown, b: unknown, path = ''): string | undefined {
  if (Object.is(a, b)) return undefined;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return path;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  if (isSize(a) && isSize(b)) keys.delete('text');
  for (const key of keys) {
    const found = difference(
      Reflect.get(a, key),
      Reflect.get(b, key),
      pathOn(path, Array.isArray(a) ? Number(key) : key),
    );
    if (found !== undefined) return found;
  }
  return undefined;
}

function isSize(value: object): boolean {
  return 'nominal' in value && 'tolerance' in value && 'text' in value;
}

/** The document with every text and number in it as `change` makes it. */
function mapped(node: unknown, change: (leaf: Leaf) => unknown, path = '', family = ''): unknown {
  if (typeof node === 'string' || typeof node === 'number')
    return change({ path, value: node, family: `${family} ${typeof node}` });
  if (Array.isArray(node)) return node.map((entry, i) => mapped(entry, change, pathOn(path, i), `${family}[]`));
  if (!isObject(node)) return node;
  const kind = typeof node.kind === 'string' ? `(${node.kind})` : '';
  const entries = Object.entries(node).map(([key, value]) => [
    key,
    mapped(value, change, pathOn(path, key), `${family}${kind}.${key}`),
  ]);
  return Object.fromEntries(entries);
}

function pathOn(path: string, step: string | number): string {
  if (typeof step === 'number') return `${path}[${step}]`;
  return path === '' ? step : `${path}.${step}`;
}

function isObject(value: unknown): value is Document {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
