/** How far may a sum or difference of sizes be off? */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { lengthField, numberField } from '../units/fields.ts';
import { type Spread, spread } from './spread.ts';

/** Ends good to a hundredth of the uncertainty. */
const trials = 100_000;
/** An interval of the first order that misses by more than this share of the uncertainty is said to mislead. */
const misleading = 0.1;

const shown = (mm: number) => Number(mm.toFixed(5)) + 0;

export const chainQuestion = defineQuestion({
  name: 'chain-of-sizes',
  asks: 'How far may a sum or difference of sizes be off, when each of them is known only so far?',
  input: z.strictObject({
    sizes: z
      .array(
        z.strictObject({
          value: lengthField('mm', 'the size', { min: -3000, zero: true }),
          times: numberField('how often it counts; −1 where it is taken off', '-', -100, 100).default(1),
          known: z
            .enum(['measured', 'within limits', 'mostly in the middle', 'to and fro'])
            .describe('measured: spread is one standard uncertainty; else half the width between the limits'),
          spread: lengthField('mm', 'standard uncertainty, or half the width between the limits', { zero: true }),
          readings: z.int().min(3).max(1000).describe('how many readings told the uncertainty [-]').optional(),
        }),
      )
      .min(1)
      .max(30)
      .describe('the links of the chain'),
    share: numberField('share of such chains that the interval is to hold', '-', 0.5, 0.999).default(0.95),
  }),
  output: z.strictObject({
    value: z.number().describe('the sum [mm]'),
    uncertainty: z.number().describe('its standard uncertainty [mm]'),
    low: z.number().describe('lower end of the interval that holds the share [mm]'),
    high: z.number().describe('upper end [mm]'),
    worst: z
      .strictObject({ low: z.number().describe('smallest [mm]'), high: z.number().describe('largest [mm]') })
      .optional()
      .describe('if all limits are used up at once; only where no link was measured'),
    note: z.string().optional().describe('what to be wary of'),
  }),
  sources: ['JCGM101', 'GUM'],
  example: {
    input: {
      sizes: [
        { value: 0, known: 'within limits', spread: 1.7320508 },
        { value: 0, known: 'within limits', spread: 1.7320508 },
        { value: 0, known: 'within limits', spread: 1.7320508 },
        { value: 0, known: 'within limits', spread: 17.320508 },
      ],
    },
    gives: { value: 0, uncertainty: 10.14889 },
    from: 'JCGM 101, 9.2.4: standard deviations of 1, 1, 1 and 10; √103 = 10.14889 by hand',
  },
  answer({ sizes, share }) {
    const inputs = sizes.map((s): Spread => {
      const { value, spread: half } = s;
      if (s.known === 'measured')
        return { shape: 'normal', value, uncertainty: half, degreesOfFreedom: s.readings && s.readings - 1 };
      const shape = s.known === 'within limits' ? 'rectangular' : s.known === 'to and fro' ? 'arcsine' : 'triangular';
      return { shape, value, half };
    });
    const value = sizes.reduce((sum, s) => sum + s.times * s.value, 0);
    const uncertainty = Math.hypot(...sizes.map((s) => (s.times * s.spread) / divisor[s.known]));
    const drawn = spread((x) => x.reduce((sum, v, i) => sum + v * (sizes[i]?.times ?? 0), 0), inputs, share, trials);
    const reach = sizes.reduce((sum, s) => sum + Math.abs(s.times * s.spread), 0);
    const halfWidth = (drawn.high - drawn.low) / 2;
    const isOff = share === 0.95 && Math.abs(halfWidth - 2 * uncertainty) > misleading * uncertainty;
    return {
      value: shown(value),
      uncertainty: shown(uncertainty),
      low: shown(drawn.low),
      high: shown(drawn.high),
      ...(sizes.every((s) => s.known !== 'measured')
        ? { worst: { low: shown(value - reach), high: shown(value + reach) } }
        : {}),
      ...(isOff ? { note: 'Twice the standard uncertainty would mislead here: one link outweighs the others.' } : {}),
    };
  },
});

/** From half a width to a standard deviation. [GUM 4.3] */
const divisor = {
  measured: 1,
  'within limits': Math.sqrt(3),
  'mostly in the middle': Math.sqrt(6),
  'to and fro': Math.SQRT2,
} as const;
