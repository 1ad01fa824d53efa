/**
 * Fields that the questions about fits share, and the answers' words on where limits come from.
 */
import { z } from 'zod';
import type { LengthUnit } from '../../units/length.ts';
import { type Mm, mmPerInch } from '../../units/quantities.ts';
import { classProvenance, type Standing } from './provenance.ts';

export const unitsField = z.enum(['mm', 'in']).default('mm').describe('unit of a bare number: mm or in');

export const nominalField = z
  .union([z.string().max(60), z.number()])
  .describe('nominal size [mm or in, as typed], for example 40, "12,5" or "5/16 in"');

const clearance = z.union([z.string().max(60), z.number()]);

export const leastClearanceField = clearance.describe(
  'smallest wanted clearance, negative for interference [mm or in, as typed]',
);

export const mostClearanceField = clearance.describe(
  'largest wanted clearance, negative for interference [mm or in, as typed]',
);

export const generalField = z
  .enum(['f', 'm', 'c', 'v'])
  .describe('class of ISO 2768-1: f fine, m medium, c coarse, v very coarse');

export const basisField = z
  .enum(['hole', 'shaft'])
  .default('hole')
  .describe('hole: H hole, reamed to size; shaft: h shaft, such as drawn or ground bar left as it is');

export const limitsOutput = z
  .strictObject({ max: z.number().describe('largest [mm]'), min: z.number().describe('smallest [mm]') })
  .describe('limits of a size');

export const standingFields = {
  sources: z.array(z.string()).describe('keys of the sources of the values used'),
  standing: z
    .enum(['read', 'settled', 'from memory'])
    .describe('how firm the values are: read in print, settled between prints or mirrored, or from memory'),
  remarks: z.array(z.string()).describe('what to know about the values used'),
};

/** Sources, standing and remarks of several classes at a size, the weakest standing for all. */
export function standingOf(
  nominal: Mm,
  classes: readonly string[],
): { sources: string[]; standing: Standing; remarks: string[] } {
  const each = classes.map((name) => ({ name, ...classProvenance(nominal, name) }));
  const standings = each.map((p) => p.standing);
  return {
    sources: [...new Set(each.flatMap((p) => p.sources))],
    standing: (['from memory', 'settled'] as const).find((s) => standings.includes(s)) ?? ('read' as const),
    remarks: each.flatMap((p) => p.remarks.map((remark) => `${p.name}: ${remark}`)),
  };
}

/** Two limits as they are written on a drawing in the given unit: `39.950 to 39.975 mm`. */
export function limitsText(min: Mm, max: Mm, unit: LengthUnit): string {
  const [factor, decimals] = unit === 'in' ? [mmPerInch, 5] : [1, 4];
  const write = (mm: Mm) => (mm / factor).toFixed(decimals).replace(/0$/, '');
  return `${write(min)} to ${write(max)} ${unit}`;
}
