/** What can be asked about gauges and readings. */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { lengthField, numberField } from '../units/fields.ts';
import { calibrationLine, lineUncertainty } from './calibration-line.ts';
import { coverageFactor, trapezoidFactor } from './propagate.ts';
import { chainQuestion } from './question-chain.ts';
import { gaugeKinds } from './reading-kinds.ts';
import { weigh } from './uncertainty.ts';

const shown = (mm: number) => Number(mm.toFixed(5)) + 0;

const reading = defineQuestion({
  name: 'reading-uncertainty',
  asks: 'How far can a reading with this gauge be trusted, and what is it at 20 °C?',
  input: z.strictObject({
    value: lengthField('mm', 'what the gauge showed'),
    gauge: z.enum(gaugeKinds).describe('kind of gauge'),
    touch: z.enum(['outside', 'inside', 'depth']).default('outside').describe('what it touches'),
    resolution: lengthField('mm', 'smallest step that is read').optional(),
    permissibleError: lengthField('mm', 'largest permissible error, from its standard or certificate').optional(),
    zeroError: lengthField('mm', 'what it shows too much at a known size', { min: -5, zero: true, max: 5 }).optional(),
    temperature: numberField('temperature of the part', '°C', -20, 120).optional(),
    gaugeTemperature: numberField('temperature of the gauge', '°C', -20, 60).optional(),
    expansion: numberField('expansion of the part', '10⁻⁶/K', 0, 300).default(11.5),
  }),
  output: z.strictObject({
    value: z.number().describe('size at 20 °C, zero error taken off [mm]'),
    uncertainty: z.number().describe('standard uncertainty [mm]'),
    expanded: z.number().describe('expanded uncertainty, covers 95 % [mm]'),
    factor: z.number().describe('coverage factor; below 2 where the limits of the gauge outweigh the rest [-]'),
    budget: z
      .array(
        z.strictObject({
          from: z.string().describe('where it comes from'),
          share: z.number().describe('standard uncertainty [mm]'),
        }),
      )
      .describe('what it is made of, largest first'),
  }),
  sources: ['GUM', 'EA402', 'DIN862-863', 'NPL-FAQ'],
  example: {
    input: { value: 500.035, gauge: 'calliper', permissibleError: 0.05, temperature: 23.7, expansion: 11.7 },
    gives: { value: 500.01335 },
    from: 'NPL-FAQ, row X01 of the expansion examples: 500.035 mm at 23.7 °C is 500.013 mm at 20 °C; 500.035/(1 + 11.7·10⁻⁶ · 3.7) by hand',
  },
  answer(asked) {
    const { value, gauge, touch, expansion, temperature, gaugeTemperature, ...particulars } = asked;
    const used = { id: 'gauge', name: gauge, kind: gauge, ...particulars };
    const weighed = weigh(
      { id: 'r1', of: 'size', value, temperature, gaugeTemperature },
      used,
      touch,
      expansion * 1e-6,
    );
    const [first, second] = weighed.budget;
    // One limit that outweighs the rest leaves no tails: 2 would be too much.
    const isLimits = (first?.share ?? 0) > 0.7 * weighed.uncertainty;
    const factor = isLimits
      ? Math.max(1.65, trapezoidFactor(0.95, first?.share ?? 1, second?.share ?? 0))
      : coverageFactor(0.95, Number.POSITIVE_INFINITY);
    return {
      value: shown(weighed.value),
      uncertainty: shown(weighed.uncertainty),
      expanded: shown(factor * weighed.uncertainty),
      factor: Number(factor.toFixed(2)),
      budget: weighed.budget.map(({ from, share }) => ({ from, share: shown(share) })),
    };
  },
});

const check = defineQuestion({
  name: 'gauge-check',
  asks: 'What does my gauge show too much or too little over its range, by checks against known sizes?',
  input: z.strictObject({
    checks: z
      .array(
        z.strictObject({
          known: lengthField('mm', 'known size: gauge block, pin, ring'),
          shown: lengthField('mm', 'what the gauge showed'),
        }),
      )
      .min(3)
      .max(200)
      .describe('checks at different sizes'),
    at: lengthField('mm', 'size at which the correction is wanted').optional(),
  }),
  output: z.strictObject({
    zeroError: z.number().describe('what it shows too much at the middle of the checks [mm]'),
    perHundred: z.number().describe('what it shows too much more on every 100 mm [mm]'),
    left: z.number().describe('scatter of a check about the line, one standard deviation [mm]'),
    correction: z.number().optional().describe('to be added to a reading at the size wanted [mm]'),
    uncertainty: z.number().optional().describe('standard uncertainty of that correction [mm]'),
  }),
  sources: ['GUM'],
  example: {
    input: {
      checks: [
        { known: 5, shown: 5.01 },
        { known: 10, shown: 10.01 },
        { known: 15, shown: 15.01 },
      ],
    },
    gives: { zeroError: 0.01, perHundred: 0, left: 0 },
    from: 'by hand: a gauge that shows 0.01 mm too much everywhere',
  },
  answer({ checks, at }) {
    const middle = checks.reduce((sum, c) => sum + c.known, 0) / checks.length;
    const line = calibrationLine(
      checks.map((c) => ({ at: c.known, correction: c.known - c.shown })),
      middle,
    );
    return {
      zeroError: shown(-line.start),
      perHundred: shown(-100 * line.slope),
      left: shown(Math.sqrt(line.leftOver / (checks.length - 2))),
      ...(at === undefined
        ? {}
        : {
            correction: shown(line.start + line.slope * (at - middle)),
            uncertainty: shown(lineUncertainty(line, at - middle)),
          }),
    };
  },
});

export const evidenceQuestions = [reading, check, chainQuestion] as const;
