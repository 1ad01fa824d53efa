/**
 * The question what would let a cut go deeper, quieter or truer.
 */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { round } from './answer-fields.ts';
import { cutSources, demoWorkshop } from './demo-workshop.ts';
import { latheKnowledge } from './knowledge.ts';
import { cutOnLatheFields, setupOf } from './question-fields.ts';
import { labels, whatWouldHelp } from './remedies.ts';
import { outcomeField, plainOutcome } from './remedy-fields.ts';
import { checkWithinLathe } from './within-lathe.ts';

export const remediesOnLathe = defineQuestion({
  name: 'what-would-help',
  asks: 'What would let this cut go deeper, quieter or truer on this lathe, best first?',
  input: z.strictObject(cutOnLatheFields),
  output: z.strictObject({
    asItStands: outcomeField.describe('without any remedy'),
    remedies: z
      .array(
        z.strictObject({
          name: z.string().describe('what to do'),
          effort: z.enum(['now', 'minutes', 'an evening', 'a project']).describe('how much work it is'),
          assumes: z.string().optional().describe('what the figures take for granted'),
          ...outcomeField.shape,
          gain: z.number().describe('score of the ranking: above 0 it helps [-]'),
        }),
      )
      .describe('remedies, each tried on the model of this cut, best first'),
    notReckoned: z.array(z.string()).describe('what is done in the trade but cannot be judged here'),
  }),
  sources: [...cutSources, 'SNAF'],
  example: {
    input: {
      workshop: demoWorkshop({ noseRadius: 0.4 }),
      cutter: 'knife',
      material: '303',
      sections: [{ length: 90, outerDiameter: 10 }],
      grip: 18,
      depth: 0.2,
      feed: 0.05,
      speed: 800,
      sizeLimit: 0.02,
    },
    gives: { remedies: [{ name: 'support the end with the tailstock centre', effort: 'minutes' }] },
    from: 'common practice: work standing out more than 4 to 5 diameters is supported by the tailstock',
  },
  answer(asked) {
    const { setup, material } = setupOf(asked);
    checkWithinLathe(asked.workshop.lathe, setup, asked);
    const { joint } = latheKnowledge(asked.workshop, asked.state);
    const list = whatWouldHelp({ setup, asked, joint }, material, asked.workshop.lathe);
    return {
      asItStands: plainOutcome(list.asItStands),
      remedies: list.remedies.map((r) => ({ ...labels(r), ...plainOutcome(r), gain: round(r.gain) })),
      notReckoned: [...list.notReckoned],
    };
  },
});
