import type { Source } from './source.ts';

/** Sources of the parts chapter. */
export const parts = {} as const satisfies Record<string, Source>;
