/** What can be asked of a part. */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { defineQuestion } from '../question.ts';
import { definePart } from './define-part.ts';
import type { Segment } from './outline-types.ts';
import type { PartResult } from './part-result.ts';
import { partSchema } from './schema.ts';

const input = z.discriminatedUnion('units', [
  z.strictObject({
    units: z.literal('mm').describe('bare numbers are millimetres'),
    part: partSchema('mm').describe('the part as written in a job'),
  }),
  z.strictObject({
    units: z.literal('in').describe('bare numbers are inches'),
    part: partSchema('in').describe('the part as written in a job'),
  }),
]);

const findings = z.array(z.string()).describe('what is impossible, missing or assumed, worst first');

/** The part, unless it cannot be: then what is wrong with it is the answer's refusal. */
function sound(asked: z.output<typeof input>): PartResult {
  const result = definePart(asked.part);
  const stops = result.findings.filter((f) => f.level === 'stop');
  if (stops.length === 0 && result.outline.outside.length > 0) return result;
  throw new InputError(
    stops.length === 0
      ? [{ path: 'part.outside', value: [], expected: 'at least one section with a diameter and a length' }]
      : stops.map((f) => ({
          path: `part: ${f.at}`,
          value: f.because[0]?.value,
          expected: `a part that can be made. ${f.says}`,
        })),
  );
}

const said = (result: PartResult) => result.findings.map((f) => `${f.level}: ${f.says}`);

const massProperties = defineQuestion({
  name: 'mass-properties',
  asks: 'How large, how heavy and how reluctant to turn is this part?',
  input,
  output: z.strictObject({
    volume: z.number().describe('volume of the turned body [mm³]'),
    area: z.number().describe('whole surface, bores and faces included [mm²]'),
    mass: z.number().optional().describe('mass, where the material is known [kg]'),
    centroid: z.number().describe('centre of mass from the left face [mm]'),
    inertiaAxis: z.number().optional().describe('moment of inertia about the axis [kg·mm²]'),
    inertiaAcross: z
      .number()
      .optional()
      .describe('moment of inertia about a diameter through the centre of mass [kg·mm²]'),
    findings,
  }),
  sources: ['PAPPUS'],
  example: {
    input: {
      units: 'mm',
      part: { name: 'cone', outside: [{ kind: 'cone', id: 'cone', startDiameter: 20, endDiameter: 10, length: 30 }] },
    },
    gives: { volume: 5497.787, centroid: 11.7857 },
    from: 'closed form of the frustum: V = πh(R² + Rr + r²)/3 = 1750π, centroid h(R² + 2Rr + 3r²)/(4(R² + Rr + r²)) = 165/14',
  },
  answer(asked) {
    const result = sound(asked);
    const { mass } = result;
    if (!mass) throw new InputError([{ path: 'part', value: asked.part.name, expected: 'a part that encloses metal' }]);
    return {
      volume: mass.volume,
      area: mass.area,
      ...(mass.mass === undefined ? {} : { mass: mass.mass }),
      centroid: mass.centroid,
      ...(mass.inertiaAxis === undefined ? {} : { inertiaAxis: mass.inertiaAxis }),
      ...(mass.inertiaAcross === undefined ? {} : { inertiaAcross: mass.inertiaAcross }),
      findings: said(result),
    };
  },
});

const point = z.strictObject({
  z: z.number().describe('along the axis from the left face [mm]'),
  r: z.number().describe('radius [mm]'),
});

const segment = z.strictObject({
  kind: z.enum(['line', 'arc']).describe('straight, or an arc of a circle'),
  from: point.describe('where it begins'),
  to: point.describe('where it ends'),
  centre: point.optional().describe('centre of the arc; its r may lie below the axis'),
  radius: z.number().optional().describe('radius of the arc [mm]'),
  sweep: z.number().optional().describe('signed turn about the centre, positive from the axis direction outward [rad]'),
  feature: z.string().describe('section, groove or edge it belongs to'),
  assumed: z.boolean().describe('drawn with a size that was not entered'),
});

const outline = defineQuestion({
  name: 'outline',
  asks: 'What is the exact outline of this part, as lines and arcs?',
  input,
  output: z.strictObject({
    length: z.number().describe('length of the part [mm]'),
    largestDiameter: z.number().describe('largest diameter [mm]'),
    through: z.boolean().describe('a hole goes right through'),
    outside: z.array(segment).describe('from the left face over the outside to the right face'),
    insideLeft: z.array(segment).describe('hole from the left face inward, or right through'),
    insideRight: z.array(segment).describe('hole from the right face inward'),
    findings,
  }),
  sources: ['PAPPUS'],
  example: {
    input: {
      units: 'in',
      part: {
        name: 'pin',
        outside: [
          { kind: 'cylinder', id: 'pin', diameter: '1/2', length: 2, endEdge: { kind: 'chamfer', size: '1/16' } },
        ],
      },
    },
    gives: { length: 50.8, largestDiameter: 12.7, through: false },
    from: 'by hand: 2 in and 1/2 in at 25.4 mm',
  },
  answer(asked) {
    const result = sound(asked);
    const { length, largestDiameter, through, outside, insideLeft, insideRight } = result.outline;
    return {
      length,
      largestDiameter,
      through,
      outside: outside.map(shown),
      insideLeft: insideLeft.map(shown),
      insideRight: insideRight.map(shown),
      findings: said(result),
    };
  },
});

function shown(s: Segment): z.output<typeof segment> {
  const { kind, from, to, feature } = s;
  const arc = s.kind === 'arc' ? { centre: s.centre, radius: s.radius, sweep: s.sweep } : {};
  return { kind, from, to, ...arc, feature, assumed: s.assumed === true };
}

export const partQuestions = [massProperties, outline] as const;
