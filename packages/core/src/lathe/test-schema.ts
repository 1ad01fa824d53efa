/**
 * What the owner writes down of tests on the lathe: pushes, taps, collars turned on a test bar, passes and cuts.
 */
import { z } from 'zod';
import { idField, lengthField, numberField, textField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';
import { alterableIds, elementIds } from './elements.ts';
import { bearingKinds } from './prior-beliefs.ts';

/** Where a push is read: everything from there down to the bed gives. */
export const pushPlaces = [
  'tool edge',
  'top slide',
  'cross slide',
  'saddle',
  'spindle nose',
  'bar',
  'tailstock',
] as const;
export const tapPlaces = ['tool', 'bar', 'spindle along its axis'] as const;
/** What an alteration of the lathe can change. */

function barSchema(unit: LengthUnit) {
  return z
    .strictObject({
      diameter: lengthField(unit, 'diameter of the bar', { max: 500 }),
      length: lengthField(unit, 'how far it stands out of the jaws'),
      grip: lengthField(unit, 'length held in the jaws'),
      material: textField('as people name it', 80),
      tailstock: z.boolean().optional().describe('supported by the tailstock centre at its end'),
    })
    .describe('the bar in the chuck');
}

function cutFields(unit: LengthUnit) {
  return {
    bar: barSchema(unit),
    at: lengthField(unit, 'where it was cut, from the jaw faces', { zero: true }).optional(),
    cutter: idField.describe('the cutter, as listed in the workshop'),
    depth: lengthField(unit, 'depth set, on the radius', { max: 20 }),
    feed: numberField('feed for each turn', 'mm/rev', 0.001, 2),
  };
}

const common = {
  id: idField.describe('short name of the test'),
  state: idField.optional().describe('state of the lathe it was made in; the original one when left out'),
  note: textField('note', 300).optional(),
};

/** The tests of a lathe, with lengths in the workshop's unit. */
export function testsSchema(unit: LengthUnit) {
  return z.strictObject({
    bearings: z.enum(bearingKinds).optional().describe('kind of spindle bearings'),
    shank: lengthField(unit, 'side of the square shank of the cutters', { max: 50 }).optional(),
    axialFloat: lengthField(unit, 'how far the spindle moves freely along its axis, pulled and pushed by hand', {
      max: 2,
      zero: true,
    }).optional(),
    state: idField.optional().describe('state the lathe is in now; the original one when left out'),
    states: z
      .array(
        z.strictObject({
          id: idField,
          name: textField('what was altered', 120),
          changes: z.array(z.enum(alterableIds)).min(1).max(elementIds.length).describe('what may have changed by it'),
        }),
      )
      .max(20)
      .optional()
      .describe('named states: solid block instead of top slide, new bearings'),
    pushes: z
      .array(
        z.strictObject({
          ...common,
          at: z.enum(pushPlaces).describe('where it was pushed and read'),
          direction: z.enum(['radial', 'axial', 'tangential']).default('radial').describe('which way'),
          bar: barSchema(unit).optional().describe('for a push on a bar'),
          readings: z
            .array(
              z.strictObject({
                force: numberField('force', 'N', 0, 5000),
                up: numberField('deflection while the force rises', 'µm', -5000, 5000).optional(),
                down: numberField('deflection while it falls', 'µm', -5000, 5000).optional(),
              }),
            )
            .min(2)
            .max(40)
            .describe('readings of one loop, or the mean of several'),
        }),
      )
      .max(100)
      .optional(),
    taps: z
      .array(
        z.strictObject({
          ...common,
          at: z.enum(tapPlaces).describe('what was tapped'),
          bar: barSchema(unit).optional().describe('for a tap on a bar'),
          frequency: numberField('frequency that rings', 'Hz', 10, 20_000),
          uncertainty: numberField('of the frequency', 'Hz', 0.1, 1000).optional(),
          damping: numberField('share of critical damping, from the dying away', '-', 0.001, 0.5).optional(),
        }),
      )
      .max(100)
      .optional(),
    collars: z
      .array(
        z.strictObject({
          ...common,
          ...cutFields(unit),
          near: lengthField(unit, 'diameter left at the collar near the jaws'),
          nearAt: lengthField(unit, 'place of that collar, from the jaw faces', { zero: true }),
          far: lengthField(unit, 'diameter left at the far collar'),
          farAt: lengthField(unit, 'place of that collar, from the jaw faces'),
        }),
      )
      .max(100)
      .optional()
      .describe('two collars on a test bar turned at one setting'),
    passes: z
      .array(
        z.strictObject({
          ...common,
          ...cutFields(unit),
          got: lengthField(unit, 'depth really taken, on the radius', { max: 20, zero: true }),
        }),
      )
      .max(500)
      .optional()
      .describe('passes: depth asked for and got'),
    cuts: z
      .array(
        z.strictObject({
          ...common,
          ...cutFields(unit),
          operation: z.enum(['turning', 'facing', 'boring', 'grooving', 'parting']).default('turning'),
          speed: numberField('spindle speed', 'rpm', 1, 20_000),
          heard: z.enum(['quiet', 'sang']).describe('whether it sang'),
        }),
      )
      .max(500)
      .optional()
      .describe('cuts, and whether they sang; depth is the width of the edge when grooving or parting'),
  });
}

export type LatheTests = z.output<ReturnType<typeof testsSchema>>;
export type PushTest = NonNullable<LatheTests['pushes']>[number];
export type TestBar = NonNullable<LatheTests['cuts']>[number]['bar'];
