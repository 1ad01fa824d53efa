/** The question about infeed finer than a dial. */
import { z } from 'zod';
import { DomainError } from '../errors.ts';
import { defineQuestion } from '../question.ts';
import { lengthField } from '../units/fields.ts';
import { degrees, type Mm } from '../units/quantities.ts';
import { dialField, settingFields } from './question-fields.ts';
import { degreesMinutes } from './tables/cone-setting.ts';
import { type Dial, dialSetting, slidePerDivision } from './tables/dial.ts';
import { alongForDepth, closestLimits, type FineInfeed, fineInfeed, setOverForInfeed } from './tables/fine-infeed.ts';

const fineInfeedQuestion = defineQuestion({
  name: 'fine-infeed',
  asks: 'How far is the top slide set over for an infeed finer than its dial, and how many divisions take off the rest?',
  input: z.strictObject({
    topSlide: dialField('dial of the top slide'),
    tolerance: lengthField('mm', 'limits of the diameter, upper less lower').optional(),
    infeed: lengthField('mm', 'depth on the radius wanted for one division, instead of the limits').optional(),
    left: lengthField('mm', 'still to come off the diameter').optional(),
  }),
  output: z.strictObject({
    angle: z.number().describe('of the top slide from the axis [°]'),
    text: z.string().describe('the same in degrees and minutes'),
    infeed: z.number().describe('depth on the radius for one division [mm]'),
    onDiameter: z.number().describe('what one division takes off the diameter [mm]'),
    oneIn: z.number().describe('travel of the top slide over what it feeds [-]'),
    last: z
      .strictObject({
        ...settingFields,
        short: z.number().describe('what stays on the diameter, less than one division [mm]'),
        along: z.number().describe('how far the cutter moves along the work meanwhile [mm]'),
      })
      .optional()
      .describe('setting for what is still to come off'),
  }),
  sources: ['geometry', 'common-practice'],
  example: {
    input: {
      topSlide: { division: 0.02, perTurn: 2, reads: 'travel' },
      infeed: 0.01,
      left: 0.1,
    },
    gives: { angle: 30, infeed: 0.01, last: { turns: 0, divisions: 5, short: 0, along: 0.086603 } },
    from: 'by hand: sin 30° is a half, cot 30° is √3; 0.05 mm on the radius is five divisions of a half of 0.02 mm',
  },
  answer({ topSlide, tolerance, infeed, left }) {
    const fine = chosen(topSlide, tolerance, infeed);
    return {
      angle: rounded(degrees(fine.angle)),
      text: degreesMinutes(fine.angle),
      infeed: rounded(fine.infeed),
      onDiameter: rounded(2 * fine.infeed),
      oneIn: rounded(fine.oneIn),
      ...(left === undefined ? {} : { last: lastPass(left, topSlide, fine) }),
    };
  },
});

function chosen(topSlide: Dial, tolerance: Mm | undefined, infeed: Mm | undefined): FineInfeed {
  const travel = slidePerDivision(topSlide);
  if (infeed !== undefined) return { angle: setOverForInfeed(infeed, travel), infeed, oneIn: travel / infeed };
  if (tolerance === undefined) throw new DomainError('tolerance', tolerance, 'limits, or an infeed for one division');
  const fine = fineInfeed(topSlide, tolerance);
  if (!fine)
    throw new DomainError(
      'tolerance',
      tolerance,
      `at least ${Number(closestLimits(topSlide).toFixed(5))} mm for this top slide`,
    );
  return fine;
}

function lastPass(left: Mm, topSlide: Dial, fine: FineInfeed) {
  const { turns, divisions, travel } = dialSetting((left / 2) * fine.oneIn, topSlide);
  const fed = travel / fine.oneIn;
  return { turns, divisions, short: rounded(left - 2 * fed), along: rounded(alongForDepth(fed, fine.angle)) };
}

function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

export const fineQuestions = [fineInfeedQuestion] as const;
