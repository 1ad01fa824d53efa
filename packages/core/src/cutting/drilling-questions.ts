/**
 * The question about drilling.
 */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { lengthField, numberField } from '../units/fields.ts';
import { radians } from '../units/quantities.ts';
import { chipLoadFloor, deepHole, drillingForce, pecks } from './drilling.ts';
import { powerOfTorque } from './power.ts';
import { remarksField, significant, sourcesField, wearField, workFields, workOf } from './question-fields.ts';
import { wearFactors } from './turning-force.ts';

const drillingSources = ['WKZ', 'HAI', 'MH31', 'KEN', 'DEC', 'common-practice'] as const;

export const drillingQuestion = defineQuestion({
  name: 'drilling',
  asks: 'What thrust and torque does this drill take, how is the hole pecked, and what is the least feed?',
  input: z.strictObject({
    ...workFields,
    diameter: lengthField('mm', 'of the drill', { min: 0.5, max: 60 }),
    feed: lengthField('mm', 'feed for each turn', { max: 1.25 }),
    depth: lengthField('mm', 'of the hole', { max: 500 }).optional(),
    pointAngle: numberField('included angle of the point', 'degrees', 60, 180).default(118),
    wear: wearField,
    speed: numberField('spindle speed', 'rpm', 0, 20_000).optional(),
  }),
  output: z.strictObject({
    torque: z.number().describe('torque [N·m]'),
    thrustLow: z.number().describe('thrust by the lower of two published rules, chisel edge not counted [N]'),
    thrustHigh: z.number().describe('thrust by the higher of two published rules [N]'),
    power: z.number().optional().describe('power at the spindle, when a speed is given [W]'),
    pecks: z
      .array(z.number())
      .optional()
      .describe('depths to which to drill before clearing the swarf, when a depth is given [mm]'),
    speedShare: z.number().optional().describe('share of the usual speed for a hole this deep [-]'),
    feedShare: z.number().optional().describe('share of the usual feed for a hole this deep [-]'),
    leastFeed: z.number().optional().describe('least feed in work that hardens under a rubbing lip [mm/rev]'),
    remarks: remarksField,
    sources: sourcesField,
  }),
  sources: drillingSources,
  example: {
    input: { specificForce: 4000, exponent: 0, diameter: 10, feed: 0.3 },
    gives: { torque: 15, thrustHigh: 5400 },
    from: 'training course: a 10 mm drill at 0.3 mm/rev takes about 15 N·m; 4000 MPa is the specific force that goes with it, and 0.45 D f kc is then 5400 N by hand',
  },
  answer(asked) {
    const { diameter, feed, depth, wear } = asked;
    const work = workOf(asked);
    const made = drillingForce({
      diameter,
      feed,
      pointAngle: radians(asked.pointAngle),
      cutData: work.cutData,
      wearFactor: wearFactors[wear],
    });
    const remarks = [...work.remarks];
    const least = work.hardens ? chipLoadFloor(diameter) : undefined;
    if (least !== undefined && feed < least) {
      remarks.push(
        `this work hardens where it is rubbed: feed at least ${significant(least, 2)} mm a turn and never dwell (common practice)`,
      );
    }
    const ratio = depth === undefined ? undefined : depth / diameter;
    if (ratio !== undefined && ratio > 8)
      remarks.push('deeper than 8 diameters: no published reduction of speed and feed at hand');
    const slower = ratio === undefined || ratio > 8 ? undefined : deepHole(ratio);
    return {
      torque: significant(made.torque, 4),
      thrustLow: significant(made.thrust.low, 4),
      thrustHigh: significant(made.thrust.high, 4),
      ...(asked.speed === undefined ? {} : { power: significant(powerOfTorque(made.torque, asked.speed), 4) }),
      ...(depth === undefined ? {} : { pecks: pecks(diameter, depth).map((z) => significant(z, 6)) }),
      ...(slower ? { speedShare: slower.speed, feedShare: slower.feed } : {}),
      ...(least === undefined ? {} : { leastFeed: significant(least, 3) }),
      remarks,
      sources: [...new Set([...drillingSources, ...work.sources])],
    };
  },
});
