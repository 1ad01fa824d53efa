import type { Source } from './source.ts';

/** Sources of the duty chapter. */
export const duty = {} as const satisfies Record<string, Source>;
