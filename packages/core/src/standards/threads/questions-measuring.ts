/** Questions about a thread that is measured: over wires, and which thread it is. */
import { z } from 'zod';
import { DomainError, InputError } from '../../errors.ts';
import { defineQuestion } from '../../question.ts';
import type { SourceKey } from '../../sources/register.ts';
import { lengthField, numberField } from '../../units/fields.ts';
import { degrees, mmPerInch, radians } from '../../units/quantities.ts';
import { apart, findThread } from './find.ts';
import { forms } from './forms.ts';
import { threadLimits } from './limits.ts';
import {
  bestWire,
  leadAngle,
  pitchDiameterFromWires,
  plainReading,
  readingOverWires,
  wireRange,
  wireSensitivity,
} from './over-wires.ts';
import { bandField, classField, sideField, sourceFields, sourcesOf, threadField } from './question-fields.ts';
import type { Thread } from './record.ts';
import { parseThread } from './thread.ts';

/** To a tenth of a micrometre: what a question shows. */
const shown = (value: number) => Number(value.toFixed(4)) + 0;

const uncertaintyFields = {
  reading: numberField('standard uncertainty of the reading', 'mm', 0, 1).default(0.003),
  wire: numberField('standard uncertainty of the wires’ diameter', 'mm', 0, 1).default(0.001),
  pitch: numberField('standard uncertainty of the pitch', 'mm', 0, 1).default(0.002),
  halfAngle: numberField('standard uncertainty of the half angle', '°', 0, 5).default(0.25),
};

export const wiresQuestion = defineQuestion({
  name: 'over-wires',
  asks: 'What does the micrometer read over three wires, and what pitch diameter does a reading mean?',
  input: z.strictObject({
    designation: threadField,
    toleranceClass: classField,
    wire: lengthField('mm', 'diameter of the wires; by default the best wire').optional(),
    reading: lengthField('mm', 'reading over the wires, to have it turned into a pitch diameter').optional(),
    uncertainty: z
      .strictObject(uncertaintyFields)
      .optional()
      .describe('standard uncertainties, for that of the pitch diameter'),
  }),
  output: z.strictObject({
    designation: z.string().describe('the thread'),
    bestWire: z.number().describe('wire that touches at the pitch line [mm]'),
    leastWire: z.number().describe('least wire that stands above the crests [mm]'),
    greatestWire: z.number().describe('greatest wire that still touches the flanks [mm]'),
    wire: z.number().describe('wire reckoned with [mm]'),
    leadAngle: z.number().describe('angle of lead [°]'),
    basicReading: z.number().describe('reading at the basic pitch diameter, lead angle regarded [mm]'),
    plainReading: z.number().describe('the same by the plain formula of the tables, lead angle disregarded [mm]'),
    readingLimits: bandField('readings at the limits of the pitch diameter').optional(),
    pitchDiameter: z.number().optional().describe('pitch diameter that the reading means [mm]'),
    uncertainty: z.number().optional().describe('standard uncertainty of that pitch diameter [mm]'),
    verdict: z
      .enum(['within limits', 'too large', 'too small', 'no limits held'])
      .optional()
      .describe('pitch diameter against its limits'),
    sensitivity: z
      .strictObject({
        reading: z.number().describe('change of pitch diameter with the reading [-]'),
        wire: z.number().describe('with the diameter of the wires [-]'),
        pitch: z.number().describe('with the pitch [-]'),
        halfAngle: z.number().describe('with the half angle [mm/°]'),
      })
      .describe('how the pitch diameter answers to each error'),
    ...sourceFields,
  }),
  sources: ['geometry', 'TC-sheet', 'MH31-p2130', 'ISO965-1-T1'],
  example: {
    input: { designation: 'M10' },
    gives: { bestWire: 0.866, sensitivity: { wire: -3, pitch: 0.866 } },
    from: 'TC-sheet, 60°: best wire 0.577350P, coefficients 3 and 0.866025',
  },
  answer({ designation: text, toleranceClass, wire: given, reading, uncertainty }) {
    const t = parseThread(text);
    if (t.family === 'npt' || t.family === 'pipe-taper') {
      throw new InputError([
        {
          path: 'thread',
          value: text,
          expected: 'a parallel thread: on a taper the wires climb with the cone',
          example: 'G 1/4 A',
        },
      ]);
    }
    const best = bestWire(t.pitch, t.flankAngle);
    const wire = given ?? best;
    const range = wireRange(t.pitch, t.flankAngle, forms[t.form].crestTruncation * t.pitch);
    const limits = heldPitchLimits(t, toleranceClass);
    const k = wireSensitivity(t, wire);
    const found = reading === undefined ? undefined : pitchDiameterFromWires(reading, t, wire);
    const u = { reading: 0.003, wire: 0.001, pitch: 0.002, halfAngle: 0.25, ...uncertainty };
    const sources: SourceKey[] = ['geometry', 'TC-sheet', ...(limits?.sources ?? []), ...t.sources];
    return {
      designation: t.designation,
      bestWire: shown(best),
      leastWire: shown(range.min),
      greatestWire: shown(range.max),
      wire: shown(wire),
      leadAngle: shown(degrees(leadAngle(t))),
      basicReading: shown(readingOverWires(t, wire)),
      plainReading: shown(plainReading(t, wire)),
      ...(limits
        ? {
            readingLimits: {
              max: shown(readingOverWires({ ...t, pitchDiameter: limits.pitch.max }, wire)),
              min: shown(readingOverWires({ ...t, pitchDiameter: limits.pitch.min }, wire)),
            },
          }
        : {}),
      ...(found === undefined
        ? {}
        : {
            pitchDiameter: shown(found),
            uncertainty: shown(
              Math.hypot(u.reading, k.wire * u.wire, k.pitch * u.pitch, k.halfAngle * radians(u.halfAngle)),
            ),
            verdict: verdictOf(found, limits?.pitch),
          }),
      sensitivity: {
        reading: 1,
        wire: shown(k.wire),
        pitch: shown(k.pitch),
        halfAngle: shown(k.halfAngle * radians(1)),
      },
      ...sourcesOf(sources),
    };
  },
});

function verdictOf(found: number, pitch: { max: number; min: number } | undefined) {
  if (!pitch) return 'no limits held' as const;
  if (found > pitch.max) return 'too large' as const;
  return found < pitch.min ? ('too small' as const) : ('within limits' as const);
}

/** Limits of the bolt where they are held; a class that was asked for must exist. */
function heldPitchLimits(t: Thread, toleranceClass: string | undefined) {
  if (toleranceClass !== undefined) return threadLimits(t, 'external', toleranceClass);
  try {
    return threadLimits(t, 'external');
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

export const findQuestion = defineQuestion({
  name: 'find-thread',
  asks: 'Which thread is this, by its crest diameter, its pitch and perhaps its angle?',
  input: z.strictObject({
    side: sideField.default('external'),
    crestDiameter: lengthField('mm', 'over the crests of a bolt, across those of a nut'),
    crestUncertainty: lengthField('mm', 'standard uncertainty of that').default(0.02),
    pitch: lengthField('mm', 'pitch').optional(),
    threadsPerInch: numberField('threads an inch, in place of the pitch', '1/in', 1, 200).optional(),
    pitchUncertainty: lengthField(
      'mm',
      'standard uncertainty of the pitch: a tenth as much if it was taken over ten crests',
    ).default(0.01),
    flankAngle: numberField('angle between the flanks, if it was measured', '°', 20, 120).optional(),
    angleUncertainty: numberField('standard uncertainty of the angle', '°', 0.01, 20).default(1.5),
  }),
  output: z.strictObject({
    best: z.string().optional().describe('likeliest designation; absent when no listed thread fits'),
    matches: z
      .array(
        z.strictObject({
          designation: z.string().describe('thread'),
          share: z.number().describe('share among all that fit, 0 to 1 [-]'),
          crestOff: z.number().describe('crest outside its limits, in uncertainties [-]'),
          pitchOff: z.number().describe('pitch off, in uncertainties [-]'),
          angleOff: z.number().describe('angle off, in uncertainties [-]'),
          use: z.string().optional().describe('where it is commonly met'),
          apart: z.string().optional().describe('what sets it apart from the likeliest'),
        }),
      )
      .describe('threads that fit, the likeliest first'),
    ...sourceFields,
  }),
  sources: ['ISO261', 'ASME-B1.1', 'BS84', 'MH31-p2115', 'ISO228-1', 'UA-NPT'],
  example: {
    input: { crestDiameter: 6.28, threadsPerInch: 20, flankAngle: 55 },
    gives: { best: '1/4 BSW' },
    from: 'OLDENGINE-W: 1/4 BSW is 0.250 in with 20 to the inch at 55°; a worn crest',
  },
  answer({
    side,
    crestDiameter,
    crestUncertainty,
    pitch,
    threadsPerInch,
    pitchUncertainty,
    flankAngle,
    angleUncertainty,
  }) {
    const taken = pitch ?? (threadsPerInch === undefined ? undefined : mmPerInch / threadsPerInch);
    if (taken === undefined || (pitch !== undefined && threadsPerInch !== undefined)) {
      throw new InputError([
        {
          path: 'pitch',
          value: pitch,
          expected: 'the pitch or the threads an inch, one of them',
          example: '1.25 or threadsPerInch 20',
        },
      ]);
    }
    const matches = findThread({
      side,
      crestDiameter: { value: crestDiameter, uncertainty: crestUncertainty },
      pitch: { value: taken, uncertainty: pitchUncertainty },
      ...(flankAngle === undefined
        ? {}
        : { flankAngle: { value: radians(flankAngle), uncertainty: radians(angleUncertainty) } }),
    });
    const best = matches[0]?.thread;
    return {
      ...(best === undefined ? {} : { best: best.designation }),
      matches: matches.map((m) => ({
        designation: m.thread.designation,
        share: shown(m.probability),
        crestOff: shown(m.off.crest),
        pitchOff: shown(m.off.pitch),
        angleOff: shown(m.off.angle),
        ...(m.use === undefined ? {} : { use: m.use }),
        ...(best === undefined || m.thread === best ? {} : { apart: apartText(best, m.thread) }),
      })),
      ...sourcesOf(matches.flatMap((m) => m.thread.sources)),
    };
  },
});

/** `crest +0.21 mm, ten pitches +0.58 mm, angle −5.0°`. */
function apartText(best: Thread, other: Thread): string {
  const difference = apart(best, other);
  const signed = (value: number, digits: number) => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(digits)}`;
  const angle = degrees(difference.flankAngle);
  const parts = [
    `crest ${signed(difference.crestDiameter, 2)} mm`,
    `ten pitches ${signed(difference.tenPitches, 2)} mm`,
    ...(Math.abs(angle) > 0.1 ? [`angle ${signed(angle, 1)}°`] : []),
  ];
  return parts.join(', ');
}
