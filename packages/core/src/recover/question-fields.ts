/** Fields that the questions about recovering a design share. */
import { z } from 'zod';
import { conditions, gaugeKinds } from '../evidence/reading-kinds.ts';
import type { Gauge, Reading } from '../evidence/schema.ts';
import type { Finding } from '../finding.ts';
import type { Dimension } from '../part/part-result.ts';
import { roles } from '../part/roles.ts';
import { sizeField } from '../part/size-field.ts';
import { lengthField, numberField, textField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';
import { largestSensible } from './size.ts';

export const roleField = z.enum(roles).default('free').describe('what the surface is for');

export const kindField = z
  .enum([
    'outside diameter',
    'inside diameter',
    'length',
    'depth',
    'width',
    'radius',
    'across flats',
  ] as const satisfies readonly Dimension['kind'][])
  .default('outside diameter')
  .describe('what is measured; inside diameters and widths wear larger, the others smaller');

function readingField(unit: LengthUnit) {
  return z.strictObject({
    value: lengthField(unit, 'what the gauge showed', { max: largestSensible }),
    gauge: z.enum(gaugeKinds).default('calliper').describe('kind of gauge'),
    resolution: lengthField(unit, 'smallest step that is read').optional(),
    permissibleError: lengthField(unit, 'largest permissible error, from its standard or certificate').optional(),
    zeroError: lengthField(unit, 'what it shows too much at a known size', { min: -5, zero: true, max: 5 }).optional(),
    condition: z.enum(conditions).default('unsure').describe('condition of the place'),
    specimen: textField('which specimen', 60).optional(),
    along: lengthField(unit, 'place along the part', { zero: true }).optional(),
    angle: numberField('place round the part', '°', 0, 360).optional(),
    temperature: numberField('temperature of the part', '°C', -20, 120).optional(),
  });
}

function sizeInput(unit: LengthUnit) {
  return z.strictObject({
    units: z.literal(unit).describe(unit === 'mm' ? 'bare numbers are millimetres' : 'bare numbers are inches'),
    kind: kindField,
    role: roleField,
    readings: z.array(readingField(unit)).max(500).describe('the readings'),
    stated: sizeField(unit, 'size with its limits as a manual gives it').optional(),
    country: textField('country the machine was made in', 60).optional(),
    decade: z.int().min(1700).max(2100).optional().describe('decade it was built [-]'),
  });
}

export const sizeQuestionInput = z.discriminatedUnion('units', [sizeInput('mm'), sizeInput('in')]);

export type SizeQuestion = z.output<typeof sizeQuestionInput>;

/** Each kind of gauge with its particulars becomes a gauge of a workshop made for the question. */
export function asEvidence(asked: SizeQuestion): { readings: Reading[]; gauges: Gauge[] } {
  const gauges = new Map<string, Gauge>();
  const readings = asked.readings.map((r, i): Reading => {
    const particulars = [r.gauge, r.resolution, r.permissibleError, r.zeroError];
    const key = JSON.stringify(particulars);
    const known = gauges.get(key);
    const id = known?.id ?? `gauge-${gauges.size + 1}`;
    gauges.set(key, {
      id,
      name: r.gauge,
      kind: r.gauge,
      resolution: r.resolution,
      permissibleError: r.permissibleError,
      zeroError: r.zeroError,
    });
    const { value, condition, specimen, along, angle, temperature } = r;
    return { id: `r${i + 1}`, of: 'size', value, condition, specimen, along, angle, temperature, gauge: id };
  });
  return { readings, gauges: [...gauges.values()] };
}

export const intervalField = (what: string) =>
  z
    .strictObject({ low: z.number().describe('lower end [mm]'), high: z.number().describe('upper end [mm]') })
    .describe(what);

export const designFields = z.strictObject({
  design: z.string().describe('nominal size and limits as a drawing would have them'),
  probability: z.number().describe('share among all designs [-]'),
  min: z.number().describe('smallest size it allows [mm]'),
  max: z.number().describe('largest size it allows [mm]'),
});

export const nextField = z.strictObject({
  says: z.string().describe('what to measure, where and with what'),
  gain: z.number().describe('expected gain of information [bit]'),
  surenessNow: z.number().describe('probability of the likeliest design now [-]'),
  surenessThen: z.number().describe('expected probability of the then likeliest design [-]'),
});

export const findingsField = z.array(z.string()).describe('what is wrong with the readings, worst first');
export const said = (findings: readonly Finding[]) => findings.map((f) => `${f.level}: ${f.says}`);

/** To a tenth of a micrometre. */
export const shown = (mm: number) => Number(mm.toFixed(4)) + 0;
/** To four places: what a probability is shown to. */
export const share = (p: number) => Number(p.toFixed(4)) + 0;
