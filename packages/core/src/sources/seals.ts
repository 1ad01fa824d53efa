import type { Source } from './source.ts';

/** Sources of the seals chapter. */
export const seals = {} as const satisfies Record<string, Source>;
