import type { Source } from './source.ts';

/** Sources of the materials chapter. */
export const materials = {} as const satisfies Record<string, Source>;
