/** Documents as they lie in the database: JSON text, deflated to about a third. */
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { InputError } from '@sparewright/core/errors';
import type { Json } from '@sparewright/core/job/merge';
import { StoreError } from './store-error.ts';

export function pack(document: Json): Buffer {
  return deflateRawSync(JSON.stringify(document));
}

/** @throws StoreError when it is not what was packed */
export function unpack(content: Buffer): Json {
  try {
    return JSON.parse(inflateRawSync(content).toString('utf8'));
  } catch {
    throw new StoreError('damaged', 'A document in the database cannot be read any more; restore a backup.');
  }
}

/** No document and no entry of ours comes near this; a hundred brackets are a mistake or an attack. */
const deepest = 100;

/** The value as JSON keeps it, so that what is checked is what is stored. @throws InputError when nothing is left of it */
export function plainJson(value: unknown): Json {
  if (isDeeper(value, deepest))
    throw new InputError([{ path: '', value: 'brackets in brackets', expected: `at most ${deepest} levels of them` }]);
  const text: string | undefined = JSON.stringify(value);
  if (text === undefined) throw new InputError([{ path: '', value, expected: 'a JSON document' }]);
  return JSON.parse(text);
}

function isDeeper(value: unknown, levels: number): boolean {
  if (typeof value !== 'object' || value === null) return false;
  return levels === 0 || Object.values(value).some((inner) => isDeeper(inner, levels - 1));
}
