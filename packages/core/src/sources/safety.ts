import type { Source } from './source.ts';

/** Sources of the cautions. */
export const safety = {
  'lathe-cautions': { title: 'Usual cautions for lathe work as taught in workshops', kind: 'common practice' },
  'proof-practice': {
    title: 'Usual proof testing of small parts: 1.25 to 1.5 times the working load',
    kind: 'common practice',
  },
} as const satisfies Record<string, Source>;
