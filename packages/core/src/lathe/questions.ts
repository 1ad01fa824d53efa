/**
 * Questions about the owner's lathe: what is known of it, whether a cut goes on it, and what would help.
 */
import { bestCuts } from './best-cuts.ts';
import { stiffnessBudgetQuestion } from './budget-question.ts';
import { cutOnLathe } from './cut-on-lathe.ts';
import { depthAtSpeeds } from './depth-question.ts';
import { remediesForJob } from './job-help.ts';
import { latheKnown } from './lathe-known.ts';
import { tapTones } from './tap-question.ts';
import { remediesOnLathe } from './what-would-help.ts';

export const latheQuestions = [
  cutOnLathe,
  bestCuts,
  depthAtSpeeds,
  remediesOnLathe,
  remediesForJob,
  latheKnown,
  stiffnessBudgetQuestion,
  tapTones,
];
