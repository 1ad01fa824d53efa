/**
 * Questions about O-rings, their glands, gaps and rubbers, and square rings.
 */
import { z } from 'zod';
import { InputError } from '../../errors.ts';
import { defineQuestion } from '../../question.ts';
import { lengthField, numberField, textField } from '../../units/fields.ts';
import type { Mm } from '../../units/quantities.ts';
import {
  limitsField,
  notesField,
  rounded,
  sourcesField,
  standingField,
  trustFields,
} from '../small-parts/answer-fields.ts';
import { elastomersFor, elastomerTemperatures, knownElastomer, rateElastomer } from './elastomer.ts';
import { extrusionLimit } from './extrusion-gap.ts';
import type { GlandRow } from './gland-row.ts';
import { mouthDiameter } from './lead-in.ts';
import { metricSections } from './metric-ring-sizes.ts';
import { findORing, nearestORings, type ORing } from './o-ring.ts';
import { grooveDiameterFor, recommendGland } from './recommend-gland.ts';
import { brakeCaution, squareRingFacts } from './square-ring.ts';

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
  input: z.union([
    z.strictObject({ ring: ringField }),
    z.strictObject({
      insideDiameter: lengthField('mm', 'measured inside diameter', { max: 1500 }),
      section: lengthField('mm', 'measured cross-section', { max: 10 }),
    }),
  ]),
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
  answer(input) {
    const nearest =
      'ring' in input
        ? nearestORings(findORing(input.ring).insideDiameter, findORing(input.ring).section)
        : nearestORings(input.insideDiameter, input.section);
    const ring = 'ring' in input ? findORing(input.ring) : nearest[0];
    if (!ring) throw new InputError([{ path: 'ring', value: input, expected: 'an O-ring', example: 'AS568-210' }]);
    return {
      ...ringFields(ring),
      nearest: nearest.map(ringFields),
      notes: 'ring' in input ? unlisted(ring) : measured(ring, input.insideDiameter, input.section),
      sources: [...ring.sources],
      standing: ring.status,
    };
  },
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

const extrusionGap = defineQuestion({
  name: 'extrusion-gap',
  asks: 'How much clearance may the parts have before the pressure pushes the ring into the gap?',
  input: z.strictObject({
    hardness: numberField('hardness of the ring', 'Shore A', 70, 100),
    pressure: numberField('pressure it holds', 'MPa', 0, 35),
    section: lengthField('mm', 'cross-section of the ring', { max: 10 }),
    elastomer: textField('rubber, if known: silicone counts half', 40).optional(),
  }),
  output: z.strictObject({
    diametral: z.number().describe('largest clearance on the diameter, by the stricter table [mm]'),
    radial: z.number().describe('largest gap on one side [mm]'),
    column: z.number().describe('the hardness whose column was used [Shore A]'),
    tables: z
      .array(
        z.strictObject({
          diametral: z.number().describe('[mm]'),
          radial: z.number().describe('[mm]'),
          source: z.string().describe('key of the source'),
        }),
      )
      .describe('what each table says, the stricter first'),
    ...trustFields,
    notes: notesField,
  }),
  sources: ['sealanddesign', 'mem-trelleborg-gap'],
  example: {
    input: { hardness: 70, pressure: 15, section: 3.53 },
    gives: { diametral: 0.051 },
    from: 'sealanddesign: 70 Shore A, 2000 to 3000 psi, 0.002 in on the diameter',
  },
  answer({ hardness, pressure, section, elastomer }) {
    const rubber = elastomer === undefined ? undefined : knownElastomer(elastomer);
    const silicone = rubber === 'VMQ' || rubber === 'FVMQ';
    const limit = extrusionLimit(hardness, pressure, section, silicone);
    const [strictest] = limit.tables;
    return {
      diametral: rounded(limit.diametral, 3),
      radial: rounded(limit.radial, 4),
      column: limit.hardness,
      tables: limit.tables.map((t) => ({
        diametral: rounded(t.diametral, 3),
        radial: rounded(t.radial, 4),
        source: t.source,
      })),
      sources: limit.tables.map((t) => t.source),
      standing: strictest?.source === 'sealanddesign' ? ('read' as const) : ('from memory' as const),
      notes: [
        'without a back-up ring; the tables disagree, the stricter is taken',
        'the radial figure is for the side where the gap is widest: parts that lie against each other have all of it there',
        ...(elastomer !== undefined && rubber === undefined
          ? [`the rubber ${elastomer} is not in the table: not taken for silicone`]
          : []),
      ],
    };
  },
});

const elastomer = defineQuestion({
  name: 'elastomer',
  asks: 'Which rubber stands this medium, and between which temperatures?',
  input: z.strictObject({
    medium: textField('what the ring touches: mineral oil, DOT 4, compressed air, hot water…', 60),
    elastomer: textField('one rubber to judge: NBR, EPDM, FKM…; all rated ones where not given', 40).optional(),
    coldest: numberField('coldest it gets', '°C', -100, 400).optional(),
    hottest: numberField('hottest it gets', '°C', -100, 400).optional(),
  }),
  output: z.strictObject({
    medium: z.string().describe('the medium as the tables call it'),
    rubbers: z
      .array(
        z.strictObject({
          elastomer: z.string().describe('rubber'),
          rating: z
            .string()
            .describe(
              'A excellent, B good, C average, D poor, E not to be used; ? not rated. The worst of the sources',
            ),
          coldest: z.number().optional().describe('coldest for a standard grade [°C]'),
          hottest: z.number().optional().describe('hottest for a standard grade [°C]'),
          suits: z.enum(['yes', 'no', 'not known']).describe('rated A or B, and within its temperatures'),
          because: z.array(z.string()).describe('what speaks against it, or what the sources note'),
          sources: sourcesField,
        }),
      )
      .describe('rubbers, best first'),
    caution: z.string().optional().describe('what not to forget'),
  }),
  sources: ['bodeseal', 'oringsupply-nbr-epdm', 'mem-elastomers', 'pixieset-materials'],
  example: {
    input: { medium: 'DOT 4', elastomer: 'NBR' },
    gives: { rubbers: [{ elastomer: 'NBR', rating: 'E', suits: 'no' }] },
    from: 'oringsupply-nbr-epdm: nitrile is not suitable for glycol brake fluid',
  },
  answer({ medium, elastomer: one, coldest, hottest }) {
    const verdicts = one === undefined ? elastomersFor(medium) : [rateElastomer(one, medium)];
    const fluid = verdicts[0]?.medium ?? medium;
    return {
      medium: fluid,
      rubbers: verdicts.map((verdict) => {
        const limits = { coldest: verdict.coldest, hottest: verdict.hottest };
        const tooCold = coldest !== undefined && limits.coldest !== undefined && coldest < limits.coldest;
        const tooHot = hottest !== undefined && limits.hottest !== undefined && hottest > limits.hottest;
        const good = verdict.rating === 'A' || verdict.rating === 'B';
        const suits: 'yes' | 'no' | 'not known' =
          tooCold || tooHot || (verdict.rating !== undefined && !good) ? 'no' : good ? 'yes' : 'not known';
        return {
          elastomer: verdict.material,
          rating: verdict.rating ?? '?',
          ...limits,
          suits,
          because: [
            ...(tooCold ? [`${coldest} °C is colder than ${limits.coldest}`] : []),
            ...(tooHot ? [`${hottest} °C is hotter than ${limits.hottest}`] : []),
            ...(verdict.best !== verdict.rating ? [`sources disagree: ${verdict.best} to ${verdict.rating}`] : []),
            ...verdict.rows.flatMap((row) => (row.note === undefined ? [] : [`${row.note} [${row.source}]`])),
          ],
          sources: [...new Set([...verdict.sources, ...elastomerTemperatures(verdict.material).sources])],
        };
      }),
      ...(fluid.includes('brake') && { caution: brakeCaution }),
    };
  },
});

const squareRing = defineQuestion({
  name: 'square-ring',
  asks: 'What is published about square-cut rings in calipers and slave cylinders?',
  input: z.strictObject({
    about: z
      .enum(['groove', 'ring', 'retraction', 'bore and piston', 'care', 'duty'])
      .optional()
      .describe('one topic; all where not given'),
  }),
  output: z.strictObject({
    facts: z
      .array(
        z.strictObject({
          about: z.string().describe('topic'),
          says: z.string().describe('what is published'),
          min: z.number().optional().describe('least, in the unit given'),
          max: z.number().optional().describe('most, in the unit given'),
          unit: z.string().optional().describe('unit of the figures'),
          source: z.string().describe('key of the source'),
          standing: standingField,
        }),
      )
      .describe('facts, each with its source'),
    missing: z.string().describe('what no source read gives'),
    caution: z.string().describe('what not to forget'),
  }),
  sources: ['montesa-cota4', 'mercury-1992', 'nissan-2000', 'US8794396B2', 'US4387901A'],
  example: {
    input: { about: 'bore and piston' },
    gives: {
      facts: [
        { min: 27, max: 27.021 },
        { min: 26.94, max: 26.96 },
      ],
    },
    from: "montesa-cota4, owner's manual, clutch slave cylinder",
  },
  answer({ about }) {
    return {
      facts: squareRingFacts.filter((fact) => about === undefined || fact.about === about).map((fact) => ({ ...fact })),
      missing: 'Depth, width and wall angles of a real caliper groove: measure the old groove and copy it.',
      caution: brakeCaution,
    };
  },
});

export const sealQuestions = [oRing, glandRecommendation, extrusionGap, elastomer, squareRing] as const;
