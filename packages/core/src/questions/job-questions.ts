/** Questions about a whole job. */
import { z } from 'zod';
import { assess } from '../job/assess.ts';
import { withUnits } from '../job/change-units.ts';
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

const changeUnitsQuestion = defineQuestion({
  name: 'change-units',
  asks: 'How is a job written in the other unit without converting anything: which unit stands behind its bare numbers?',
  input: z.strictObject({
    job: documentField('job document, as in a job file'),
    units: z.enum(['mm', 'in']).describe('unit of bare numbers from now on'),
  }),
  output: z.strictObject({
    job: documentField('the same job, every size the same, the units written where they were bare'),
  }),
  sources: [],
  example: {
    input: {
      job: {
        sparewright: 'job',
        version: 1,
        title: 'Spindle',
        units: 'mm',
        hazard: 'ordinary',
        part: {
          name: 'Spindle',
          outside: [{ id: 'journal', kind: 'cylinder', diameter: '40 f7', length: '1 1/4 in' }],
        },
      },
      units: 'in',
    },
    gives: { job: { units: 'in', part: { outside: [{ diameter: '40 mm f7', length: '1 1/4 in' }] } } },
    from: 'a size with its unit written means the same in any job',
  },
  answer({ job, units }) {
    return { job: withUnits(job, units) };
  },
});

export const jobQuestions = [assessQuestion, changeUnitsQuestion] as const;
