/**
 * The one register of sources. Chapters add their keys in their own file; a key is unique over all of them.
 */
import { cutting } from './cutting.ts';
import { duty } from './duty.ts';
import { fits } from './fits.ts';
import { general } from './general.ts';
import { materials } from './materials.ts';
import { metrology } from './metrology.ts';
import { parts } from './parts.ts';
import { safety } from './safety.ts';
import { seals } from './seals.ts';
import type { Source } from './source.ts';
import { structure } from './structure.ts';
import { surface } from './surface.ts';
import { threads } from './threads.ts';

/** @internal for the test that keys are unique over all of them */
export const chapters = {
  general,
  fits,
  threads,
  seals,
  parts,
  materials,
  surface,
  duty,
  cutting,
  structure,
  metrology,
  safety,
} as const;

const register = {
  ...general,
  ...fits,
  ...threads,
  ...seals,
  ...parts,
  ...materials,
  ...surface,
  ...duty,
  ...cutting,
  ...structure,
  ...metrology,
  ...safety,
} as const;

/** Key of a source in the register. */
export type SourceKey = keyof typeof register;

/** The source behind a key. */
export function source(key: SourceKey): Source {
  return register[key];
}

export const sourceKeys: readonly SourceKey[] = Object.keys(register) as SourceKey[];
