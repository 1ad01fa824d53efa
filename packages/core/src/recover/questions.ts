/** What can be asked about the design of a worn part. */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { defineQuestion } from '../question.ts';
import { habitPrior } from './hypotheses.ts';
import { crownQuestion } from './question-crown.ts';
import {
  asEvidence,
  designFields,
  findingsField,
  intervalField,
  nextField,
  type SizeQuestion,
  said,
  share,
  shown,
  sizeQuestionInput,
} from './question-fields.ts';
import { roundnessQuestion } from './question-roundness.ts';
import { taperQuestion } from './question-taper.ts';
import { threadQuestion } from './question-thread.ts';
import { recover } from './recover.ts';

function recovered(asked: SizeQuestion) {
  if (asked.readings.length === 0)
    throw new InputError([
      { path: 'readings', value: [], expected: 'at least one reading', example: '[{"value": 11.98}]' },
    ]);
  const { readings, gauges } = asEvidence(asked);
  const manual = asked.stated ? [{ of: 'size', size: asked.stated }] : undefined;
  return recover({
    evidence: { readings, manual },
    gauges,
    features: [{ id: 'size', title: asked.kind, kind: asked.kind, role: asked.role }],
    machine: { country: asked.country, decade: asked.decade },
  });
}

const sizeQuestion = defineQuestion({
  name: 'recover-size',
  asks: 'What size was this worn surface made to, and what should the new one be made to?',
  input: sizeQuestionInput,
  output: z.strictObject({
    likeliest: designFields.optional().describe('the likeliest design'),
    designs: z.array(designFields).describe('designs, likeliest first'),
    nominals: z
      .array(
        z.strictObject({
          nominal: z.string().describe('nominal size'),
          probability: z.number().describe('its share [-]'),
        }),
      )
      .describe('the same by nominal size alone'),
    asMade: z
      .array(
        z.strictObject({
          specimen: z.string().describe('which specimen; empty for the only one'),
          median: z.number().describe('size as likely exceeded as not [mm]'),
          half: intervalField('holds the size with probability one half'),
          wide: intervalField('holds it with probability 95 %'),
          density: z
            .strictObject({
              from: z.number().describe('first size [mm]'),
              step: z.number().describe('distance between sizes [mm]'),
              values: z.array(z.number()).describe('probability density at each [1/mm]'),
            })
            .describe('for drawing'),
        }),
      )
      .describe('size as made of each specimen'),
    wear: z
      .array(
        z.strictObject({
          reading: z.string().describe('r1 is the first reading'),
          likely: z.number().describe('metal lost there, on diameter for a diameter; below nought where it grew [mm]'),
          range: intervalField('95 % of the probability'),
        }),
      )
      .describe('wear at the place of each reading'),
    limits: z
      .array(
        z.strictObject({
          kind: z.string().describe('as made, own size or matched to the mate'),
          min: z.number().describe('smallest [mm]'),
          max: z.number().describe('largest [mm]'),
          why: z.string().describe('reason'),
        }),
      )
      .describe('limits for the new part, recommended first'),
    inches: z.number().describe('probability that it was drawn in inches [-]'),
    findings: findingsField,
  }),
  sources: ['composed-error', 'recover-priors', 'GUM', 'ISO-286-1', 'metrology-methods'],
  example: {
    input: {
      units: 'mm',
      role: 'sliding',
      country: 'Germany',
      readings: [
        { value: 39.96, gauge: 'outside micrometer', condition: 'protected' },
        { value: 39.965, gauge: 'outside micrometer', condition: 'protected' },
        { value: 39.91, gauge: 'outside micrometer', condition: 'worn' },
      ],
    },
    gives: { likeliest: { design: '40 f7', min: 39.95, max: 39.975 } },
    from: 'limits of 40 f7 from ISO 286-1 (table in ND-15.2a: −25/−50 µm); the readings were invented inside them',
  },
  answer(asked) {
    const result = recovered(asked);
    const size = result.sizes[0];
    const designs = (size?.designs ?? []).map((d) => ({
      design: d.written,
      probability: share(d.probability),
      min: shown(d.min),
      max: shown(d.max),
    }));
    return {
      ...(designs[0] ? { likeliest: designs[0] } : {}),
      designs,
      nominals: (size?.nominals ?? []).map((n) => ({ nominal: n.written, probability: share(n.probability) })),
      asMade: (size?.made ?? []).map(({ specimen, median, half, wide, density }) => ({
        specimen,
        median: shown(median),
        half: { low: shown(half.low), high: shown(half.high) },
        wide: { low: shown(wide.low), high: shown(wide.high) },
        density: { from: density.from, step: density.step, values: [...density.values] },
      })),
      wear: (size?.wear ?? []).map((w) => ({
        reading: w.reading,
        likely: shown(w.likely),
        range: { low: shown(w.range.low), high: shown(w.range.high) },
      })),
      limits: (size?.limits ?? []).map(({ kind, min, max, why }) => ({ kind, min, max, why })),
      inches: share(size ? result.inches : inchesBefore(asked)),
      findings: said(result.findings),
    };
  },
});

function inchesBefore({ country, decade }: SizeQuestion): number {
  const [, , hole, shaft] = habitPrior({ country, decade });
  return hole + shaft;
}

const nextReading = defineQuestion({
  name: 'next-reading',
  asks: 'Which further reading would tell most about the design of this worn surface?',
  input: sizeQuestionInput,
  output: z.strictObject({
    next: z.array(nextField).describe('readings worth taking, most telling first; empty when none tells enough'),
    likeliest: z.string().optional().describe('likeliest design now'),
    findings: findingsField,
  }),
  sources: ['lindley-1956', 'recover-priors', 'GUM'],
  example: {
    input: {
      units: 'mm',
      role: 'sliding',
      country: 'Germany',
      readings: [
        { value: 39.96, gauge: 'outside micrometer', condition: 'protected' },
        { value: 39.965, gauge: 'outside micrometer', condition: 'protected' },
      ],
    },
    gives: { likeliest: '40 f7' },
    from: 'limits of 40 f7 from ISO 286-1 (table in ND-15.2a: −25/−50 µm); the readings were invented inside them',
  },
  answer(asked) {
    const result = recovered(asked);
    return {
      next: result.next.map(({ says, gain, surenessNow, surenessThen }) => ({
        says,
        gain: share(gain),
        surenessNow: share(surenessNow),
        surenessThen: share(surenessThen),
      })),
      likeliest: result.sizes[0]?.designs[0]?.written,
      findings: said(result.findings),
    };
  },
});

export const recoverQuestions = [
  sizeQuestion,
  threadQuestion,
  taperQuestion,
  crownQuestion,
  roundnessQuestion,
  nextReading,
] as const;
