/** The question about curves turned by steps. */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { defineQuestion } from '../question.ts';
import { lengthField } from '../units/fields.ts';
import { degrees, type Mm } from '../units/quantities.ts';
import { dialField, settingFields } from './question-fields.ts';
import { type ChamferCut, chamferCuts } from './tables/curve-chamfers.ts';
import { type CurveStep, curveSteps, equalSteps, type StepCurve, stepsForCusp } from './tables/curve-steps.ts';
import type { DialSetting } from './tables/dial.ts';
import { type DialledStep, dialSteps, dialTurning } from './tables/dialled-steps.ts';
import { capHeight, curveOf, type Generator, hollowed } from './tables/step-generator.ts';

const input = z.strictObject({
  radius: lengthField('mm', 'radius of a sphere').optional(),
  height: lengthField('mm', 'height of the dome, at most its radius; or give its chord').optional(),
  chord: lengthField('mm', 'diameter at the foot of a spherical dome').optional(),
  ellipse: z
    .strictObject({
      along: lengthField('mm', 'half of its length along the axis'),
      across: lengthField('mm', 'half of its width'),
    })
    .optional()
    .describe('half axes of an ellipse, with the height above'),
  cone: z
    .strictObject({
      startDiameter: lengthField('mm', 'diameter at the free end', { zero: true }),
      endDiameter: lengthField('mm', 'diameter at the far end'),
      length: lengthField('mm', 'along the axis'),
    })
    .optional()
    .describe('a cone, its thin end free'),
  points: z
    .array(
      z.strictObject({
        along: lengthField('mm', 'from the free end', { zero: true }),
        diameter: lengthField('mm', 'diameter there', { zero: true }),
      }),
    )
    .min(2)
    .max(200)
    .optional()
    .describe('a free curve through points, widening from the free end'),
  hollow: z.boolean().default(false).describe('hollowed into the end, its narrow end at the bottom'),
  direction: z
    .enum(['facing', 'turning'])
    .default('facing')
    .describe('each step in to its diameter, or along to its depth'),
  spacing: z
    .enum(['least corners', 'equal'])
    .default('least corners')
    .describe('all corners alike and as low as can be, or equal steps'),
  noseRadius: lengthField('mm', 'nose radius of the cutter, 0 for a pointed one', { zero: true }).default(0),
  steps: z.int().min(1).max(500).optional().describe('number of steps; or give the height of the corners [-]'),
  corner: lengthField('mm', 'height of the corners that may be left to file').optional(),
  chamfers: z.boolean().default(false).describe('take the corners off with the top slide set over'),
  dials: z
    .strictObject({
      along: dialField('dial that moves along the work'),
      across: dialField('dial of the cross slide, set to nought at the foot of the dome, or at the axis for a hollow'),
    })
    .optional()
    .describe('the lathe’s dials, for whole divisions'),
});

type Asked = z.output<typeof input>;

export const curveStepsQuestion = defineQuestion({
  name: 'curve-steps',
  asks: 'In which steps is a dome, a hollow, a cone or a free curve turned, and how much is left between them to file?',
  input,
  output: z.strictObject({
    footDiameter: z.number().describe('largest diameter of the curve [mm]'),
    depth: z.number().describe('its length along the axis [mm]'),
    largestCorner: z.number().describe('height of the highest corner left to file, square to the curve [mm]'),
    afterChamfers: z.number().optional().describe('the same after the chamfer cuts [mm]'),
    steps: z
      .array(
        z.strictObject({
          step: z.number().describe('number of the step, in the order they are cut [-]'),
          depth: z.number().describe('depth from the free end [mm]'),
          radius: z.number().describe('radius at which the tip stops [mm]'),
          corner: z.number().describe('height of the corner left over [mm]'),
          along: z.strictObject(settingFields).optional().describe('dial that moves along the work'),
          across: z.strictObject(settingFields).optional().describe('dial of the cross slide'),
          chamfer: z
            .strictObject({
              angle: z.number().describe('of the top slide from the axis [°]'),
              infeed: z.number().describe('of the slide named, after touching the corner [mm]'),
              by: z.enum(['cross slide', 'saddle']).describe('slide that goes in'),
              left: z.number().describe('height of the corners left after it [mm]'),
            })
            .optional()
            .describe('cut that takes the corner off'),
        }),
      )
      .describe('steps in the order they are cut'),
  }),
  sources: ['geometry'],
  example: {
    input: { radius: 32, height: 6, steps: 12 },
    gives: { largestCorner: 0.45, steps: [{ step: 1, depth: 0.4564 }] },
    from: 'closed form for a pointed cutter: corners √(R² + a²/n) − R, first depth R − √(R² − a²/n) with a² = 2Rh − h²',
  },
  answer(asked) {
    const standing = curveOf(generatorOf(asked));
    const inside = asked.hollow ? hollowed(standing) : undefined;
    const curve = inside?.curve ?? standing;
    const rim = curve.pieces.at(-1)?.to.r ?? 0;
    const exact = exactSteps(curve, asked);
    const dialled = asked.dials && inDivisions(curve, exact, rim, asked);
    const chamfers = asked.chamfers ? chamferCuts(curve, dialled ?? exact, asked.noseRadius) : undefined;
    const steps = (dialled ?? exact).map((step, k) => ({
      depth: fine(step.depth),
      radius: fine(inside ? inside.rim - step.radius : step.radius),
      corner: fine(step.cusp),
      ...settingsOf(dialled?.[k]),
      ...(chamfers?.[k] ? { chamfer: chamferWords(chamfers[k]) } : {}),
    }));
    // Turning along begins with the widest, which reaches deepest.
    const cut = asked.direction === 'turning' ? steps.toReversed() : steps;
    return {
      footDiameter: fine(2 * (inside?.rim ?? rim)),
      depth: fine(curve.depth),
      largestCorner: fine(Math.max(0, ...(dialled ?? exact).map((s) => s.cusp))),
      ...(chamfers ? { afterChamfers: fine(Math.max(0, ...chamfers.map((c) => c.left))) } : {}),
      steps: cut.map((s, i) => ({ step: i + 1, ...s })),
    };
  },
});

function generatorOf(asked: Asked): Generator {
  const { radius, height, chord, ellipse, cone, points } = asked;
  const shapes = [radius, ellipse, cone, points].filter((s) => s !== undefined);
  if (shapes.length !== 1)
    throw refused('radius', radius, 'one shape: the radius of a sphere, an ellipse, a cone, or points', '32');
  if (cone) return { shape: 'cone', ...cone };
  if (points) return { shape: 'points', points };
  if (ellipse) {
    if (height === undefined) throw refused('height', height, 'the height of the part of the ellipse', '6');
    return { shape: 'ellipse', ...ellipse, height };
  }
  if ((height === undefined) === (chord === undefined))
    throw refused('height', height, 'either the height of the dome or its chord', '6');
  const sphere = radius ?? 0;
  return { shape: 'sphere', radius: sphere, height: height ?? capHeight(sphere, chord ?? 0) };
}

function exactSteps(curve: StepCurve, { steps, corner, noseRadius, spacing, direction }: Asked): CurveStep[] {
  const count = steps ?? (corner === undefined ? undefined : stepsForCusp(curve, corner, noseRadius));
  if (count === undefined) throw refused('steps', steps, 'a number of steps, or a corner', '12');
  return spacing === 'equal' ? equalSteps(curve, count, noseRadius, direction) : curveSteps(curve, count, noseRadius);
}

function inDivisions(
  curve: StepCurve,
  exact: readonly CurveStep[],
  rim: Mm,
  { dials, noseRadius, direction }: Asked,
): DialledStep[] | undefined {
  if (!dials) return undefined;
  return (direction === 'turning' ? dialTurning : dialSteps)(curve, exact, noseRadius, rim, dials);
}

function settingsOf(step: DialledStep | undefined) {
  const told = ({ turns, divisions }: DialSetting) => ({ turns, divisions });
  return step ? { along: told(step.along), across: told(step.across) } : {};
}

function chamferWords({ angle, infeed, by, left }: ChamferCut) {
  return { angle: fine(degrees(angle)), infeed: fine(infeed), by, left: fine(left) };
}

function refused(path: string, value: unknown, expected: string, example: string): InputError {
  return new InputError([{ path, value, expected, example }]);
}

/** Without the noise of binary fractions. */
function fine(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

export const curveQuestions = [curveStepsQuestion] as const;
