import type { Source } from './source.ts';

/** Sources of the metrology chapter. */
export const metrology = {} as const satisfies Record<string, Source>;
