/** The one list of everything that can be asked. A folder with questions exports an array; here the arrays are strung together. */

import type { z } from 'zod';
import { benchQuestions } from '../bench/questions.ts';
import { cuttingQuestions } from '../cutting/questions.ts';
import { dutyQuestions } from '../duty/questions.ts';
import { evidenceQuestions } from '../evidence/questions.ts';
import { jobSchema } from '../job/schema.ts';
import { latheQuestions } from '../lathe/questions.ts';
import { workshopSchema } from '../lathe/schema.ts';
import { materialQuestions } from '../materials/questions.ts';
import { partQuestions } from '../part/questions.ts';
import type { Question } from '../question.ts';
import { recoverQuestions } from '../recover/questions.ts';
import { routeQuestions } from '../route/questions.ts';
import { driveQuestions } from '../standards/drives/questions.ts';
import { finishQuestions } from '../standards/finish/questions.ts';
import { fitsQuestions } from '../standards/fits/questions.ts';
import { ringQuestions } from '../standards/rings/questions.ts';
import { sealQuestions } from '../standards/seals/questions.ts';
import { smallPartQuestions } from '../standards/small-parts/questions.ts';
import { stockQuestions } from '../standards/stock/questions.ts';
import { threadQuestions } from '../standards/threads/questions.ts';
import { structureQuestions } from '../structure/questions.ts';
import { jobQuestions } from './job-questions.ts';

export const questions: readonly Question[] = [
  ...fitsQuestions,
  ...stockQuestions,
  ...threadQuestions,
  ...sealQuestions,
  ...driveQuestions,
  ...ringQuestions,
  ...smallPartQuestions,
  ...finishQuestions,
  ...materialQuestions,
  ...cuttingQuestions,
  ...structureQuestions,
  ...evidenceQuestions,
  ...recoverQuestions,
  ...dutyQuestions,
  ...partQuestions,
  ...latheQuestions,
  ...routeQuestions,
  ...benchQuestions,
  ...jobQuestions,
];

/**
 * Documents with a schema of their own, bare numbers in millimetres; with `"units": "in"` the same schema takes inches.
 *
 * @internal for the pages that are made from the code
 */
export const documents: Readonly<Record<string, z.ZodType>> = {
  job: jobSchema('mm'),
  workshop: workshopSchema('mm'),
};
