/**
 * The question how deep a cut may go at each speed of the lathe.
 */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { round } from './answer-fields.ts';
import { cutSources, demoWorkshop } from './demo-workshop.ts';
import { type DepthAtSpeed, depthsAtSpeeds } from './depth-at-speeds.ts';
import { latheKnowledge } from './knowledge.ts';
import { prepareSetup } from './prepare-setup.ts';
import { cutOnLatheFields, setupOf } from './question-fields.ts';

const { depth: _d, speed: _s, sizeLimit: _l, ...fields } = cutOnLatheFields;

const plain = ({ speed, sings, power }: DepthAtSpeed) => ({
  speed: round(speed),
  sings: { good: round(sings.good), even: round(sings.even), bad: round(sings.bad) },
  power: round(power),
});

const atSpeed = z.strictObject({
  speed: z.number().describe('spindle speed [rpm]'),
  sings: z
    .strictObject({
      good: z.number().describe('chance that still goes [mm]'),
      even: z.number().describe('chance of a half [mm]'),
      bad: z.number().describe('chance that is too much [mm]'),
    })
    .describe('depths at which the chance that it sings comes to this; the deepest looked at when it never does'),
  power: z
    .number()
    .describe('depth at which the motor gives all it has; the deepest looked at when that is enough [mm]'),
});

export const depthAtSpeeds = defineQuestion({
  name: 'depth-at-speeds',
  asks: 'How deep may this cut go at each speed of this lathe before it sings or the motor is at its end?',
  input: z.strictObject(fields),
  output: z.strictObject({
    speeds: z.array(atSpeed).describe('the lathe’s own speeds, slowest first'),
    course: z.array(atSpeed).describe('its own speeds and what lies between them, close enough for a curve'),
    stands: z.number().describe('greatest depth the cutter stands, or the width of its edge [mm]'),
    thinnest: z
      .number()
      .nullable()
      .describe('least depth at which the chip does not rub, null when none looked at [mm]'),
    deepest: z.number().describe('deepest looked at: a third more than the cutter stands [mm]'),
  }),
  sources: cutSources,
  example: {
    input: {
      workshop: demoWorkshop(),
      cutter: 'knife',
      material: '303',
      sections: [{ length: 30, outerDiameter: 10 }],
      grip: 18,
      feed: 0.1,
    },
    gives: { speeds: [{ speed: 200 }, { speed: 400 }, { speed: 800 }, { speed: 1600, power: 1.159 }] },
    from: 'by hand: 0.1^0.8 · 2150 + 2150 · 0.0065/2 = 347.74 N for each mm of depth, at π · 10 · 1600/60 000 = 0.83776 m/s over 0.75 is 388.43 W; 450 W are there',
  },
  answer(asked) {
    const { setup, material } = setupOf({ ...asked, depth: 1, speed: 1 });
    const { joint } = latheKnowledge(asked.workshop, asked.state);
    const found = depthsAtSpeeds(prepareSetup(joint, setup, material), asked.workshop.lathe, asked.feed);
    return {
      speeds: found.speeds.map(plain),
      course: found.course.map(plain),
      stands: round(found.stands),
      thinnest: found.thinnest === undefined ? null : round(found.thinnest),
      deepest: round(found.deepest),
    };
  },
});
