/**
 * Questions about what a ring stands: gap and pressure, medium and temperature; and about square rings.
 */
import { z } from 'zod';
import { defineQuestion } from '../../question.ts';
import { lengthField, numberField, textField } from '../../units/fields.ts';
import { notesField, rounded, sourcesField, standingField, trustFields } from '../small-parts/answer-fields.ts';
import { elastomersFor, elastomerTemperatures, knownElastomer, rateElastomer } from './elastomer.ts';
import { extrusionLimit } from './extrusion-gap.ts';
import { brakeCaution, squareRingFacts } from './square-ring.ts';

export const extrusionGap = defineQuestion({
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
          diametral: z.number().describe('largest clearance on the diameter [mm]'),
          radial: z.number().describe('largest gap on one side [mm]'),
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

export const elastomer = defineQuestion({
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

export const squareRing = defineQuestion({
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
          min: z.number().optional().describe('least [in the unit given]'),
          max: z.number().optional().describe('most [in the unit given]'),
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
