/** Questions about a whole job. */
import { z } from 'zod';
import { assess } from '../job/assess.ts';
import { readJob, readWorkshop } from '../job/read-document.ts';
import { defineQuestion } from '../question.ts';
import { assessmentAnswer, assessmentOutput } from './job-answer.ts';

const documentField = (what: string) => z.record(z.string(), z.unknown()).describe(what);

const assessQuestion = defineQuestion({
  name: 'assess',
  asks: 'How does a whole job stand, stage by stage: evidence, part, duty, route, bench, inspection?',
  input: z.strictObject({
    job: documentField('job document, as in a job file'),
    workshop: documentField('workshop document; without it there is no route').optional(),
  }),
  output: assessmentOutput,
  // Each finding names the source of its own limit.
  sources: [],
  example: {
    input: {
      job: {
        sparewright: 'job',
        version: 1,
        title: 'Spindle',
        units: 'mm',
        hazard: 'ordinary',
        mates: [{ id: 'bush', name: 'bush', kind: 'bore', with: 'journal.diameter', size: '40 H7' }],
        part: {
          name: 'Spindle',
          material: '303',
          outside: [{ id: 'journal', kind: 'cylinder', diameter: '40 f7', length: '30' }],
        },
      },
    },
    gives: { fits: [{ mate: 'bush', kind: 'clearance', least: 0.025, most: 0.075 }] },
    from: 'ISO 286: H7 at 40 mm is 0 to +0.025 mm, f7 is −0.050 to −0.025 mm',
  },
  answer({ job: document, workshop }) {
    const job = readJob(document);
    return assessmentAnswer(job, assess(job, workshop && readWorkshop(workshop)));
  },
});

export const jobQuestions = [assessQuestion] as const;
