/**
 * Questions about O-rings and their glands.
 */
import { z } from 'zod';
import { InputError } from '../../errors.ts';
import { defineQuestion } from '../../question.ts';
import { lengthField, textField } from '../../units/fields.ts';
import type { Mm } from '../../units/quantities.ts';
import {
  limitsField,
  notesField,
  rounded,
  sourcesField,
  standingField,
  trustFields,
} from '../small-parts/answer-fields.ts';
import type { GlandRow } from './gland-row.ts';
import { mouthDiameter } from './lead-in.ts';
import { metricSections } from './metric-ring-sizes.ts';
import { findORing, nearestORings, type ORing } from './o-ring.ts';
import { grooveDiameterFor, recommendGland } from './recommend-gland.ts';
import { elastomer, extrusionGap, squareRing } from './rubber-questions.ts';

export const ringField = textField('ring by name or size: AS568-210, 20 x 2.65, 0.734 x 0.139 in, P20', 60);

const ringOutput = {
  designation: z.string().describe('the ring as it is called'),
  insideDiameter: z.number().describe('inside diameter [mm]'),
  insideTolerance: z.number().describe('its tolerance, to either side [mm]'),
  section: z.number().describe('cross-section [mm]'),
  sectionTolerance: z.number().describe('its tolerance, to either side [mm]'),
  series: z.string().describe('the series of sizes it belongs to'),
};

const ringFields = ({ designation, insideDiameter, insideTolerance, section, sectionTolerance, series }: ORing) => ({
  ...{ designation, insideDiameter, insideTolerance, section, sectionTolerance, series },
});

const oRing = defineQuestion({
  name: 'o-ring',
  asks: 'What does this O-ring measure, or which listed ring is nearest to one measured?',
  input: z.strictObject({
    ring: ringField.optional(),
    insideDiameter: lengthField('mm', 'measured inside diameter, where the ring has no name', { max: 1500 }).optional(),
    section: lengthField('mm', 'measured cross-section', { max: 10 }).optional(),
  }),
  output: z.strictObject({
    ...ringOutput,
    nearest: z.array(z.strictObject(ringOutput)).describe('the listed rings nearest to it, best first'),
    notes: notesField,
    ...trustFields,
  }),
  sources: ['mem-as568', 'globaloring', 'mem-gbt3452.1', 'mem-jisb2401', 'rtdygert'],
  example: {
    input: { ring: 'AS568-274' },
    gives: { insideDiameter: 253.59, section: 3.53 },
    from: "a seller's listing of -274 (reference seals, cross-check of AS568)",
  },
  answer({ ring: text, insideDiameter, section }) {
    if (text !== undefined) {
      const ring = findORing(text);
      return ringAnswer(ring, nearestORings(ring.insideDiameter, ring.section), unlisted(ring));
    }
    const nearest = insideDiameter && section ? nearestORings(insideDiameter, section) : [];
    const [ring] = nearest;
    if (!ring || !insideDiameter || !section) {
      const expected = 'the name of a ring, or its inside diameter and cross-section';
      throw new InputError([{ path: 'ring', value: text, expected, example: 'AS568-210' }]);
    }
    return ringAnswer(ring, nearest, measured(ring, insideDiameter, section));
  },
});

const ringAnswer = (ring: ORing, nearest: readonly ORing[], notes: string[]) => ({
  ...ringFields(ring),
  nearest: nearest.map(ringFields),
  notes,
  sources: [...ring.sources],
  standing: ring.status,
});

function unlisted(ring: ORing): string[] {
  if (ring.series !== 'metric, class B') return [];
  const cord = metricSections.includes(ring.section) ? 'a usual cord' : 'not a usual cord';
  return [`no table lists this size (its section is ${cord}): taken as written, with class B tolerances`];
}

function measured(ring: ORing, insideDiameter: Mm, section: Mm): string[] {
  const off = (of: Mm, at: Mm, tolerance: Mm): boolean => Math.abs(of - at) > tolerance;
  const outside =
    off(insideDiameter, ring.insideDiameter, ring.insideTolerance) || off(section, ring.section, ring.sectionTolerance);
  return [
    'a used ring is flattened, swollen or shrunk: measure the groove too',
    ...(outside ? [`the measures lie outside the tolerance of ${ring.designation}, the nearest listed`] : []),
  ];
}

const glandRowOutput = z.strictObject({
  source: z.string().describe('key of the source'),
  standing: standingField,
  service: z.string().describe('what the table gives it for'),
  depth: limitsField('gland depth, groove bottom to mating face'),
  width: limitsField('groove width, no back-up ring'),
});

const glandRowFields = ({ source, standing, service, depth, width }: GlandRow) => ({
  ...{ source, standing, service, depth: { ...depth }, width: { ...width } },
});

const glandRecommendation = defineQuestion({
  name: 'gland-recommendation',
  asks: 'Which groove do the published tables give this O-ring?',
  input: z.strictObject({
    ring: ringField,
    kind: z.enum(['piston', 'rod', 'face']).describe('groove in the inner part, in the housing, or in a face'),
    motion: z.enum(['static', 'moving']).default('static').describe('whether the seal slides'),
    mating: z
      .strictObject({ min: lengthField('mm', 'smallest'), max: lengthField('mm', 'largest') })
      .optional()
      .describe('bore, or rod, that the ring seals on [mm or in, as typed]; gives the groove diameter'),
  }),
  output: z.strictObject({
    ring: z.strictObject(ringOutput).describe('the ring'),
    ...glandRowOutput.shape,
    widthOneBackUp: limitsField('groove width with one back-up ring').optional(),
    widthTwoBackUps: limitsField('groove width with two back-up rings').optional(),
    radius: limitsField('radius in the groove bottom').optional(),
    edgeBreakMax: z.number().optional().describe('rounding of the groove edge, at most [mm]'),
    clearanceMax: z.number().optional().describe('diametral clearance the table goes with, at most [mm]'),
    runOutMax: z.number().optional().describe('groove to land, total run-out, at most [mm]'),
    squeeze: z
      .strictObject({ min: z.number().describe('least [%]'), max: z.number().describe('greatest [%]') })
      .describe('squeeze of this ring over the tolerances of section and depth [%]'),
    grooveDiameter: limitsField('groove diameter that keeps the depth').optional(),
    leadIns: z
      .array(
        z.strictObject({
          length: z.number().describe('length along the axis, at least [mm]'),
          angle: z.string().describe('angle to the axis [°]'),
          source: z.string().describe('key of the source'),
          standing: standingField,
        }),
      )
      .describe('lead-in chamfers published for this section, longest first'),
    mouthMin: z.number().optional().describe('diameter at the mouth of the bore chamfer, at least [mm]'),
    others: z.array(glandRowOutput).describe('what the other tables give'),
    notes: notesField,
    sources: sourcesField,
  }),
  sources: [
    'engineersedge-static',
    'apple-gland',
    'sealsupply',
    'orings-uk',
    'usseal-2',
    'usseal-4',
    'common-practice',
  ],
  example: {
    input: { ring: 'AS568-210', kind: 'piston' },
    gives: { depth: { min: 2.819, max: 2.87 }, width: { min: 4.75, max: 4.877 }, source: 'engineersedge-static' },
    from: 'engineersedge-static, row of the 3.53 mm section',
  },
  answer({ ring: text, kind, motion, mating }) {
    const ring = findORing(text);
    const { chosen, squeeze, others, leadIns, notes } = recommendGland(ring, kind, motion);
    const groove = mating && kind !== 'face' ? grooveDiameterFor(kind, mating, chosen.depth) : undefined;
    return {
      ring: ringFields(ring),
      ...glandRowFields(chosen),
      ...(chosen.widthOneBackUp && { widthOneBackUp: { ...chosen.widthOneBackUp } }),
      ...(chosen.widthTwoBackUps && { widthTwoBackUps: { ...chosen.widthTwoBackUps } }),
      ...(chosen.radius && { radius: { ...chosen.radius } }),
      edgeBreakMax: chosen.edgeBreakMax,
      clearanceMax: chosen.clearance?.max,
      runOutMax: chosen.runOutMax,
      squeeze: { min: rounded(squeeze.min, 2), max: rounded(squeeze.max, 2) },
      ...(groove && { grooveDiameter: { min: rounded(groove.min, 4), max: rounded(groove.max, 4) } }),
      leadIns: leadIns.map(({ length, angle, source, standing }) => ({
        ...{ length, source, standing },
        angle: angle ? (angle.min === angle.max ? `${angle.min}` : `${angle.min} to ${angle.max}`) : 'not shown',
      })),
      ...(groove && kind === 'piston' && { mouthMin: rounded(mouthDiameter(groove.max, ring.section), 2) }),
      others: others.map(glandRowFields),
      notes: [...notes],
      sources: [...new Set([chosen.source, ...ring.sources, ...leadIns.map((lead) => lead.source)])],
    };
  },
});

export const sealQuestions = [oRing, glandRecommendation, extrusionGap, elastomer, squareRing] as const;
