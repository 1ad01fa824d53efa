/** All pieces of the help, by part. */
import { meanings } from './meanings.ts';
import { measuringRound } from './measuring.ts';
import { measuringShapes } from './measuring-shapes.ts';
import type { Topic } from './topic.ts';

export const topics: Readonly<Record<'measure' | 'meaning', readonly Topic[]>> = {
  measure: [...measuringRound, ...measuringShapes],
  meaning: meanings,
};
