/** Questions about dial numbers: passes and cones on a lathe whose dials are told. */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { lengthField } from '../units/fields.ts';
import { degrees } from '../units/quantities.ts';
import { dialField, settingFields } from './question-fields.ts';
import { curveQuestions } from './questions-curves.ts';
import { fineQuestions } from './questions-fine.ts';
import { gearQuestions } from './questions-gears.ts';
import { threadQuestions } from './questions-threads.ts';
import { angleTolerance, degreesMinutes, setOverAngle, sideLength } from './tables/cone-setting.ts';
import { planPasses } from './tables/pass-plan.ts';

const dialPasses = defineQuestion({
  name: 'dial-passes',
  asks: 'Which dial settings take a diameter to another in passes of at most a depth?',
  input: z.strictObject({
    from: lengthField('mm', 'diameter at which the cutter touches and the dial is set to nought'),
    to: lengthField('mm', 'diameter wanted; larger than from for a bore'),
    greatest: lengthField('mm', 'greatest depth of a pass, on the radius'),
    dial: dialField('dial of the cross slide'),
  }),
  output: z.strictObject({
    passes: z
      .array(
        z.strictObject({
          pass: z.number().describe('number of the pass [-]'),
          ...settingFields,
          depth: z.number().describe('depth of this pass, on the radius [mm]'),
          diameter: z.number().describe('diameter after it, if nothing gives way [mm]'),
        }),
      )
      .describe('passes in order'),
    left: z.number().describe('what the dial cannot set, on the diameter [mm]'),
  }),
  sources: ['geometry'],
  example: {
    input: { from: 20, to: 18, greatest: 0.35, dial: { division: 0.02, perTurn: 1, reads: 'radius' } },
    gives: {
      passes: [
        { pass: 1, turns: 0, divisions: 16, depth: 0.32, diameter: 19.36 },
        { pass: 2, turns: 0, divisions: 33, depth: 0.34, diameter: 18.68 },
        { pass: 3, turns: 1, divisions: 0, depth: 0.34, diameter: 18 },
      ],
      left: 0,
    },
    from: 'by hand: 1 mm on the radius in thirds, each rounded down to whole divisions of 0.02 mm',
  },
  answer({ from, to, greatest, dial }) {
    const planned = planPasses(from, to, greatest, dial);
    const passes = planned.map(({ depth, diameter, setting }, i) => ({
      pass: i + 1,
      turns: setting.turns,
      divisions: setting.divisions,
      depth: fine(depth),
      diameter: fine(diameter),
    }));
    return { passes, left: fine(Math.abs((planned.at(-1)?.diameter ?? from) - to)) };
  },
});

const coneSetting = defineQuestion({
  name: 'cone-setting',
  asks: 'To which angle is the top slide set for a cone, how far does it travel, and how exact must it be?',
  input: z.strictObject({
    startDiameter: lengthField('mm', 'diameter at one end', { zero: true }),
    endDiameter: lengthField('mm', 'diameter at the other end', { zero: true }),
    length: lengthField('mm', 'along the axis'),
    tolerance: lengthField('mm', 'allowed on the difference of the two diameters').optional(),
  }),
  output: z.strictObject({
    angle: z.number().describe('between the side and the axis: what the top slide is set to [°]'),
    text: z.string().describe('the same in degrees and minutes'),
    included: z.number().describe('angle of the whole cone [°]'),
    travel: z.number().describe('travel of the top slide along the side [mm]'),
    taper: z.number().describe('change of diameter over each unit of length [-]'),
    allowed: z.number().optional().describe('how far the angle may be off, plus or minus, for the tolerance [°]'),
  }),
  sources: ['geometry'],
  example: {
    input: { startDiameter: '1.6051 in', endDiameter: '1 in', length: '12 in' },
    gives: { angle: 1.444 },
    from: 'Groff, taper of 0.6051 in the foot set up on a sine bar: half of 2° 53′ 20″ (row S03 of the metrology reference)',
  },
  answer({ tolerance, ...cone }) {
    const angle = setOverAngle(cone);
    return {
      angle: fine(degrees(angle)),
      text: degreesMinutes(angle),
      included: fine(degrees(2 * angle)),
      travel: fine(sideLength(cone)),
      taper: fine(Math.abs(cone.startDiameter - cone.endDiameter) / cone.length),
      ...(tolerance === undefined ? {} : { allowed: fine(degrees(angleTolerance(cone, tolerance))) }),
    };
  },
});

/** Without the noise of binary fractions. */
function fine(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

export const routeQuestions = [
  dialPasses,
  coneSetting,
  ...threadQuestions,
  ...curveQuestions,
  ...gearQuestions,
  ...fineQuestions,
] as const;
