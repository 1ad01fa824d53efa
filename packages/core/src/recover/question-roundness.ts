/** Which circles fit a measured section, and how round is it? */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { lengthField } from '../units/fields.ts';
import type { Mm } from '../units/quantities.ts';
import { geometricCircle } from './circle.ts';
import { roundTrace, touchingCircle } from './enclosing-circles.ts';

const points = z.strictObject({
  measured: z.literal('points').describe('points all round a section, as coordinates'),
  points: z
    .array(
      z.strictObject({
        x: lengthField('mm', 'along one axis', { min: -3000, zero: true }),
        y: lengthField('mm', 'along the other', { min: -3000, zero: true }),
      }),
    )
    .min(4)
    .max(500)
    .describe('four or more points, no half of the circle bare'),
});
const trace = z.strictObject({
  measured: z.literal('trace').describe('indicator readings at equal angles, the part turned between them'),
  readings: z
    .array(lengthField('mm', 'what the indicator showed', { min: -10, zero: true, max: 10 }))
    .min(6)
    .max(720)
    .describe('readings from 0° on, evenly round [mm]'),
});

/** Tenths of a micrometre, and a little more. */
const shown = (mm: Mm) => Number(mm.toFixed(6)) + 0;

export const roundnessQuestion = defineQuestion({
  name: 'roundness',
  asks: 'How round is this section, which circles fit it, and how many lobes has it?',
  input: z.discriminatedUnion('measured', [points, trace]),
  output: z.strictObject({
    circles: z
      .array(
        z.strictObject({
          fit: z
            .enum(['least squares', 'minimum zone', 'minimum circumscribed', 'maximum inscribed'])
            .describe('by which rule: circumscribed is the ring that goes over it, inscribed the plug that goes in'),
          x: z.number().describe('centre [mm]'),
          y: z.number().describe('centre [mm]'),
          radius: z.number().describe('radius; of a trace, the mean reading [mm]'),
          roundness: z.number().describe('farthest less nearest point about that centre [mm]'),
        }),
      )
      .describe('circles; of a trace the least-squares one only'),
    lobes: z
      .array(
        z.strictObject({
          count: z.int().describe('lobes round the section [-]'),
          amplitude: z.number().describe('amplitude on the radius [mm]'),
        }),
      )
      .optional()
      .describe('of a trace, largest first'),
    note: z.string().describe('what to be wary of'),
  }),
  sources: ['metrology-methods', 'GGS94'],
  example: {
    input: {
      measured: 'points',
      points: [
        { x: 5.01, y: 0 },
        { x: 0, y: 5.01 },
        { x: -5.01, y: 0 },
        { x: 0, y: -5.01 },
        { x: 3.5, y: 3.5 },
        { x: -3.5, y: -3.5 },
      ],
    },
    gives: { circles: { 1: { fit: 'minimum zone', roundness: 0.060253 } } },
    from: 'by symmetry about the middle: 5.01 − 3.5·√2 = 0.060253',
  },
  answer(asked) {
    if (asked.measured === 'trace') return ofTrace(asked.readings);
    const square = geometricCircle(asked.points);
    const off = asked.points.map((p) => Math.hypot(p.x - square.x, p.y - square.y));
    const touching = (['minimum zone', 'minimum circumscribed', 'maximum inscribed'] as const).map((fit) => ({
      fit,
      ...touchingCircle(asked.points, fit),
    }));
    const least = { fit: 'least squares' as const, ...square, roundness: Math.max(...off) - Math.min(...off) };
    return {
      circles: [least, ...touching].map(({ fit, x, y, radius, roundness }) => ({
        fit,
        x: shown(x),
        y: shown(y),
        radius: shown(radius),
        roundness: shown(roundness),
      })),
      note: 'Between the points it may be less round than it looks: take more of them than twice the lobes expected.',
    };
  },
});

function ofTrace(readings: readonly Mm[]) {
  const { x, y, mean, roundness, lobes } = roundTrace(readings);
  const [most] = lobes.toSorted((a, b) => b.amplitude - a.amplitude);
  const isOdd = most !== undefined && most.count % 2 === 1;
  return {
    circles: [
      { fit: 'least squares' as const, x: shown(x), y: shown(y), radius: shown(mean), roundness: shown(roundness) },
    ],
    lobes: lobes
      .toSorted((a, b) => b.amplitude - a.amplitude)
      .slice(0, 6)
      .map(({ count, amplitude }) => ({ count, amplitude: shown(amplitude) })),
    note: isOdd
      ? `It has ${most.count} lobes above all: a micrometer or calliper reads the same all round and does not see them.`
      : 'An even number of lobes is seen by a micrometer turned round the part; an odd number is not.',
  };
}
