/** Questions about change gears. */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { findingField, plainFindings } from '../lathe/answer-fields.ts';
import { defineQuestion } from '../question.ts';
import { parseThread, type Thread } from '../standards/threads/thread.ts';
import { lengthField, numberField, textField } from '../units/fields.ts';
import { type Mm, mmPerInch } from '../units/quantities.ts';
import { driftOver, type GearTrain, gearTrains } from './tables/change-gears.ts';
import { halfNuts } from './tables/half-nuts.ts';
import { leadscrewOf, notGoodEnough, trainFindings, whereTo } from './thread-gears.ts';

const trainFields = {
  drivers: z.array(z.number()).describe('teeth of the driving wheels, the one that turns with the spindle first [-]'),
  driven: z
    .array(z.number())
    .describe('teeth of the wheels they drive, in the same order, the last on the leadscrew [-]'),
  pitch: z.number().describe('what it gives for one turn of the spindle [mm]'),
  errorPpm: z.number().describe('how far that is off, in a million; positive is too coarse [-]'),
  drift: z.number().describe('the same added up over the engaged length [mm]'),
};

const changeGears = defineQuestion({
  name: 'change-gears',
  asks: 'Which change gears cut a pitch, how far is it off, and where may the half nuts be closed?',
  input: z.strictObject({
    designation: textField('thread as it is written: M10x1.25, 3/8 BSF', 60).optional(),
    pitch: lengthField(
      'mm',
      'pitch, or the lead of a thread of several starts; 1/11 in for threads an inch',
    ).optional(),
    side: z
      .enum(['external', 'internal'])
      .default('external')
      .describe('side of the thread, for how closely the pitch must be kept; only with a designation'),
    leadscrew: z
      .discriminatedUnion('kind', [
        z.strictObject({
          kind: z.literal('metric').describe('pitch in millimetres'),
          pitch: numberField('pitch', 'mm', 0.5, 12),
        }),
        z.strictObject({
          kind: z.literal('inch').describe('threads to the inch'),
          threadsPerInch: numberField('threads', 'per inch', 2, 40),
        }),
      ])
      .describe('leadscrew of the lathe'),
    gears: z
      .array(z.int().min(10).max(200))
      .min(2)
      .max(60)
      .describe('teeth of every wheel on hand, one entry for each wheel [-]'),
    engagedLength: lengthField('mm', 'length over which thread and mate are engaged').default(10),
    threadDial: z
      .strictObject({
        divisions: z.int().min(1).max(64).describe('numbered and plain lines together [-]'),
        travelPerTurn: z.number().min(0.25).max(24).describe('travel of the saddle for one turn of the dial [in]'),
      })
      .optional()
      .describe('thread dial of an inch lathe; 8 lines and one turn in an inch of travel when left out'),
  }),
  output: z.strictObject({
    pitch: z.number().describe('pitch or lead asked for [mm]'),
    best: z.strictObject(trainFields).describe('train with the least error, of several the one with the fewest wheels'),
    setUp: z.string().describe('where each wheel goes; when the wheels do not give the pitch, that they do not'),
    halfNuts: z
      .enum(['closed', 'anywhere', 'at steps', 'by dial'])
      .describe('whether the half nuts may be opened between passes'),
    halfNutsSay: z.string().describe('the same in words'),
    lines: z.array(z.number()).optional().describe('lines of the thread dial at which they may be closed [-]'),
    others: z
      .array(z.strictObject(trainFields))
      .describe('the next best trains, in order; none when the best is not good enough'),
    findings: findingField,
  }),
  sources: ['JONES1915-p93', 'geometry', 'common-practice'],
  example: {
    input: {
      pitch: '1/11 in',
      leadscrew: { kind: 'inch', threadsPerInch: 4 },
      gears: [18, 36, 48, 66],
    },
    gives: { best: { drivers: [48, 18], driven: [36, 66], errorPpm: 0 } },
    from: 'J. Rose, Modern Machine Shop Practice, p. 632: 36/48 × 66/18 × 4 = 11 threads to the inch',
  },
  answer({ designation, pitch, side, leadscrew, gears, engagedLength, threadDial }) {
    const { lead, thread } = asked(designation, pitch);
    const screw = leadscrewOf({ leadscrew });
    const trains = gearTrains(lead, screw?.pitch ?? Number.NaN, gears);
    const [best, ...others] = trains.map((train) => trainOf(train, engagedLength));
    const [train] = trains;
    if (!best || !train || !screw)
      throw new InputError([{ path: 'gears', value: gears, expected: 'two wheels or more', example: '[40, 60]' }]);
    const findings = trainFindings('thread', train, lead, engagedLength, thread && { thread, side });
    const stopped = findings.some((f) => f.level === 'stop');
    const nuts = halfNuts(train, lead, screw, threadDial);
    return {
      pitch: fine(lead),
      best,
      setUp: stopped ? notGoodEnough(train, engagedLength) : whereTo(train, gears),
      halfNuts: nuts.keep,
      halfNutsSay: nuts.says,
      ...(nuts.lines ? { lines: [...nuts.lines] } : {}),
      others: stopped ? [] : others,
      findings: plainFindings(findings),
    };
  },
});

function asked(designation: string | undefined, pitch: Mm | undefined): { lead: Mm; thread?: Thread } {
  if ((designation === undefined) === (pitch === undefined))
    throw new InputError([
      { path: 'pitch', value: pitch, expected: 'either a pitch or a designation', example: '1.25, or M12x1.25' },
    ]);
  if (designation === undefined) return { lead: pitch ?? mmPerInch };
  const thread = parseThread(designation);
  return { lead: thread.pitch * thread.starts, thread };
}

function trainOf({ meshes, lead, error }: GearTrain, engaged: Mm) {
  return {
    drivers: meshes.map((m) => m.driver),
    driven: meshes.map((m) => m.driven),
    pitch: fine(lead),
    errorPpm: Math.round(1e7 * error) / 10 + 0,
    drift: fine(driftOver(error, engaged)),
  };
}

function fine(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

export const gearQuestions = [changeGears] as const;
