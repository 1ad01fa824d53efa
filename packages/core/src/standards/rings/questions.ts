/**
 * The question about retaining rings.
 */
import { z } from 'zod';
import { defineQuestion } from '../../question.ts';
import { lengthField, numberField } from '../../units/fields.ts';
import { limitsField, notesField, rounded, trustFields } from '../small-parts/answer-fields.ts';
import { retainingRing, ringGrooveLoad } from './retaining-ring.ts';

const retainingRingQuestion = defineQuestion({
  name: 'retaining-ring',
  asks: 'Which groove does a retaining ring want on this shaft or in this bore, and what load does it carry?',
  input: z.strictObject({
    place: z.enum(['shaft', 'bore']).describe('on a shaft, DIN 471, or in a bore, DIN 472'),
    diameter: lengthField('mm', 'shaft or bore', { max: 100 }),
    yieldStrength: numberField('yield strength of the grooved part', 'MPa', 10, 2000).default(200),
  }),
  output: z.strictObject({
    ringThickness: z.number().describe('thickness of the ring [mm]'),
    grooveNominal: z.number().describe('groove diameter, nominal [mm]'),
    toleranceClass: z.string().describe('tolerance class of the groove diameter'),
    groove: limitsField('groove diameter'),
    grooveWidth: limitsField('groove width'),
    grooveDepth: z.number().describe('groove depth [mm]'),
    edgeMargin: z.number().describe('from the groove to the end of the part, at least [mm]'),
    grooveLoad: z.number().describe('steady load the groove carries at that yield strength, ring on a square edge [N]'),
    notes: notesField,
    ...trustFields,
  }),
  sources: ['DIN471-A', 'DIN471-B', 'DIN471-MEM', 'DIN472-MEM', 'KS1336'],
  example: {
    input: { place: 'shaft', diameter: 19 },
    gives: { grooveNominal: 18, groove: { min: 17.89, max: 18 }, edgeMargin: 1.5, grooveWidth: { min: 1.3 } },
    from: 'DIN471-A and DIN471-B, row of 19 mm',
  },
  answer({ place, diameter, yieldStrength }) {
    const { ringThickness, groove, grooveWidth, grooveDepth, edgeMargin, notes, sources, standing } = retainingRing(
      place,
      diameter,
    );
    return {
      ringThickness,
      grooveNominal: groove.nominal,
      toleranceClass: groove.toleranceClass,
      groove: { min: groove.min, max: groove.max },
      grooveWidth: { ...grooveWidth },
      grooveDepth,
      edgeMargin,
      grooveLoad: rounded(ringGrooveLoad(diameter, groove.nominal, yieldStrength), 0),
      notes: [...notes, 'wear eye protection when fitting or taking off a ring: it can fly'],
      sources: [...sources],
      standing,
    };
  },
});

export const ringQuestions = [retainingRingQuestion] as const;
