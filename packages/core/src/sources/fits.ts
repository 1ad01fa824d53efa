import type { Source } from './source.ts';

/** Sources of the fits chapter. */
export const fits = {} as const satisfies Record<string, Source>;
