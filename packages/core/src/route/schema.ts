/**
 * What a job says about the way it is to be made; everything left out is chosen by the planner.
 */
import { z } from 'zod';
import { idField, lengthField, numberField, textField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';
import { operationKinds } from './operation-kinds.ts';
import { infeedWays } from './tables/infeed-way.ts';
import { waysHeld } from './ways-held.ts';

/** Operations are named by what they do and to which feature: `finish-turn-guide`; see the route that was planned. */
const operationField = z
  .string()
  .max(120)
  .regex(/^[a-z][a-z0-9.-]*$/, { error: 'the id of an operation, for example finish-turn-guide' })
  .describe('id of the operation, as the route names it');

const change = z.strictObject({
  operation: operationField,
  skip: z.literal(true).describe('leave it out; what it would have cut stays').optional(),
  instead: textField('done in another way, which is: bought ready threaded', 500).optional(),
  minutes: numberField('time it takes', 'min', 0.1, 10_000).optional(),
  cutter: idField.describe('id of the cutter to do it with').optional(),
  infeed: z.enum(infeedWays).describe('how a thread is fed in; left out, by its pitch').optional(),
  why: textField('why', 500).optional(),
});

/** What a person wants done otherwise with one operation. */
export type OperationChange = z.output<typeof change>;

export function routeSchema(unit: LengthUnit) {
  return z.strictObject({
    firstEndOut: z.enum(['left', 'right']).describe('end that stands out of the chuck in the first setup').optional(),
    chuck: idField.optional(),
    hold: z.enum(waysHeld).describe('way to hold the work while most of its outside is turned').optional(),
    holdOn: idField
      .describe('section that is gripped, or bore that the mandrel goes into, once the work is turned round')
      .optional(),
    tailstock: z.boolean().describe('support the free end with the tailstock in the first setup').optional(),
    stockDiameter: lengthField(unit, 'bar to use').optional(),
    order: z
      .array(operationField)
      .max(200)
      .describe('operations in the order wanted, one after another; those not named go where the planner puts them')
      .optional(),
    changes: z
      .array(change)
      .max(200)
      .describe('operations to leave out, to do in another way or with another cutter, or that take another time')
      .optional(),
    taken: z
      .array(
        z.strictObject({
          kind: z.enum(operationKinds).describe('kind of operation, as the route names it'),
          planned: numberField('time that was planned', 'min', 0, 10_000),
          taken: numberField('time that it took', 'min', 0, 10_000),
          of: operationField.describe('operation of this job it was, where its own log tells').optional(),
        }),
      )
      .max(2000)
      .describe('how long operations took before, from the bench log: times are planned by them')
      .optional(),
    count: z.int().min(1).max(50).describe('parts to make; one when left out [-]').optional(),
  });
}

/** What is wished of the way to hold the work. */
export type HoldingWish = Pick<RouteWishes, 'firstEndOut' | 'tailstock' | 'hold' | 'holdOn'>;

export type RouteWishes = z.output<ReturnType<typeof routeSchema>>;
