/** Which thread was this, and what tells it from its look-alikes? */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { defineQuestion } from '../question.ts';
import { sideField } from '../standards/threads/question-fields.ts';
import { lengthField, numberField, textField } from '../units/fields.ts';
import { radians } from '../units/quantities.ts';
import { habitPrior } from './hypotheses.ts';
import { share, shown } from './question-fields.ts';
import { nextOfThread, type ThreadEvidence } from './thread-words.ts';
import { matchesOf, threadAnswer } from './threads.ts';

export const threadQuestion = defineQuestion({
  name: 'recover-thread',
  asks: 'Which thread was cut here, and what would tell it from its look-alikes?',
  input: z.strictObject({
    side: sideField.default('external'),
    crest: lengthField('mm', 'over the crests of a bolt, across those of a nut'),
    crestUncertainty: lengthField('mm', 'one standard uncertainty of the crest', { max: 5 }).default(0.02),
    over: lengthField('mm', 'length over several pitches, or one pitch').optional(),
    crests: z.int().min(1).max(200).default(1).describe('pitches that length spans [-]'),
    overUncertainty: lengthField('mm', 'one standard uncertainty of that length', { max: 5 }).default(0.03),
    threadsPerInch: numberField('threads an inch, from a pitch gauge, instead of a length', '-', 1, 200).optional(),
    flankAngle: numberField('angle between the flanks, from a gauge held against the light', '°', 20, 100).optional(),
    flankUncertainty: numberField('one standard uncertainty of that angle', '°', 0.05, 20).default(1.5),
    country: textField('country the machine was made in', 60).optional(),
    decade: z.int().min(1700).max(2100).optional().describe('decade it was built [-]'),
  }),
  output: z.strictObject({
    likeliest: z.string().optional().describe('the likeliest thread'),
    designs: z
      .array(
        z.strictObject({
          designation: z.string().describe('the thread'),
          probability: z.number().describe('its share [-]'),
          system: z.enum(['metric', 'inch', 'either']).describe('system it belongs to'),
          use: z.string().optional().describe('where it is commonly met'),
        }),
      )
      .describe('threads, likeliest first; empty when no listed thread fits'),
    pitch: z.number().optional().describe('pitch as measured [mm]'),
    lookAlike: z.string().optional().describe('what tells the first two apart'),
    next: z
      .array(
        z.strictObject({
          says: z.string().describe('what to measure'),
          gain: z.number().describe('expected gain of information [bit]'),
        }),
      )
      .describe('readings worth taking'),
  }),
  sources: ['ISO261', 'ASME-B1.1', 'BS84', 'recover-priors'],
  example: {
    input: { crest: 9.9, over: 12.5, crests: 10 },
    gives: { likeliest: 'M10x1.25', pitch: 1.25 },
    from: 'ISO 261: M10 has pitches of 1.5, 1.25, 1 and 0.75 mm; the crest of a bolt lies a little below 10',
  },
  answer(asked) {
    if (asked.over !== undefined && asked.threadsPerInch !== undefined)
      throw new InputError([
        {
          path: 'threadsPerInch',
          value: asked.threadsPerInch,
          expected: 'either a length over pitches or threads an inch, not both',
        },
      ]);
    const e: ThreadEvidence = {
      of: 'the thread',
      title: 'thread',
      side: asked.side,
      crest: { value: asked.crest, uncertainty: asked.crestUncertainty },
      pitch: pitchOf(asked),
      flankAngle:
        asked.flankAngle === undefined
          ? undefined
          : { value: radians(asked.flankAngle), uncertainty: radians(asked.flankUncertainty) },
    };
    const matches = matchesOf(e);
    const answer = threadAnswer(e, matches, habitPrior(asked));
    return {
      likeliest: matches.length === 0 ? undefined : answer.designs[0]?.designation,
      designs: matches.length === 0 ? [] : answer.designs.map((d) => ({ ...d, probability: share(d.probability) })),
      pitch: answer.pitch === undefined ? undefined : shown(answer.pitch),
      lookAlike: answer.lookAlike,
      next: nextOfThread(e, matches).map(({ says, gain }) => ({ says, gain: share(gain) })),
    };
  },
});

interface AskedPitch {
  readonly over?: number | undefined;
  readonly crests: number;
  readonly overUncertainty: number;
  readonly threadsPerInch?: number | undefined;
}

/** A pitch gauge is seen to sit or not: half a thread in an inch of blade either way. */
function pitchOf({ over, crests, overUncertainty, threadsPerInch }: AskedPitch): ThreadEvidence['pitch'] {
  if (over !== undefined) return { value: over / crests, uncertainty: overUncertainty / crests };
  if (threadsPerInch === undefined) return undefined;
  const pitch = 25.4 / threadsPerInch;
  return { value: pitch, uncertainty: (0.25 * pitch) / threadsPerInch };
}
