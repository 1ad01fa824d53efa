/** Questions about screw threads. */
import { drillQuestion, infeedQuestion, reliefQuestion } from './questions-cutting.ts';
import { findQuestion, wiresQuestion } from './questions-measuring.ts';
import { limitsQuestion, threadQuestion } from './questions-sizes.ts';

export const threadQuestions = [
  threadQuestion,
  limitsQuestion,
  wiresQuestion,
  drillQuestion,
  reliefQuestion,
  infeedQuestion,
  findQuestion,
] as const;
