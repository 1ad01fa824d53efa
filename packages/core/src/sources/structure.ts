import type { Source } from './source.ts';

/** Sources of the structure chapter. */
export const structure = {} as const satisfies Record<string, Source>;
