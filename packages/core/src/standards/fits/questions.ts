/**
 * Questions about limits, fits and general tolerances.
 */
import { z } from 'zod';
import { DomainError, InputError } from '../../errors.ts';
import { defineQuestion } from '../../question.ts';
import { type LengthUnit, readLength } from '../../units/length.ts';
import { degrees, type Mm } from '../../units/quantities.ts';
import { classesForLimits, fitsForClearance, type Role, roles, type SuggestedFit, suggestFits } from './choose.ts';
import { classFit, parseFit } from './fit.ts';
import {
  type GeneralClass,
  generalAngleDeviation,
  generalClassNames,
  generalDeviation,
  generalEdgeDeviation,
  generalRemarks,
} from './general-tolerances.ts';
import { parseNominal } from './nominal.ts';
import {
  basisField,
  generalField,
  leastClearanceField,
  limitsOutput,
  limitsText,
  mostClearanceField,
  nominalField,
  standingFields,
  standingOf,
  unitsField,
} from './question-fields.ts';
import { parseTolerancedSize, printTolerancedSize, sizeLimits } from './toleranced-size.ts';

const limits = defineQuestion({
  name: 'limits',
  asks: 'Between which limits does a size with this tolerance lie?',
  input: z.strictObject({
    size: z
      .union([z.string().max(60), z.number()])
      .describe('size with its tolerance [mm or in, as typed]: 40 f7, 12 ±0.1, 12 +0.02/-0.05, 5/16 in h9'),
    units: unitsField,
    general: generalField.optional(),
  }),
  output: z.strictObject({
    size: z.string().describe('the size as it was understood'),
    nominal: z.number().describe('nominal size [mm]'),
    upper: z.number().describe('upper deviation [mm]'),
    lower: z.number().describe('lower deviation [mm]'),
    max: z.number().describe('largest permitted size [mm]'),
    min: z.number().describe('smallest permitted size [mm]'),
    basis: z.string().describe('where the tolerance comes from: the class, stated, ISO 2768, or none stated'),
    text: z.string().describe('the limits in the unit of the size [mm or in]'),
    ...standingFields,
  }),
  sources: ['ISO-286-1', 'ISO-2768-1'],
  example: {
    input: { size: '50 f7' },
    gives: { upper: -0.025, lower: -0.05, max: 49.975, min: 49.95 },
    from: 'ND-225, solved problem on H7/f7 at 50 mm',
  },
  answer({ size: text, units, general }) {
    const size = parseTolerancedSize(text, units);
    const { upper, lower, max, min, basis } = sizeLimits(size, general);
    const standing =
      size.tolerance.kind === 'class'
        ? standingOf(size.nominal, [size.tolerance.toleranceClass])
        : standingOfGeneral(size.nominal, basis, general);
    return {
      size: printTolerancedSize(size),
      nominal: size.nominal,
      ...{ upper, lower, max, min, basis },
      text: limitsText(min, max, size.unit),
      ...standing,
    };
  },
});

function standingOfGeneral(
  nominal: Mm,
  basis: string,
  general: GeneralClass | undefined,
): ReturnType<typeof standingOf> {
  if (general === undefined || !basis.startsWith('ISO 2768')) return { sources: [], standing: 'read', remarks: [] };
  const remarks = generalRemarks(nominal, general);
  return { sources: ['HE-2768'], standing: remarks.length > 0 ? 'settled' : 'read', remarks };
}

const fitFields = {
  kind: z.enum(['clearance', 'transition', 'interference']).describe('kind of fit'),
  maxClearance: z.number().describe('largest hole on smallest shaft, negative for interference [mm]'),
  minClearance: z.number().describe('smallest hole on largest shaft, negative for interference [mm]'),
};

const fit = defineQuestion({
  name: 'fit',
  asks: 'How much play or interference does this fit give?',
  input: z.strictObject({
    size: z.string().max(60).describe('size, class of the hole, class of the shaft: 40 H8/f7, 1/2 in H7/g6'),
    units: unitsField,
  }),
  output: z.strictObject({
    nominal: z.number().describe('nominal size [mm]'),
    hole: limitsOutput,
    shaft: limitsOutput,
    ...fitFields,
    text: z.string().describe('limits of hole and shaft in the unit of the size [mm or in]'),
    ...standingFields,
  }),
  sources: ['ISO-286-1'],
  example: {
    input: { size: '20 H6/e7' },
    gives: { kind: 'clearance', maxClearance: 0.074, minClearance: 0.04, shaft: { max: 19.96, min: 19.939 } },
    from: 'BH-3.1, bush and crankpin',
  },
  answer({ size: text, units }) {
    const { nominal, unit, hole: holeClass, shaft: shaftClass } = parseFit(text, units);
    const { hole, shaft, ...result } = classFit(nominal, holeClass, shaftClass);
    return {
      nominal,
      hole: { ...hole },
      shaft: { ...shaft },
      ...result,
      text: `hole ${limitsText(hole.min, hole.max, unit)}, shaft ${limitsText(shaft.min, shaft.max, unit)}`,
      ...standingOf(nominal, [holeClass, shaftClass]),
    };
  },
});

const generalTolerance = defineQuestion({
  name: 'general-tolerance',
  asks: 'What deviation does ISO 2768-1 permit where the drawing states none?',
  input: z.strictObject({
    size: nominalField,
    of: z
      .enum(['length', 'edge', 'angle'])
      .default('length')
      .describe('length or diameter; radius or chamfer of an edge; angle, whose size is its shorter side'),
    class: generalField.default('m'),
    units: unitsField,
  }),
  output: z.strictObject({
    plusMinus: z.number().describe('permitted deviation either way [mm], for an angle [degrees]'),
    unit: z.enum(['mm', 'degrees']).describe('unit of the deviation'),
    text: z.string().describe('the tolerance in words'),
    remarks: z.array(z.string()).describe('what to know about the value'),
  }),
  sources: ['ISO-2768-1', 'HE-2768', 'SB-2768', 'DI-2768', 'CC-2768'],
  example: {
    input: { size: 40, class: 'm' },
    gives: { plusMinus: 0.3, unit: 'mm' },
    from: 'ISO 2768-1 table 1 as printed in HE-2768, SB-2768 and DI-2768',
  },
  answer({ size, of, class: generalClass, units }) {
    const nominal = parseNominal(size, units, 'size');
    const from = `ISO 2768-${generalClass} (${generalClassNames[generalClass]})`;
    if (of === 'angle') {
      const plusMinus = Number(degrees(generalAngleDeviation(nominal.mm, generalClass)).toFixed(6));
      return { plusMinus, unit: 'degrees' as const, text: `±${Math.round(plusMinus * 60)}′, ${from}`, remarks: [] };
    }
    const plusMinus = (of === 'edge' ? generalEdgeDeviation : generalDeviation)(nominal.mm, generalClass);
    return {
      plusMinus,
      unit: 'mm' as const,
      text: `±${plusMinus} mm, ${from}`,
      remarks: of === 'edge' ? [] : generalRemarks(nominal.mm, generalClass),
    };
  },
});

const suggestedOutput = z.strictObject({
  fit: z.string().describe('hole and shaft class, such as H8/f7'),
  name: z.string().describe('name among the preferred fits, empty when it is not one'),
  why: z.string().describe('what it does'),
  hole: limitsOutput,
  shaft: limitsOutput,
  ...fitFields,
  ...standingFields,
});

function shown(nominal: Mm, s: SuggestedFit): z.output<typeof suggestedOutput> {
  const { sources, standing, remarks } = standingOf(nominal, [s.hole, s.shaft]);
  const { kind, maxClearance, minClearance, name, why } = s;
  return {
    fit: `${s.hole}/${s.shaft}`,
    ...{ name, why, kind, maxClearance, minClearance, standing, remarks },
    hole: { ...s.holeLimits },
    shaft: { ...s.shaftLimits },
    sources: [...new Set([...s.sources, ...sources])],
  };
}

const roleNames = Object.keys(roles) as [Role, ...Role[]];

const suggestFit = defineQuestion({
  name: 'suggest-fit',
  asks: 'Which fit suits what the joint has to do?',
  input: z.strictObject({
    role: z.enum(roleNames).describe(`what the joint does: ${roleNames.join(', ')}`),
    size: nominalField,
    units: unitsField,
    basis: basisField,
  }),
  output: z.strictObject({
    usual: suggestedOutput.describe('the usual fit'),
    others: z.array(suggestedOutput).describe('what else suits'),
  }),
  sources: ['MH-11', 'BS4500A', 'ND-uses', 'JP', 'DM-276', 'fit-habits'],
  example: {
    input: { role: 'running', size: 6 },
    gives: { usual: { fit: 'H8/f7', maxClearance: 0.04, minClearance: 0.01 } },
    from: 'MH-12, H8/f7 at 6 mm',
  },
  answer({ role, size, units, basis }) {
    const nominal = parseNominal(size, units, 'size').mm;
    const [usual, ...others] = suggestFits(role, nominal, basis).map((s) => shown(nominal, s));
    if (!usual) throw new DomainError('role', role, `one of ${roleNames.join(', ')}`);
    return { usual, others };
  },
});

const fitForClearance = defineQuestion({
  name: 'fit-for-clearance',
  asks: 'Which standard fits keep the clearance inside a wanted range?',
  input: z.strictObject({
    size: nominalField,
    least: leastClearanceField,
    most: mostClearanceField,
    units: unitsField,
    basis: basisField,
  }),
  output: z.strictObject({
    best: suggestedOutput
      .nullable()
      .describe('preferred fits go first, then the widest tolerances; null when none stays inside'),
    others: z.array(suggestedOutput).describe('what else stays inside, at most 11'),
    says: z.string().describe('what was found'),
  }),
  sources: ['ISO-286-1', 'MH-11', 'BS4500A'],
  example: {
    input: { size: 50, least: 0.025, most: 0.075 },
    gives: { best: { fit: 'H7/f7', maxClearance: 0.075, minClearance: 0.025 } },
    from: 'ND-225, H7/f7 at 50 mm gives 25 to 75 µm',
  },
  answer({ size, least, most, units, basis }) {
    const nominal = parseNominal(size, units, 'size').mm;
    const wanted = { min: clearance(least, units, 'least'), max: clearance(most, units, 'most') };
    const fits = fitsForClearance(nominal, wanted, basis).map((s) => shown(nominal, s));
    const says =
      fits.length > 0
        ? `${fits.length} ${fits.length === 1 ? 'fit stays' : 'fits stay'} inside the wanted range`
        : 'no pair of grades 5 to 11 stays inside; widen the range, or fit one part to the other by measuring';
    const [best, ...others] = fits;
    return { best: best ?? null, others, says };
  },
});

const holdingOutput = z.strictObject({
  class: z.string().describe('tolerance class'),
  upper: z.number().describe('upper deviation [mm]'),
  lower: z.number().describe('lower deviation [mm]'),
  slack: z.number().describe('room the class leaves around the measured limits [mm]'),
  preferred: z.boolean().describe('whether it belongs to the preferred fits'),
});

const classForLimits = defineQuestion({
  name: 'class-for-limits',
  asks: 'Which tolerance classes hold these measured limits?',
  input: z.strictObject({
    size: nominalField,
    max: z.union([z.string().max(60), z.number()]).describe('largest measured diameter [mm or in, as typed]'),
    min: z.union([z.string().max(60), z.number()]).describe('smallest measured diameter [mm or in, as typed]'),
    feature: z.enum(['hole', 'shaft']).describe('hole or shaft'),
    finestGrade: z.string().max(2).default('5').describe('finest grade to offer: 01, 0, 1 to 18'),
    units: unitsField,
  }),
  output: z.strictObject({
    snuggest: holdingOutput.nullable().describe('the class with the least slack, null when none holds the limits'),
    others: z.array(holdingOutput).describe('the next ones, at most 11'),
    ...standingFields,
  }),
  sources: ['ISO-286-1'],
  example: {
    input: { size: 50, max: 49.975, min: 49.95, feature: 'shaft' },
    gives: { snuggest: { class: 'f7', slack: 0 } },
    from: 'ND-225: a 50 f7 shaft is 49.950 to 49.975',
  },
  answer({ size, max, min, feature, finestGrade, units }) {
    const nominal = parseNominal(size, units, 'size').mm;
    const measured = { max: parseNominal(max, units, 'max').mm, min: parseNominal(min, units, 'min').mm };
    const found = classesForLimits(nominal, measured, feature, finestGrade).slice(0, 12);
    const [snuggest, ...others] = found.map(({ toleranceClass, ...rest }) => ({ class: toleranceClass, ...rest }));
    return {
      snuggest: snuggest ?? null,
      others,
      ...standingOf(
        nominal,
        found.map((c) => c.toleranceClass),
      ),
    };
  },
});

function clearance(value: string | number, units: LengthUnit, path: string): Mm {
  const length = readLength(String(value), units);
  if (length) return length.mm;
  throw new InputError([
    { path, value, expected: 'a clearance, negative for interference', example: '0.02 or -1 thou' },
  ]);
}

export const fitsQuestions = [limits, fit, generalTolerance, suggestFit, fitForClearance, classForLimits] as const;
