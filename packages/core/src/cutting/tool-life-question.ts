/** A question about how long an edge lasts. */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { defineQuestion } from '../question.ts';
import { numberField } from '../units/fields.ts';
import { speedForLife, taylorThrough, toolLife } from './tool-life.ts';

const speedField = (what: string) => numberField(what, 'm/min', 0.1, 2000);
const lifeField = (what: string) => numberField(what, 'min', 0.1, 100_000);

const worn = z.strictObject({ speed: speedField('cutting speed'), life: lifeField('life of the edge') });

export const toolLifeQuestion = defineQuestion({
  name: 'tool-life',
  asks: 'How long does an edge last at another speed, judged by two edges worn out before, or at which speed does it last a given time?',
  input: z.strictObject({
    first: worn.describe('an edge worn out at one speed'),
    second: worn.describe('an edge of the same kind worn out at another speed'),
    speed: speedField('speed whose life is asked').optional(),
    life: lifeField('life whose speed is asked').optional(),
  }),
  output: z.strictObject({
    exponent: z.number().describe("Taylor's exponent n [-]"),
    constant: z.number().describe('cutting speed for a life of one minute [m/min]'),
    life: z.number().optional().describe('life at the speed asked [min]'),
    speed: z.number().optional().describe('speed for the life asked [m/min]'),
    within: z.boolean().describe('the answer lies between the two edges, where the law holds'),
  }),
  sources: ['GRO'],
  example: {
    input: { first: { speed: 160, life: 5 }, second: { speed: 100, life: 41 }, speed: 130 },
    gives: { exponent: 0.223 },
    from: 'Groover, Fundamentals of Modern Manufacturing, the worked fit of 160 m/min for 5 min and 100 m/min for 41 min',
  },
  answer({ first, second, speed, life }) {
    if (speed === undefined && life === undefined)
      throw new InputError([{ path: 'speed', value: undefined, expected: 'a speed, or a life', example: '130' }]);
    const law = taylorThrough(first, second);
    const asked = speed ?? speedForLife(law, life ?? 1);
    return {
      ...law,
      ...(speed === undefined ? { speed: asked } : { life: toolLife(law, speed) }),
      within: asked >= Math.min(first.speed, second.speed) && asked <= Math.max(first.speed, second.speed),
    };
  },
});
