import type { Source } from './source.ts';

/** Sources of the cutting chapter. */
export const cutting = {} as const satisfies Record<string, Source>;
