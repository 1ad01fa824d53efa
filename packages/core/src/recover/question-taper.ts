/** Which taper is this? */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { propagate } from '../evidence/propagate.ts';
import { defineQuestion } from '../question.ts';
import { lengthField } from '../units/fields.ts';
import { degrees } from '../units/quantities.ts';
import { share, shown } from './question-fields.ts';
import { matchTapers, taperByBalls, taperHalfAngle, taperOverRollers, taperUncertainty } from './tapers.ts';

const byDiameters = z.strictObject({
  measured: z.literal('diameters').describe('two diameters and the distance between them'),
  first: lengthField('mm', 'diameter at one place', { zero: true }),
  second: lengthField('mm', 'diameter at another', { zero: true }),
  distance: lengthField('mm', 'distance between the two along the axis'),
  uncertainty: lengthField('mm', 'one standard uncertainty of a diameter', { max: 1 }).default(0.01),
  distanceUncertainty: lengthField('mm', 'one standard uncertainty of the distance', { max: 1 }).default(0.02),
});
const overRollers = z.strictObject({
  measured: z.literal('over rollers').describe('external cone standing on a plate, over two equal rollers'),
  onPlate: lengthField('mm', 'over the rollers on the plate'),
  onSlips: lengthField('mm', 'over the rollers on slips'),
  height: lengthField('mm', 'height of the slips'),
  roller: lengthField('mm', 'diameter of a roller'),
  uncertainty: lengthField('mm', 'one standard uncertainty of a reading', { max: 1 }).default(0.005),
});
const byBalls = z.strictObject({
  measured: z.literal('balls').describe('internal cone, two balls dropped in'),
  smallBall: lengthField('mm', 'diameter of the small ball'),
  smallDepth: lengthField('mm', 'from the face down to its top', { zero: true }),
  largeBall: lengthField('mm', 'diameter of the large ball'),
  largeDepth: lengthField('mm', 'from the face down to its top, below nought when it stands proud', {
    min: -100,
    zero: true,
  }),
  uncertainty: lengthField('mm', 'one standard uncertainty of a depth', { max: 1 }).default(0.01),
});

const input = z.discriminatedUnion('measured', [byDiameters, overRollers, byBalls]);

export const taperQuestion = defineQuestion({
  name: 'recover-taper',
  asks: 'What is the angle of this cone, and which standard taper is it?',
  input,
  output: z.strictObject({
    halfAngle: z.number().describe('half the angle of the cone: what a top slide is set to [°]'),
    includedAngle: z.number().describe('angle of the whole cone [°]'),
    uncertainty: z.number().describe('standard uncertainty of the half angle [°]'),
    oneIn: z.number().describe('length on which the diameter changes by one [-]'),
    diameter: z.number().optional().describe('diameter at the plate or at the face [mm]'),
    likeliest: z.string().optional().describe('the likeliest standard taper, if any comes near'),
    matches: z
      .array(
        z.strictObject({
          name: z.string().describe('standard taper'),
          probability: z.number().describe('its share; what is left is a taper of its own [-]'),
          standing: z.enum(['read', 'from memory']).describe('how its figure is known'),
        }),
      )
      .describe('standard tapers, likeliest first'),
  }),
  sources: ['metrology-methods', 'GUM', 'ISO296', 'mem-tapers'],
  example: {
    input: { measured: 'diameters', first: 23.825, second: 20.081, distance: 74.59 },
    gives: { likeliest: 'Morse 3' },
    from: 'Morse 3: 0.60235 in a foot [GROFF, read]; 74.59 mm of it change the diameter by 3.744 mm',
  },
  answer(asked) {
    const { halfAngle, uncertainty, diameter } = measured(asked);
    if (!(Math.abs(halfAngle) > 1e-9))
      throw new InputError([
        { path: 'second', value: 'equal', expected: 'two diameters that differ: this is no cone' },
      ]);
    const angle = Math.abs(halfAngle);
    const matches = matchTapers(angle, uncertainty);
    return {
      ...(matches[0] ? { likeliest: matches[0].name } : {}),
      halfAngle: shown(degrees(angle)),
      includedAngle: shown(2 * degrees(angle)),
      uncertainty: Number(degrees(uncertainty).toPrecision(3)),
      oneIn: Number((1 / (2 * Math.tan(angle))).toPrecision(5)),
      ...(diameter === undefined ? {} : { diameter: shown(diameter) }),
      matches: matches.map(({ name, probability, standing }) => ({
        name,
        probability: share(probability),
        standing,
      })),
    };
  },
});

function measured(asked: z.output<typeof input>): { halfAngle: number; uncertainty: number; diameter?: number } {
  switch (asked.measured) {
    case 'diameters': {
      const halfAngle = taperHalfAngle(asked.first, asked.second, asked.distance);
      const u = taperUncertainty(halfAngle, asked.distance, Math.SQRT2 * asked.uncertainty, asked.distanceUncertainty);
      return { halfAngle, uncertainty: u };
    }
    case 'over rollers': {
      const found = taperOverRollers(asked.onPlate, asked.onSlips, asked.height, asked.roller);
      return {
        ...found,
        uncertainty: taperUncertainty(found.halfAngle, asked.height, Math.SQRT2 * asked.uncertainty, 0.001),
      };
    }
    case 'balls': {
      const found = taperByBalls(asked.smallBall / 2, asked.smallDepth, asked.largeBall / 2, asked.largeDepth);
      const depths = [asked.smallDepth, asked.largeDepth].map((value) => ({ value, uncertainty: asked.uncertainty }));
      const angle = ([small = 0, large = 0]: readonly number[]) =>
        taperByBalls(asked.smallBall / 2, small, asked.largeBall / 2, large).halfAngle;
      return { ...found, uncertainty: propagate(angle, depths).uncertainty };
    }
  }
}
