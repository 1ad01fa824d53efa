import type { Source } from './source.ts';

/** Sources of the threads chapter. */
export const threads = {} as const satisfies Record<string, Source>;
