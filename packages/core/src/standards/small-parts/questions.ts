/**
 * Questions about pins, keys, knurls, centre holes, chamfers and grease nipples.
 */
import { z } from 'zod';
import { DomainError } from '../../errors.ts';
import { defineQuestion } from '../../question.ts';
import { lengthField, numberField } from '../../units/fields.ts';
import { limitsField, notesField, rounded, standingField, trustFields } from './answer-fields.ts';
import { centreForWork, centreHole, inchCentreDrills } from './centre-hole.ts';
import { generalChamfer, greaseNipples } from './edges.ts';
import { key } from './key.ts';
import { knurl, knurlPitches } from './knurl.ts';
import { clevisPin, dowel, pinShearLoad, splitPin } from './pins.ts';

const dowelQuestion = defineQuestion({
  name: 'dowel',
  asks: 'Between which limits does a dowel lie, how is its end made, and what shears it?',
  input: z.strictObject({
    kind: z
      .enum(['ISO 2338', 'DIN 6325', 'ASME B18.8.5M'])
      .describe('soft parallel pin, hardened dowel, or hardened dowel of the American metric series'),
    diameter: lengthField('mm', 'nominal diameter', { max: 30 }),
    tolerance: z.enum(['m6', 'h8']).default('m6').describe('m6, or h8 for a slip fit of a parallel pin'),
    shearStrength: numberField('shear strength of the pin, for its load', 'MPa', 1, 2000).optional(),
  }),
  output: z.strictObject({
    limits: limitsField('diameter'),
    chamfer: z.number().optional().describe('length of the chamfer [mm]'),
    lead: z.number().optional().describe('length of the lead [mm]'),
    hole: limitsField('hole it is made for').optional(),
    singleShear: z
      .number()
      .optional()
      .describe('load that shears it in one plane: as printed, or by the shear strength given [N]'),
    ...trustFields,
  }),
  sources: ['NUTBOLT-DIN7', 'ISO2338-MEM', 'DIN6325-TAB', 'ASME-B18.8.5M'],
  example: {
    input: { kind: 'DIN 6325', diameter: 8 },
    gives: { limits: { min: 8.006, max: 8.015 }, chamfer: 1.2, lead: 1.8 },
    from: 'DIN6325-TAB, row of 8 mm',
  },
  answer({ kind, diameter, tolerance, shearStrength }) {
    const { min, max, chamfer, lead, hole, singleShear, sources, standing } = dowel(kind, diameter, tolerance);
    const load = shearStrength === undefined ? singleShear : pinShearLoad(diameter, shearStrength);
    return {
      limits: { min, max },
      ...{ chamfer, lead },
      ...(hole && { hole: { ...hole } }),
      ...(load !== undefined && { singleShear: rounded(load, 0) }),
      sources: [...sources],
      standing,
    };
  },
});

const splitPinQuestion = defineQuestion({
  name: 'split-pin',
  asks: 'Which split pin, in which hole, does a bolt or clevis pin of this diameter take?',
  input: z.strictObject({
    diameter: lengthField('mm', 'bolt or clevis pin', { max: 80 }),
    use: z.enum(['bolt', 'clevis pin']).describe('what it goes through'),
  }),
  output: z.strictObject({
    nominal: z.number().describe('the hole, which names the pin [mm]'),
    hole: limitsField('hole'),
    pin: limitsField('diameter of the split pin'),
    holeToEnd: z.number().optional().describe('from the hole to the end of the clevis pin, at least [mm]'),
    ...trustFields,
  }),
  sources: ['ISO1234', 'AMES-CLEVIS'],
  example: {
    input: { diameter: 10, use: 'clevis pin' },
    gives: { nominal: 3.2, holeToEnd: 4.5, hole: { max: 3.38 } },
    from: 'sizes of ISO 1234 from memory (reference parts), hole tolerance H13 read at AMES-CLEVIS, 0.18 mm by ISO 286',
  },
  answer({ diameter, use }) {
    const { nominal, hole, pin, holeToEnd, sources, standing } = splitPin(diameter, use);
    return { nominal, hole: { ...hole }, pin: { ...pin }, holeToEnd, sources: [...sources], standing };
  },
});

const clevisPinQuestion = defineQuestion({
  name: 'clevis-pin',
  asks: 'Between which limits does a clevis pin lie, and where is its split-pin hole?',
  input: z.strictObject({ diameter: lengthField('mm', 'nominal diameter', { max: 24 }) }),
  output: z.strictObject({
    limits: limitsField('diameter, h11'),
    splitPinHole: z.number().describe('split-pin hole, H13 [mm]'),
    holeToEnd: z.number().describe('from the hole to the end, at least [mm]'),
    ...trustFields,
  }),
  sources: ['AMES-CLEVIS', 'parts-MEM'],
  example: {
    input: { diameter: 10 },
    gives: { limits: { min: 9.91, max: 10 } },
    from: 'AMES-CLEVIS gives h11, which is 0 to -90 µm at 10 mm',
  },
  answer({ diameter }) {
    const { min, max, splitPinHole, holeToEnd, sources, standing } = clevisPin(diameter);
    return { limits: { min, max }, splitPinHole, holeToEnd, sources: [...sources], standing };
  },
});

const keywayOutput = z.strictObject({
  toleranceClass: z.string().describe('tolerance class of the width'),
  width: limitsField('width'),
  depth: limitsField('depth from the diameter'),
});

const keyQuestion = defineQuestion({
  name: 'key',
  asks: 'Which parallel key does this shaft take, and what are its keyways?',
  input: z.strictObject({
    shaft: lengthField('mm', 'shaft diameter', { max: 95 }),
    series: z
      .enum(['DIN 6885-1', 'DIN 6885-2'])
      .default('DIN 6885-1')
      .describe('ordinary, or deep in the shaft for machine tools (withdrawn)'),
    seat: z.enum(['light', 'tight']).default('light').describe('ordinary seat, or one that must not shift'),
  }),
  output: z.strictObject({
    width: z.number().describe('width of the key [mm]'),
    height: z.number().describe('height of the key [mm]'),
    shaftKeyway: keywayOutput.describe('keyway in the shaft'),
    hubKeyway: keywayOutput.describe('keyway in the hub'),
    topClearance: z.number().describe('room over the key between nominal depths [mm]'),
    shaftFrom: z.number().describe('shafts over this [mm]'),
    shaftTo: z.number().describe('up to this take the same key [mm]'),
    notes: notesField,
    ...trustFields,
  }),
  sources: ['GANTER-6885-1', 'GANTER-6885-2', 'parts-MEM'],
  example: {
    input: { shaft: 20 },
    gives: {
      width: 6,
      height: 6,
      shaftKeyway: { depth: { min: 3.5, max: 3.6 } },
      hubKeyway: { depth: { min: 2.8, max: 2.9 } },
    },
    from: 'GANTER-6885-1, shafts over 17 to 22 mm',
  },
  answer({ shaft, series, seat }) {
    const found = key(shaft, series, seat);
    const keyway = ({ toleranceClass, width, depth }: typeof found.shaftKeyway) => ({
      toleranceClass,
      width: { ...width },
      depth: { ...depth },
    });
    return {
      width: found.width,
      height: found.height,
      shaftKeyway: keyway(found.shaftKeyway),
      hubKeyway: keyway(found.hubKeyway),
      topClearance: found.topClearance,
      shaftFrom: found.shaft.over,
      shaftTo: found.shaft.upTo,
      notes: [...found.notes],
      sources: [...found.sources],
      standing: found.standing,
    };
  },
});

const knurlQuestion = defineQuestion({
  name: 'knurl',
  asks: 'What diameter is turned before knurling?',
  input: z.strictObject({
    form: z
      .enum(['RAA', 'RBL', 'RBR', 'RGE', 'RGV', 'RKE', 'RKV'])
      .describe(
        'DIN 82: RAA straight, RBL and RBR helical, RGE and RGV diamond, RKE and RKV cross; E raised, V indented',
      ),
    diameter: lengthField('mm', 'diameter over the knurl', { max: 300 }),
    pitch: numberField(`pitch: ${knurlPitches.join(', ')}`, 'mm', 0.5, 1.6),
  }),
  output: z.strictObject({
    name: z.string().describe('the form in words'),
    blank: z.number().describe('diameter to turn [mm]'),
    pitchesRound: z.number().describe('pitches round the blank; a whole number tracks best [-]'),
    profileAngle: z.number().describe('profile angle [°]'),
    notes: notesField,
    ...trustFields,
  }),
  sources: ['DIN82'],
  example: {
    input: { form: 'RKV', diameter: 20, pitch: 1 },
    gives: { blank: 19.67 },
    from: 'DIN82: RKV is 0.33 pitch smaller before knurling',
  },
  answer({ form, diameter, pitch }) {
    const { name, blank, pitchesRound, profileAngle, sources, standing } = knurl(form, diameter, pitch);
    return {
      name,
      blank: rounded(blank, 3),
      pitchesRound: rounded(pitchesRound, 2),
      profileAngle,
      notes: [
        'rolled knurls; how far metal rises hangs on material and pressure: try a scrap piece (common practice)',
        '105° profiles are listed too',
      ],
      sources: [...sources],
      standing,
    };
  },
});

const centreHoleQuestion = defineQuestion({
  name: 'centre-hole',
  asks: 'Which centre hole does this work take, and what are its sizes?',
  input: z.strictObject({
    work: lengthField('mm', 'diameter of the work', { max: 100 }).optional(),
    pilot: lengthField('mm', 'pilot of the drill, where it is chosen', { max: 10 }).optional(),
    form: z.enum(['A', 'B', 'R']).default('A').describe('A plain, B protected by a 120° chamfer, R curved flank'),
    heavy: z.boolean().default(false).describe('heavy cuts or heavy work: the next size'),
  }),
  output: z.strictObject({
    pilot: z.number().describe('pilot [mm]'),
    body: z.number().describe('body of the drill [mm]'),
    mouthMax: z.number().optional().describe('mouth of the cone, at most [mm]'),
    pilotLength: z.number().optional().describe('length of the pilot on the drill [mm]'),
    drillLength: z.number().optional().describe('length of the drill [mm]'),
    angle: z.string().describe('angle of the cone'),
    inchDrills: z
      .array(
        z.strictObject({
          number: z.number().describe('number [-]'),
          pilot: z.number().describe('pilot [mm]'),
          body: z.number().describe('body [mm]'),
        }),
      )
      .describe('inch drills with a pilot within a fifth of it'),
    notes: notesField,
    ...trustFields,
  }),
  sources: ['ISO866', 'ISO2540', 'ISO2541', 'ANSI-centre', 'common-practice'],
  example: {
    input: { work: 12 },
    gives: { pilot: 2, body: 5, mouthMax: 4.25 },
    from: 'ISO 866 and DIN 332 form A from memory (reference parts), choice by common practice',
  },
  answer({ work, pilot: chosen, form, heavy }) {
    const choice = work === undefined ? undefined : centreForWork(work);
    const pilot = chosen ?? (heavy ? choice?.heavier : choice?.pilot);
    if (pilot === undefined) throw new DomainError('work', work, 'the diameter of the work, or the pilot, in mm');
    const { sources, standing, form: _, ...hole } = centreHole(form, pilot);
    const tooWide = work !== undefined && hole.mouthMax !== undefined && hole.mouthMax > 0.7 * work;
    return {
      ...hole,
      inchDrills: inchCentreDrills
        .filter((drill) => Math.abs(drill.pilot - pilot) <= 0.2 * pilot)
        .map(({ number, pilot: inch, body }) => ({ number, pilot: inch, body })),
      notes: tooWide ? [`the mouth of ${hole.mouthMax} mm takes most of the end of a ${work} mm part`] : [],
      sources: [...sources, ...(chosen === undefined ? (['common-practice'] as const) : [])],
      standing,
    };
  },
});

const chamferQuestion = defineQuestion({
  name: 'general-chamfer',
  asks: 'What chamfer is usual on this diameter where nothing is said?',
  input: z.strictObject({ diameter: lengthField('mm', 'diameter', { max: 120 }) }),
  output: z.strictObject({ leg: z.number().describe('leg of a 45° chamfer [mm]'), ...trustFields }),
  sources: ['common-practice'],
  example: {
    input: { diameter: 25 },
    gives: { standing: 'common practice' },
    from: 'common practice; no publication was read',
  },
  answer({ diameter }) {
    const { leg, sources, standing } = generalChamfer(diameter);
    return { leg, sources: [...sources], standing };
  },
});

const greaseNippleQuestion = defineQuestion({
  name: 'grease-nipple',
  asks: 'Which hole does a grease nipple want?',
  input: z.strictObject({}),
  output: z.strictObject({
    nipples: z
      .array(
        z.strictObject({
          thread: z.string().describe('thread, or how it is held'),
          hole: z.string().describe('tapping drill, or hole'),
          standing: standingField,
        }),
      )
      .describe('usual nipples'),
  }),
  sources: ['parts-MEM'],
  example: {
    input: {},
    gives: {},
    from: 'from memory (reference parts); each hole is the thread less its pitch',
  },
  answer() {
    return { nipples: greaseNipples.map(({ thread, hole, standing }) => ({ thread, hole, standing })) };
  },
});

export const smallPartQuestions = [
  dowelQuestion,
  splitPinQuestion,
  clevisPinQuestion,
  keyQuestion,
  knurlQuestion,
  centreHoleQuestion,
  chamferQuestion,
  greaseNippleQuestion,
] as const;
