/**
 * What a job says about the way it is to be made; everything left out is chosen by the planner.
 */
import { z } from 'zod';
import { idField, lengthField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';

export function routeSchema(unit: LengthUnit) {
  return z.strictObject({
    firstEndOut: z.enum(['left', 'right']).describe('end that stands out of the chuck in the first setup').optional(),
    chuck: idField.optional(),
    tailstock: z.boolean().describe('support the free end with the tailstock in the first setup').optional(),
    stockDiameter: lengthField(unit, 'bar to use').optional(),
    count: z.int().min(1).max(50).describe('parts to make; one when left out [-]').optional(),
  });
}

export type RouteWishes = z.output<ReturnType<typeof routeSchema>>;
