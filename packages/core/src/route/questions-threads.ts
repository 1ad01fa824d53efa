/** The question about the passes of a thread on a lathe whose dials are told. */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { parseThread } from '../standards/threads/thread.ts';
import { lengthField, textField } from '../units/fields.ts';
import { degrees } from '../units/quantities.ts';
import { dialField, settingFields } from './question-fields.ts';
import { infeedWays } from './tables/infeed-way.ts';
import { crestAim } from './tables/thread-aim.ts';
import { threadChamfer } from './tables/thread-chamfer.ts';
import { threadNotes } from './tables/thread-notes.ts';
import { planThread } from './tables/thread-plan.ts';

export const threadPasses = defineQuestion({
  name: 'thread-passes',
  asks: 'Which dial settings cut a thread, straight in or along its flank, with an equal chip in every pass?',
  input: z.strictObject({
    designation: textField('thread as it is written: M10x1.25-6g, 3/8 BSF', 60),
    side: z.enum(['external', 'internal']).default('external').describe('external for the bolt, internal for the nut'),
    dial: dialField('dial of the cross slide'),
    topSlide: dialField('dial of the top slide; without it a thread is fed straight in').optional(),
    infeed: z.enum(infeedWays).optional().describe('how it is fed in; by the pitch when left out'),
    cutter: z
      .strictObject({
        material: z.enum(['high-speed steel', 'carbide']).describe('what the edge is made of'),
        noseRadius: lengthField('mm', 'rounding of its point, 0 for a sharp one', { zero: true }),
      })
      .optional()
      .describe('cutter on hand; one of high-speed steel, ground to the form, when left out'),
  }),
  output: z.strictObject({
    crest: z
      .strictObject({
        aim: z.number().describe('diameter to aim at [mm]'),
        max: z.number().describe('greatest [mm]'),
        min: z.number().describe('least [mm]'),
      })
      .optional()
      .describe('diameter before threading; left out where the standard gives no limits'),
    chamfer: z
      .strictObject({
        diameter: z.number().describe('diameter at the face, just past the root [mm]'),
        length: z.number().describe('along the axis, at 45° [mm]'),
      })
      .describe('at both ends, before the thread'),
    infeed: z
      .strictObject({
        way: z.enum(infeedWays).describe('straight in with the cross slide, or along the flank with the top slide'),
        angle: z.number().describe('of the top slide from the line of the cross slide [°]'),
        why: z.string().describe('why so'),
      })
      .describe('how the cutter is fed in'),
    passes: z
      .array(
        z.strictObject({
          pass: z.string().describe('number of the pass, or spring pass'),
          ...settingFields,
          depth: z.number().describe('depth so far, on the radius [mm]'),
        }),
      )
      .describe('passes in order'),
    notes: z.array(z.string()).describe('how to set up and use them'),
  }),
  sources: ['geometry', 'ISO68-1', 'NEETS-14345', 'TUNGALOY-p1636', 'FLIPHTML-242', 'common-practice'],
  example: {
    input: {
      designation: 'M12x1.25-6g',
      dial: { division: 0.02, perTurn: 1, reads: 'radius' },
      topSlide: { division: 0.02, perTurn: 1, reads: 'travel' },
    },
    gives: { crest: { max: 11.972, min: 11.76 }, infeed: { way: 'along the flank', angle: 29.5 } },
    from: 'ISO 965: fundamental deviation g −0.028 mm and tolerance 0.212 mm of the major diameter at 1.25 mm pitch; US Navy training manual 14345: top slide at 29.5° for 60° threads',
  },
  answer({ designation, side, dial, topSlide, infeed, cutter }) {
    const thread = parseThread(designation);
    const asked = { placed: { thread, side }, crossSlide: dial, topSlide, infeed, cutter };
    const plan = planThread(asked);
    const crest = crestAim(thread, side);
    const chamfer = threadChamfer(plan.full.crestDiameter, plan.full.rootDiameter);
    return {
      ...(crest ? { crest: { aim: fine(crest.aim), max: fine(crest.max), min: fine(crest.min) } } : {}),
      chamfer: { diameter: fine(chamfer.diameter), length: fine(chamfer.length) },
      infeed: { way: plan.way.way, angle: fine(degrees(plan.way.angle)), why: plan.way.why },
      passes: plan.passes.map(({ name, setting, depth }) => ({
        pass: name,
        turns: setting.turns,
        divisions: setting.divisions,
        depth: fine(depth),
      })),
      notes: threadNotes(asked, plan),
    };
  },
});

/** Without the noise of binary fractions. */
function fine(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

export const threadQuestions = [threadPasses] as const;
