/** What curve has this end, and this arc? */
import { z } from 'zod';
import { capRadius, capRadiusUncertainty } from '../evidence/gauging.ts';
import { defineQuestion } from '../question.ts';
import { lengthField } from '../units/fields.ts';
import { degrees } from '../units/quantities.ts';
import { geometricCircle } from './circle.ts';
import { fitCrown } from './crown.ts';
import { share, shown } from './question-fields.ts';

const cap = z.strictObject({
  measured: z.literal('cap').describe('height of the cap and the chord or foot it stands on'),
  foot: lengthField('mm', 'diameter of the foot, or length of the chord'),
  height: lengthField('mm', 'height of the cap above it'),
  ballFoot: lengthField('mm', 'radius of the gauge’s ball feet; below nought in a hollow', {
    min: -50,
    zero: true,
    max: 50,
  }).default(0),
  uncertainty: lengthField('mm', 'one standard uncertainty of foot and height', { max: 1 }).default(0.01),
});
const depths = z.strictObject({
  measured: z.literal('depths').describe('depth below the top at distances from the axis'),
  readings: z
    .array(
      z.strictObject({
        fromAxis: lengthField('mm', 'distance from the axis', { min: -1000, zero: true }),
        depth: lengthField('mm', 'depth below the top', { min: -1000, zero: true }),
      }),
    )
    .min(3)
    .max(500)
    .describe('the readings; a height grid is given by the distance of each point from the axis'),
  uncertainty: lengthField('mm', 'one standard uncertainty of a depth', { max: 1 }).default(0.01),
  worn: z.boolean().default(true).describe('metal may be gone in places'),
});
const points = z.strictObject({
  measured: z.literal('points').describe('points on an arc, as coordinates'),
  points: z
    .array(
      z.strictObject({
        x: lengthField('mm', 'along', { min: -3000, zero: true }),
        y: lengthField('mm', 'across', { min: -3000, zero: true }),
      }),
    )
    .min(3)
    .max(500)
    .describe('points on one arc of a circle'),
});

export const crownQuestion = defineQuestion({
  name: 'recover-crown',
  asks: 'Is this dome, hollow or arc a sphere, an ellipse or a cone, and of what radius?',
  input: z.discriminatedUnion('measured', [cap, depths, points]),
  output: z.strictObject({
    radius: z.number().optional().describe('radius of the sphere or arc; of an ellipse on the axis [mm]'),
    uncertainty: z.number().optional().describe('its standard uncertainty [mm]'),
    shapes: z
      .array(
        z.strictObject({
          shape: z.enum(['sphere', 'ellipse', 'cone']).describe('shape'),
          probability: z.number().describe('its share [-]'),
          radius: z.number().optional().describe('radius on the axis [mm]'),
          halfAxes: z
            .strictObject({
              along: z.number().describe('half axis along [mm]'),
              across: z.number().describe('half axis across [mm]'),
            })
            .optional()
            .describe('of an ellipse'),
          halfAngle: z.number().optional().describe('of a cone, between axis and side [°]'),
          deviation: z.number().describe('what is left over at sound places, root mean square [mm]'),
        }),
      )
      .optional()
      .describe('shapes, likeliest first'),
    wear: z.array(z.number()).optional().describe('metal gone at each reading, for the likeliest shape [mm]'),
    centre: z
      .strictObject({ x: z.number().describe('along [mm]'), y: z.number().describe('across [mm]') })
      .optional()
      .describe('centre of the arc'),
    note: z.string().optional().describe('what to be wary of'),
  }),
  sources: ['metrology-methods', 'GGS94', 'GUM', 'composed-error'],
  example: {
    input: { measured: 'cap', foot: 56, height: 14.5 },
    gives: { radius: 34.2845 },
    from: 'spherical mirror, half chord 28, sagitta 14.5: 34.3 [HNSWS], 34.28448 recomputed from R = a²/2h + h/2',
  },
  answer(asked) {
    switch (asked.measured) {
      case 'cap':
        return {
          radius: shown(capRadius(asked.foot / 2, asked.height, asked.ballFoot)),
          uncertainty: shown(
            capRadiusUncertainty(asked.foot / 2, asked.height, asked.uncertainty / 2, asked.uncertainty),
          ),
          note: 'Height and foot cannot tell a sphere from another dome: take depths at several distances from the axis for that.',
        };
      case 'points': {
        const circle = geometricCircle(asked.points);
        return { radius: shown(circle.radius), centre: { x: shown(circle.x), y: shown(circle.y) } };
      }
      case 'depths':
        return byDepths(asked);
    }
  },
});

function byDepths({ readings, uncertainty, worn }: z.output<typeof depths>) {
  const fits = fitCrown(
    readings.map((r) => ({ radius: r.fromAxis, depth: r.depth })),
    uncertainty,
    worn,
  );
  const [best] = fits;
  const isRough = best && best.deviation > 3 * uncertainty;
  return {
    ...(best && best.shape !== 'cone'
      ? { radius: shown(best.radius), uncertainty: shown(best.radiusUncertainty) }
      : {}),
    shapes: fits.map((f) => ({
      shape: f.shape,
      probability: share(f.probability),
      deviation: shown(f.deviation),
      ...(f.shape === 'cone'
        ? { halfAngle: shown(90 - degrees(Math.atan(Math.abs(f.slope)))) }
        : { radius: shown(f.radius) }),
      ...(f.shape === 'ellipse'
        ? { halfAxes: { along: shown(f.radius / (1 + f.conic)), across: shown(f.radius / Math.sqrt(1 + f.conic)) } }
        : {}),
    })),
    wear: best?.wear.map(shown),
    ...(isRough
      ? {
          note: 'None of the three shapes fits within the uncertainty: it may be a free curve; enter it by its points.',
        }
      : {}),
  };
}
