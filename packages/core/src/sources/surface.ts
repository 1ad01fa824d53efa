import type { Source } from './source.ts';

/** Sources of the surface chapter. */
export const surface = {} as const satisfies Record<string, Source>;
