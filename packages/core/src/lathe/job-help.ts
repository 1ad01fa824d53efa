/**
 * The question what would help a whole job: all its cuts together.
 */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { defineQuestion } from '../question.ts';
import { round } from './answer-fields.ts';
import { cutSources, demoWorkshop } from './demo-workshop.ts';
import { type CutStands, whatWouldHelpJob } from './job-remedies.ts';
import { latheKnowledge } from './knowledge.ts';
import { cutOnLatheFields, setupOf } from './question-fields.ts';
import { labels } from './remedies.ts';
import { outcomeField, plainOutcome } from './remedy-fields.ts';

const { workshop, state, ...cutFields } = cutOnLatheFields;

const standsField = z.strictObject({
  id: z.string().describe('the cut'),
  decides: z.string().describe('the number that decides, in words'),
  stands: z.enum(['good', 'marginal', 'bad']).describe('where that number stands'),
  ...outcomeField.shape,
});

const plainStands = ({ id, outcome }: CutStands) => ({
  id,
  decides: outcome.decides.what,
  stands: outcome.decides.state,
  ...plainOutcome(outcome),
});

const bar = { cutter: 'knife', material: '303', grip: 18, feed: 0.05, speed: 800, sizeLimit: 0.02 };

export const remediesForJob = defineQuestion({
  name: 'what-would-help-job',
  asks: 'What would help this job on this lathe, over all its cuts together, best first?',
  input: z.strictObject({
    workshop,
    state,
    cuts: z
      .array(z.strictObject({ id: z.string().min(1).max(60).describe('what the cut is known by'), ...cutFields }))
      .min(1)
      .max(60)
      .describe('the cuts of the job, each with the work as it stands then'),
  }),
  output: z.strictObject({
    cuts: z.array(standsField).describe('as they stand, worst first'),
    remedies: z
      .array(
        z.strictObject({
          name: z.string().describe('what to do'),
          effort: z.enum(['now', 'minutes', 'an evening', 'a project']).describe('how much work it is'),
          assumes: z.string().optional().describe('what the figures take for granted'),
          worstGain: z.number().describe('gain of the cut that stands worst: above 0 it helps [-]'),
          sumGain: z.number().describe('gain over all cuts [-]'),
          settles: z.array(z.string()).describe('cuts that go with it and do not without'),
          cuts: z.array(standsField).describe('cuts it is taken for, as they stand with it'),
        }),
      )
      .describe('remedies, best first: what it does for the worst cut, and for all in the mean'),
  }),
  sources: [...cutSources, 'SNAF'],
  example: {
    input: {
      workshop: demoWorkshop({ noseRadius: 0.4 }),
      cuts: [
        { ...bar, id: 'stem', sections: [{ length: 90, outerDiameter: 10 }], depth: 0.2 },
        { ...bar, id: 'head', sections: [{ length: 25, outerDiameter: 20 }], depth: 0.2, speed: 400 },
      ],
    },
    gives: {
      cuts: [{ id: 'stem' }, { id: 'head' }],
      remedies: [{ name: 'support the end with the tailstock centre' }],
    },
    from: 'common practice: work standing out more than 4 to 5 diameters is supported by the tailstock, and is what fails first',
  },
  answer(asked) {
    const ids = asked.cuts.map((c) => c.id);
    const twice = ids.find((id, i) => ids.indexOf(id) !== i);
    if (twice !== undefined) throw new InputError([{ path: 'cuts', value: twice, expected: 'every cut named once' }]);
    const { joint } = latheKnowledge(asked.workshop, asked.state);
    const cuts = asked.cuts.map((cut) => {
      const { setup, material } = setupOf({ ...cut, workshop: asked.workshop, state: asked.state });
      return { id: cut.id, setup, material, asked: cut, joint };
    });
    const { asItStands, remedies } = whatWouldHelpJob(cuts, asked.workshop.lathe);
    return {
      cuts: asItStands.map(plainStands),
      remedies: remedies.map((r) => ({
        ...labels(r),
        worstGain: round(r.worstGain),
        sumGain: round(r.sumGain),
        settles: [...r.settles],
        cuts: r.cuts.map(plainStands),
      })),
    };
  },
});
