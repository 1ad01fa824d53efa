/**
 * Questions about how work rings and when a cut sings.
 */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { lengthField, numberField } from '../units/fields.ts';
import { beamModes, modalStiffness } from './beam-modes.ts';
import { leastStableWidth } from './least-stable-width.ts';
import { stabilityLimit, stabilityLimits } from './limit-at-speed.ts';
import { lobePoint } from './lobe-point.ts';
import { beamOf, densityOf, shown, workSchema } from './work-fields.ts';

const modes = defineQuestion({
  name: 'modes',
  asks: 'At which frequencies does this held work ring, and how stiff is it there?',
  input: z.strictObject({
    work: workSchema
      .extend({
        density: numberField('density, when no material is named', 'kg/m³', 500, 25_000).optional(),
      })
      .describe('the work and how it is held'),
    supports: z
      .array(
        z.strictObject({
          at: lengthField('mm', 'place of the support, from the jaw faces'),
          stiffness: numberField('sideways stiffness', 'N/mm', 1, 1e9),
        }),
      )
      .max(10)
      .default([])
      .describe('further sideways supports, such as a steady'),
    masses: z
      .array(
        z.strictObject({
          at: lengthField('mm', 'place of the mass, from the jaw faces', { zero: true }),
          mass: numberField('mass', 'kg', 0, 1000),
        }),
      )
      .max(20)
      .default([])
      .describe('masses hung on the work'),
    at: lengthField('mm', 'place where the stiffness is asked for, from the jaw faces', { zero: true }),
    count: z.int().min(1).max(20).default(4).describe('how many modes [-]'),
  }),
  output: z.strictObject({
    modes: z
      .array(
        z.strictObject({
          frequency: z.number().describe('natural frequency [Hz]'),
          stiffness: z
            .number()
            .nullable()
            .describe('stiffness of this mode at the place asked about [N/mm]; null where the mode stands still'),
        }),
      )
      .describe('modes, lowest first'),
  }),
  sources: ['przemieniecki-ch5', 'przemieniecki-ch11', 'cowper-1966'],
  example: {
    input: {
      work: { sections: [{ length: 120, outerDiameter: 12 }], youngsModulus: 206_000, density: 7850 },
      at: 120,
      count: 1,
    },
    gives: { modes: [{ frequency: 593.835 }] },
    from: 'computed elsewhere with 40 Timoshenko elements, row N43 of dynamics/natural-frequency-examples.csv',
  },
  answer({ work, supports, masses, at, count }) {
    const beam = { ...beamOf(work), density: densityOf(work), supports, masses };
    const found = beamModes(beam, { stations: [at], count });
    return {
      modes: found.map((mode) => {
        const stiffness = modalStiffness(mode, 0);
        return { frequency: shown(mode.frequency), stiffness: stiffness < 1e12 ? shown(stiffness) : null };
      }),
    };
  },
});

const limitFields = {
  width: z.number().nullable().describe('broadest chip that stays quiet [mm]; null when none sings'),
  frequency: z.number().describe('frequency at which it would sing, 0 when none does [Hz]'),
};

const lobes = defineQuestion({
  name: 'stability-lobes',
  asks: 'How broad a chip stays quiet at each spindle speed, with these modes of edge and work?',
  input: z.strictObject({
    modes: z
      .array(
        z.strictObject({
          frequency: numberField('natural frequency', 'Hz', 1, 50_000),
          stiffness: numberField('modal stiffness at the cut', 'N/mm', 1, 1e9),
          damping: numberField('share of critical damping', '-', 0.0005, 0.9),
          direction: numberField(
            'direction factor: 1 in line with the chip, negative when it digs in',
            '-',
            -10,
            10,
          ).default(1),
        }),
      )
      .min(1)
      .max(30)
      .describe('modes of edge and work together'),
    chipStiffness: numberField('growth of the force for each mm of breadth and of thickness', 'MPa', 1, 20_000),
    diameter: lengthField('mm', 'diameter cut, needed with processDamping', { max: 1000 }).optional(),
    processDamping: numberField(
      'rubbing force for each mm of breadth at the speed of the cut',
      'N/mm',
      0,
      10_000,
    ).default(0),
    speeds: z
      .array(numberField('spindle speed', 'rpm', 1, 100_000))
      .min(1)
      .max(500)
      .describe('spindle speeds [rpm]'),
    frequencies: z
      .array(numberField('chatter frequency', 'Hz', 1, 100_000))
      .max(200)
      .default([])
      .describe('chatter frequencies of which the points of the lobes are wanted [Hz]'),
  }),
  output: z.strictObject({
    least: z.strictObject(limitFields).describe('whatever the speed, without rubbing'),
    speeds: z
      .array(z.strictObject({ speed: z.number().describe('spindle speed [rpm]'), ...limitFields }))
      .describe('at each speed, rubbing included'),
    points: z
      .array(
        z.strictObject({
          ...limitFields,
          shift: z.number().describe('phase by which a turn ends after a whole wave [rad]'),
          lobes: z.array(z.number()).describe('speeds of the first six lobes [rpm]'),
        }),
      )
      .describe('points of the lobes, without rubbing, where there are any'),
  }),
  sources: ['ALT131', 'TURNMD', 'methods-dynamics'],
  example: {
    input: {
      modes: [
        { frequency: 250, stiffness: 226_000, damping: 0.012, direction: 0.75 },
        { frequency: 150, stiffness: 213_000, damping: 0.01, direction: 0.5 },
      ],
      chipStiffness: 1000,
      speeds: [8678.01],
    },
    gives: { least: { width: 7.18498, frequency: 252.98 } },
    from: 'two-mode example of Altintas p. 131, limit recomputed independently (row C03)',
  },
  answer({ modes: given, chipStiffness, diameter, processDamping, speeds, frequencies }) {
    const plain = ({ width, frequency }: { width: number; frequency: number }) => ({
      width: width === Infinity ? null : shown(width),
      frequency: shown(frequency),
    });
    // Without rubbing the cutting speed does not matter, and all spindle speeds are done together.
    const limits =
      processDamping === 0
        ? stabilityLimits(given, { chipStiffness }, speeds)
        : speeds.map((speed) => {
            const v = diameter === undefined ? undefined : (Math.PI * diameter * speed) / 1000;
            return stabilityLimit(given, { chipStiffness, processDamping, cuttingSpeed: v }, speed);
          });
    return {
      least: plain(leastStableWidth(given, { chipStiffness })),
      speeds: limits.map((limit, i) => ({ speed: speeds[i] ?? 0, ...plain(limit) })),
      points: frequencies.flatMap((f) => {
        const point = lobePoint(given, chipStiffness, f, 6);
        return point ? [{ ...plain(point), shift: shown(point.shift), lobes: point.speeds.map(shown) }] : [];
      }),
    };
  },
});

export const vibrationQuestions = [modes, lobes];
