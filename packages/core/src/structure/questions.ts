/**
 * Questions about what gives way under a cut.
 */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { lengthField, numberField } from '../units/fields.ts';
import { forceThrough, passes } from './size-error.ts';
import { deflectionUnderUnitLoad } from './stepped-beam.ts';
import { vibrationQuestions } from './vibration-questions.ts';
import { beamOf, shown, workFields, workSchema } from './work-fields.ts';

const stationsField = z
  .array(lengthField('mm', 'distance from the jaw faces', { zero: true }))
  .min(1)
  .max(500)
  .describe('places asked about, from the jaw faces [mm or in, as typed]');

const bending = defineQuestion({
  name: 'bending',
  asks: 'How far does this stepped work bend away from the cutter at each place?',
  input: z.strictObject({
    ...workFields,
    force: numberField('sideways force of the cutter', 'N', 0, 20_000),
    at: stationsField,
  }),
  output: z.strictObject({
    stations: z
      .array(
        z.strictObject({
          at: z.number().describe('place, from the jaw faces [mm]'),
          compliance: z.number().describe('how far it gives there [µm/N]'),
          deflection: z.number().describe('how far it gives under the force [mm]'),
          diameterError: z.number().describe('how much too big it comes out if the force stays [mm]'),
        }),
      )
      .describe('the places asked about'),
  }),
  sources: ['przemieniecki-ch5', 'cowper-1966', 'roark-8.1'],
  example: {
    input: { sections: [{ length: 250, outerDiameter: 25 }], youngsModulus: 206_000, force: 200, at: [250] },
    gives: { stations: [{ at: 250, deflection: 0.265163 }] },
    from: 'by hand, Roark table 8.1 case 1a: F L³/(3 E I) = 0.263713 mm, and shear F L/(κ G A) = 0.001450 mm',
  },
  answer({ force, at, ...work }) {
    const yielding = deflectionUnderUnitLoad(beamOf(work), at);
    return {
      stations: at.map((z, i) => {
        const c = yielding[i] ?? 0;
        return {
          at: z,
          compliance: shown(1000 * c),
          deflection: shown(force * c),
          diameterError: shown(2 * force * c),
        };
      }),
    };
  },
});

const sizeError = defineQuestion({
  name: 'size-error',
  asks: 'What diameter does each pass leave at each place when work and lathe give way?',
  input: z.strictObject({
    work: workSchema.optional().describe('the work, when it bends; left out for work that does not'),
    machine: numberField('how far everything else gives: tool, slides, spindle', 'µm/N', 0, 100).default(0),
    at: stationsField,
    startDiameter: lengthField('mm', 'of the work before the first pass', { max: 500 }),
    setDiameters: z
      .array(lengthField('mm', 'diameter the cutter is set to', { max: 500 }))
      .min(1)
      .max(50)
      .describe('diameter set for each pass; repeat one for a spring pass [mm or in, as typed]'),
    forces: z
      .array(
        z.strictObject({
          depth: lengthField('mm', 'depth of cut on the radius', { max: 20, zero: true }),
          radial: numberField('radial force at that depth', 'N', 0, 20_000),
        }),
      )
      .min(2)
      .max(50)
      .describe('radial force at two depths or more, as the question cutting-force gives it'),
  }),
  output: z.strictObject({
    passes: z
      .array(
        z.strictObject({
          setDiameter: z.number().describe('diameter set [mm]'),
          stations: z
            .array(
              z.strictObject({
                at: z.number().describe('place, from the jaw faces [mm]'),
                depthTaken: z.number().describe('depth really taken, on the radius [mm]'),
                diameter: z.number().describe('diameter left [mm]'),
                error: z.number().describe('diameter left less diameter set [mm]'),
              }),
            )
            .describe('the places asked about'),
          spread: z.number().describe('largest less smallest diameter over the places asked about [mm]'),
        }),
      )
      .describe('the passes in order'),
  }),
  sources: ['error-copying', 'przemieniecki-ch5'],
  example: {
    input: {
      machine: 0.25,
      at: [10],
      startDiameter: 12,
      setDiameters: [11, 11],
      forces: [
        { depth: 0, radial: 0 },
        { depth: 1, radial: 1000 },
      ],
    },
    gives: { passes: [{ stations: [{ error: 0.2 }] }, { stations: [{ error: 0.04 }] }] },
    from: 'by hand, error copying: 1000 N/mm on 4000 N/mm leaves 1000/(4000 + 1000) = one fifth of what each pass finds',
  },
  answer({ work, machine, at, startDiameter, setDiameters, forces }) {
    const bends = work ? deflectionUnderUnitLoad(beamOf(work), at) : at.map(() => 0);
    const yielding = bends.map((c) => c + machine / 1000);
    const law = forceThrough(forces.map(({ depth, radial }) => ({ depth, force: radial })));
    const before = at.map(() => startDiameter / 2);
    const done = passes(
      before,
      setDiameters.map((d) => d / 2),
      law,
      yielding,
    );
    return {
      passes: done.map((pass) => {
        const diameters = pass.radius.map((r) => 2 * r);
        return {
          setDiameter: 2 * pass.setRadius,
          stations: at.map((z, i) => ({
            at: z,
            depthTaken: shown(pass.depthTaken[i] ?? 0),
            diameter: shown(diameters[i] ?? 0),
            error: shown(pass.diameterError[i] ?? 0),
          })),
          spread: shown(Math.max(...diameters) - Math.min(...diameters)),
        };
      }),
    };
  },
});

export const structureQuestions = [bending, sizeError, ...vibrationQuestions];
