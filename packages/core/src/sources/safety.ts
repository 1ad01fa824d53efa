import type { Source } from './source.ts';

/** Sources of the safety chapter. */
export const safety = {} as const satisfies Record<string, Source>;
