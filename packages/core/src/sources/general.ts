import type { Source } from './source.ts';

/** Textbooks and definitions that several chapters lean on. */
export const general = {
  'common-practice': { title: 'Workshop habit, not traced to a publication', kind: 'common practice' },
  geometry: { title: 'Follows from geometry', kind: 'computed' },
  'inch-1959': { title: 'International yard and pound agreement, 1959: 1 in = 25.4 mm exactly', kind: 'from memory' },
} as const satisfies Record<string, Source>;
