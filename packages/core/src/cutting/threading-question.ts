/**
 * The question what the passes of a thread push with.
 */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { defineQuestion } from '../question.ts';
import { lengthField, numberField } from '../units/fields.ts';
import { radians } from '../units/quantities.ts';
import { edgeField, remarksField, significant, sourcesField, workFields, workOf } from './question-fields.ts';
import { rubbing } from './rubbing.ts';
import { threadForce } from './threading.ts';

const threadSources = ['WKZ', 'KOE', 'merchant-1945', 'budak-1996', 'SVF', 'LIT'] as const;

export const threadingQuestion = defineQuestion({
  name: 'threading-force',
  asks: 'How hard does each pass of a thread push, and is its chip thick enough for the edge?',
  input: z.strictObject({
    ...workFields,
    depths: z
      .array(lengthField('mm', 'depth reached, on the radius from the crest', { max: 6 }))
      .min(1)
      .max(60)
      .describe('depth reached after each pass [mm]'),
    includedAngle: numberField('between the flanks', 'degrees', 29, 60).default(60),
    infeed: z
      .enum(['straight', 'flank'])
      .default('straight')
      .describe('straight: square to the axis; flank: along one flank, with the top slide set over'),
    rake: numberField('rake of the top face', 'degrees', -15, 25).default(0),
    edge: edgeField,
  }),
  output: z.strictObject({
    passes: z
      .array(
        z.strictObject({
          depth: z.number().describe('depth reached [mm]'),
          chipThickness: z.number().describe('mean thickness of the chip [mm]'),
          cutting: z.number().describe('force along the cut, which makes the torque [N]'),
          radial: z.number().describe('force away from the axis, which bends the work [N]'),
          axial: z.number().describe('force along the axis [N]'),
          rubbing: z.enum(['cuts', 'may rub', 'rubs']).describe('whether the chip is thick enough for the edge'),
        }),
      )
      .describe('the passes in order'),
    remarks: remarksField,
    sources: sourcesField,
  }),
  sources: threadSources,
  example: {
    input: { specificForce: 2000, exponent: 0.25, depths: [0.3, 0.4], edge: 'sharp' },
    gives: { passes: [{ chipThickness: 0.075 }, { chipThickness: 0.04375 }] },
    from: 'by hand: (0.4² − 0.3²) tan 30° over 2 · 0.4/cos 30° is 0.07 · 0.5/0.8 = 0.04375 mm',
  },
  answer(asked) {
    const work = workOf(asked);
    const { depths, includedAngle, infeed, rake, edge } = asked;
    const falls = depths.findIndex((d, i) => d <= (depths[i - 1] ?? 0));
    if (falls >= 0) {
      throw new InputError([
        {
          path: `depths[${falls}]`,
          value: depths[falls],
          expected: `more than ${depths[falls - 1] ?? 0} mm, deeper than before`,
        },
      ]);
    }
    return {
      passes: depths.map((after, i) => {
        const made = threadForce({
          before: depths[i - 1] ?? 0,
          after,
          includedAngle: radians(includedAngle),
          infeed,
          rake: radians(rake),
          edge,
          cutData: work.cutData,
        });
        return {
          depth: after,
          chipThickness: significant(made.chipThickness, 4),
          cutting: significant(made.cutting, 4),
          radial: significant(made.radial, 4),
          axial: significant(made.axial, 4),
          rubbing: rubbing(made.chipThickness, edge),
        };
      }),
      remarks: [
        ...work.remarks,
        'a sharp V is taken; a rounded or flattened point cuts a little more in the first passes',
        'radial and axial force by ratios from memory: trust them to about a factor of one and a half',
      ],
      sources: [...new Set([...threadSources, ...work.sources])],
    };
  },
});
