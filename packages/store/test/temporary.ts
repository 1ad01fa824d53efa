/** Real folders and real documents for the tests. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Json, JsonObject } from '@sparewright/core/job/merge';
import { onTestFinished } from 'vitest';
import { openStore, type Store } from '../src/open-store.ts';

/** A folder that is removed after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'sparewright-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A store in a folder, closed after the test. */
export function temporaryStore(folder = temporaryFolder()): Store {
  const store = openStore({ folder });
  onTestFinished(() => store.close());
  return store;
}

export function exampleDocument(file: string): JsonObject {
  const document: Json = JSON.parse(readFileSync(new URL(`../../../examples/${file}`, import.meta.url), 'utf8'));
  if (typeof document !== 'object' || document === null || Array.isArray(document))
    throw new Error(`${file} is no document`);
  return document;
}

export const plunger = exampleDocument('plunger.job.json');
export const workshopDocument = exampleDocument('bench-lathe.workshop.json');

/** The smallest job, with some of its fields changed. */
export function jobDocument(changes: JsonObject = {}): JsonObject {
  return { sparewright: 'job', version: 1, title: 'A pin', units: 'mm', hazard: 'ordinary', ...changes };
}

/** A picture of one dot, different for each number. */
export function picture(number = 0): Buffer {
  return Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), Buffer.from(`a dot of shade ${number}`)]);
}
