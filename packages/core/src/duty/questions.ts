/**
 * Questions about a ring in its groove and about bonded joints.
 */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import { defineQuestion } from '../question.ts';
import { findORing } from '../standards/seals/o-ring.ts';
import { notesField, rounded, trustFields } from '../standards/small-parts/answer-fields.ts';
import { lengthField, numberField, textField } from '../units/fields.ts';
import { bondAgeings, bondMaterials, bondStrengths, type Spread } from './bond-factors.ts';
import { bondedForce, bondedTorque } from './bonded-joint.ts';
import { glandOverTolerance } from './gland.ts';
import type { Band } from './gland-figures.ts';

const findingOutput = z.strictObject({
  id: z.string().describe('name of the kind of finding'),
  level: z.enum(['stop', 'caution', 'note']).describe('stop before cutting, look at it, or good to know'),
  says: z.string().describe('what was found'),
  remedies: z.array(z.string()).describe('what helps'),
});

const findingFields = ({ id, level, says, remedies }: Finding) => ({ id, level, says, remedies: [...remedies] });

const bandOutput = (what: string, unit: string) =>
  z
    .strictObject({
      min: z.number().describe(`least [${unit}]`),
      nominal: z.number().describe(`at nominal sizes and 20 °C [${unit}]`),
      max: z.number().describe(`greatest [${unit}]`),
    })
    .describe(`${what} [${unit}]`);

const band = ({ min, nominal, max }: Band, decimals: number) => ({
  min: rounded(min, decimals),
  nominal: rounded(nominal, decimals),
  max: rounded(max, decimals),
});

const limitsInput = (what: string) =>
  z
    .strictObject({ min: lengthField('mm', 'smallest'), max: lengthField('mm', 'largest') })
    .describe(`${what} [mm or in, as typed]`);

const gland = defineQuestion({
  name: 'gland',
  asks: 'What do squeeze, stretch, fill and gap of this ring in this groove come to over all tolerances and temperatures?',
  input: z.strictObject({
    ring: textField('ring by name or size: AS568-210, 20 x 2.65, P20', 60),
    hardness: numberField('hardness of the ring', 'Shore A', 30, 95).default(70),
    kind: z.enum(['piston', 'rod']).describe('piston: groove in the inner part; rod: groove in the housing'),
    motion: z.enum(['static', 'moving']).describe('whether the seal slides'),
    grooveDiameter: limitsInput('diameter of the groove bottom'),
    matingDiameter: limitsInput('bore, or rod, that the ring seals on'),
    carrierDiameter: limitsInput('land beside the groove: piston, or housing bore'),
    grooveWidth: limitsInput('groove width'),
    grooveRadius: lengthField('mm', 'radius in the groove bottom', { zero: true, max: 5 }).optional(),
    pressure: numberField('pressure', 'MPa', 0, 200).default(0),
    temperature: z
      .strictObject({ min: numberField('coldest', '°C', -100, 400), max: numberField('hottest', '°C', -100, 400) })
      .optional()
      .describe('temperatures the seal sees [°C]'),
    elastomer: textField('rubber: NBR, EPDM, FKM…', 40).optional(),
    medium: textField('medium: mineral oil, DOT 4, compressed air…', 60).optional(),
    eccentricity: lengthField('mm', 'offset of the groove from the land, half the run-out', {
      zero: true,
      max: 2,
    }).optional(),
    backUp: z.boolean().default(false).describe('a back-up ring stands behind it'),
  }),
  output: z.strictObject({
    depth: bandOutput('gland depth', 'mm'),
    squeeze: bandOutput('squeeze of the free section', '%'),
    squeezeStretched: bandOutput('squeeze of the section that stretch leaves', '%'),
    slackSqueeze: bandOutput('squeeze on the slack side, parts touching on the other', 'mm'),
    stretch: bandOutput('stretch on its seat', '%'),
    assemblyStretch: bandOutput('stretch while it is put over the land', '%').optional(),
    outsideInterference: bandOutput('ring over the groove of the housing, outside', '%').optional(),
    sectionLoss: bandOutput('loss of section by stretch, volume kept', '%'),
    makerSectionLoss: z.number().optional().describe("loss of section by a maker's polynomial, nominal [%]"),
    fill: bandOutput('fill of the groove by area', '%'),
    fillByVolume: bandOutput('fill of the groove by volume', '%'),
    diametralGap: bandOutput('clearance on the diameter', 'mm'),
    oneSidedGap: bandOutput('gap on one side, parts touching on the other', 'mm'),
    limits: z
      .array(
        z.strictObject({
          what: z.string().describe('what is held'),
          value: z.number().describe('its value [in the unit given]'),
          unit: z.string().describe('unit'),
          least: z.number().optional().describe('least [in the unit given]'),
          most: z.number().optional().describe('most [in the unit given]'),
          holds: z.boolean().describe('whether it is kept'),
          source: z.string().describe('key of the source'),
          standing: trustFields.standing,
        }),
      )
      .describe('the published limits it is held against'),
    findings: z.array(findingOutput).describe('what is wrong, worst first'),
    ...trustFields,
  }),
  sources: [
    'usseal-2',
    'usseal-4',
    'seals-physics',
    'scribd-ring09',
    'parker-stretch',
    'seals-marco',
    'sealanddesign',
    'mem-trelleborg-gap',
  ],
  example: {
    input: {
      ring: '20 x 3',
      kind: 'piston',
      motion: 'static',
      grooveDiameter: { min: 20.4, max: 20.4 },
      matingDiameter: { min: 25, max: 25 },
      carrierDiameter: { min: 24.95, max: 24.95 },
      grooveWidth: { min: 4, max: 4.2 },
    },
    gives: { depth: { nominal: 2.3 }, squeeze: { nominal: 23.33 } },
    from: 'nh-oring: a 3 mm cord in a groove of 2.3 mm is pressed by 0.7 mm',
  },
  answer({ ring, ...input }) {
    const result = glandOverTolerance({ ...input, ring: findORing(ring) });
    return {
      depth: band(result.depth, 4),
      squeeze: band(result.squeeze, 2),
      squeezeStretched: band(result.squeezeStretched, 2),
      slackSqueeze: band(result.slackSqueeze, 3),
      stretch: band(result.stretch, 2),
      ...(result.assemblyStretch && { assemblyStretch: band(result.assemblyStretch, 2) }),
      ...(result.outsideInterference && { outsideInterference: band(result.outsideInterference, 2) }),
      sectionLoss: band(result.sectionLoss, 2),
      ...(result.makerSectionLoss !== undefined && { makerSectionLoss: rounded(result.makerSectionLoss, 2) }),
      fill: band(result.fill, 2),
      fillByVolume: band(result.fillByVolume, 2),
      diametralGap: band(result.gap.diametral, 4),
      oneSidedGap: band(result.gap.radialOneSided, 4),
      limits: result.limits.map(({ what, value, unit, least, most, holds, source, standing }) => ({
        ...{ what, unit, holds, source, standing },
        value: rounded(value, 4),
        ...(least !== undefined && { least: rounded(least, 4) }),
        ...(most !== undefined && { most: rounded(most, 4) }),
      })),
      findings: result.findings.map(findingFields),
      sources: [...result.sources],
      standing: result.standing,
    };
  },
});

const strengths = Object.keys(bondStrengths) as [keyof typeof bondStrengths, ...(keyof typeof bondStrengths)[]];
const materials = Object.keys(bondMaterials) as [keyof typeof bondMaterials, ...(keyof typeof bondMaterials)[]];
const ageings = Object.keys(bondAgeings) as [keyof typeof bondAgeings, ...(keyof typeof bondAgeings)[]];

const spreadOutput = (what: string, unit: string) =>
  z
    .strictObject({
      low: z.number().describe(`low end [${unit}]`),
      typical: z.number().describe(`typical [${unit}]`),
      high: z.number().describe(`high end [${unit}]`),
    })
    .describe(`${what} [${unit}]`);

const spread = ({ low, typical, high }: Spread) => ({
  low: rounded(low, 3),
  typical: rounded(typical, 3),
  high: rounded(high, 3),
});

const bondedJoint = defineQuestion({
  name: 'bonded-joint',
  asks: 'What torque or force does a joint bonded with a retaining compound carry, and how sure is that?',
  input: z.strictObject({
    diameter: lengthField('mm', 'diameter of the joint', { max: 500 }),
    length: lengthField('mm', 'engaged length', { max: 500 }),
    strength: z
      .union([numberField('shear strength in the standard test, by the data sheet', 'MPa', 1, 60), z.enum(strengths)])
      .describe('shear strength in the standard test [MPa], or its class'),
    gap: lengthField('mm', 'gap on the diameter', { zero: true, max: 0.25 }).optional(),
    roughness: numberField('Ra of the smoother surface', 'µm', 0.01, 50).optional(),
    materials: z.array(z.enum(materials)).max(2).optional().describe('both surfaces; the weaker counts'),
    temperature: numberField('hottest in service', '°C', -55, 150).optional(),
    ageing: z.enum(ageings).optional().describe('what it stands in'),
    alternating: z.boolean().default(false).describe('the load changes sign or pulses, to 10⁷ times'),
    conditions: z
      .enum(['known', 'unproved'])
      .default('unproved')
      .describe('known: static load, tried surfaces; unproved: shock, a safety part, or surfaces not tried'),
    torque: numberField('torque it must carry', 'N·m', 0, 100_000).optional(),
    force: numberField('axial force it must carry', 'N', 0, 1e7).optional(),
  }),
  output: z.strictObject({
    torque: spreadOutput('torque at which it lets go', 'N·m'),
    force: spreadOutput('axial force at which it lets go', 'N'),
    area: z.number().describe('bonded area that counts [mm²]'),
    usefulLength: z.number().describe('length that counts [mm]'),
    factors: z
      .array(
        z.strictObject({
          name: z.string().describe('what it is for'),
          condition: z.string().describe('what it was taken for'),
          factor: spreadOutput('factor on the strength of the standard test', '-'),
          source: z.string().describe('key of the source'),
          standing: trustFields.standing,
        }),
      )
      .describe('what was taken off the strength of the standard test'),
    safetyTorque: spreadOutput('torque it lets go at over its duty', '-').optional(),
    safetyForce: spreadOutput('force it lets go at over its duty', '-').optional(),
    safetyWanted: spreadOutput('usual safety, common practice', '-'),
    advice: notesField,
    findings: z.array(findingOutput).describe('what is wrong, worst first'),
    ...trustFields,
  }),
  sources: ['bond-MEM', 'ISO10123', 'common-practice', 'HENK-FAQ', 'TM5-3820'],
  example: {
    input: { diameter: 20, length: 18, strength: 25 },
    gives: { area: 1131 },
    from: 'TESTRES, collar 20 × 18 mm: 1131 mm²',
  },
  answer({ torque, force, ...input }) {
    if (torque !== undefined && force !== undefined && torque > 0 && force > 0) {
      const expected = 'either a torque or a force: how both together load a bond is not reckoned';
      throw new InputError([{ path: 'force', value: force, expected, example: 'torque alone' }]);
    }
    const turning = bondedTorque(input, torque);
    const pushing = bondedForce(input, force);
    const asked = force !== undefined && torque === undefined ? pushing : turning;
    return {
      torque: spread(turning.capacity),
      force: spread(pushing.capacity),
      area: rounded(turning.area, 1),
      usefulLength: rounded(turning.usefulLength, 3),
      factors: turning.factors.map(({ name, condition, source, standing, ...factor }) => ({
        ...{ name, condition, source, standing },
        factor: spread(factor),
      })),
      ...(turning.safety && { safetyTorque: spread(turning.safety) }),
      ...(pushing.safety && { safetyForce: spread(pushing.safety) }),
      safetyWanted: spread(turning.safetyWanted),
      advice: [...asked.advice],
      findings: asked.findings.map(findingFields),
      sources: [...asked.sources],
      standing: asked.standing,
    };
  },
});

export const dutyQuestions = [gland, bondedJoint] as const;
