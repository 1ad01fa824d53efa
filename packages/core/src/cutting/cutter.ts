/**
 * Cutters and drills as the workshop document lists them.
 */

import { z } from 'zod';
import { idField, lengthField, numberField, textField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';
import { cutterKinds, drillKinds } from './cutter-kinds.ts';
import { edgeConditions } from './edge.ts';

const cutterMaterial = z
  .enum(['high-speed steel', 'carbide'], { error: '"high-speed steel" or "carbide"' })
  .describe('what the edge is made of');

/**
 * The entry of a cutter, with lengths in the workshop's unit.
 *
 * @param unit  unit of lengths written without one
 * @returns the schema; lengths are in millimetres and angles in degrees once read
 * @source common-practice
 * @valid turning tools for light lathes
 * @example cutterSchema('mm').safeParse({}).success → false
 */
export function cutterSchema(unit: LengthUnit) {
  return z
    .strictObject({
      id: idField.describe('short name by which operations refer to the cutter'),
      name: textField('what the cutter is called in the workshop', 100),
      kind: z.enum(cutterKinds, { error: `one of ${cutterKinds.join(', ')}` }).describe('what it is for'),
      hand: z
        .enum(['left', 'right', 'neutral'], { error: '"left", "right" or "neutral"' })
        .describe('right: cuts towards the headstock'),
      material: cutterMaterial,
      noseRadius: lengthField(unit, 'rounding of the corner', { max: 10, zero: true }),
      approachAngle: numberField(
        'between the edge and the direction of feed; 90 turns to a square shoulder',
        'degrees',
        10,
        135,
      ),
      rake: numberField('rake of the top face along the cut', 'degrees', -15, 25),
      edge: z
        .enum(edgeConditions, { error: '"sharp", "honed" or "moulded"' })
        .describe('sharp: stoned or ground; honed: ground and lightly rounded; moulded: pressed and coated'),
      overhang: lengthField(unit, 'from the tool post to the edge', { max: 300 }),
      maxDepth: lengthField(unit, 'greatest depth of cut it stands, on the radius', { max: 20 }),
      width: lengthField(unit, 'width of the edge of a grooving or parting cutter', { max: 20 }).optional(),
      bladeHeight: lengthField(unit, 'height of the blade of a grooving or parting cutter, top to bottom', {
        max: 60,
      }).optional(),
      barDiameter: lengthField(unit, 'diameter of a boring bar', { max: 100 }).optional(),
      minBore: lengthField(unit, 'smallest bore a boring bar goes into', { max: 500 }).optional(),
      flankAngle: numberField('included angle of a threading cutter', 'degrees', 29, 90).optional(),
      inside: z.boolean().describe('a grooving or threading cutter that works inside a bore').optional(),
      note: textField('anything else worth knowing').optional(),
    })
    .superRefine((cutter, ctx) => {
      const needs = (field: 'width' | 'barDiameter' | 'minBore' | 'flankAngle', what: string) => {
        if (cutter[field] === undefined) ctx.addIssue({ code: 'custom', path: [field], message: what });
      };
      if (cutter.kind === 'grooving' || cutter.kind === 'parting')
        needs('width', `the width of a ${cutter.kind} cutter, for example 2`);
      if (cutter.kind === 'boring') {
        needs('barDiameter', 'the diameter of the boring bar, for example 8');
        needs('minBore', 'the smallest bore the bar goes into, for example 10');
      }
      if (cutter.kind === 'threading') needs('flankAngle', 'the included angle of the thread, for example 60');
    });
}

/** A cutter once read. */
export type Cutter = z.output<ReturnType<typeof cutterSchema>>;

/**
 * The entry of a drill or reamer.
 *
 * @param unit  unit of lengths written without one
 * @returns the schema; lengths are in millimetres and angles in degrees once read
 * @source common-practice
 * @valid drills held in the tailstock of a light lathe
 * @example drillSchema('mm').safeParse({ id: 'd6', diameter: '6', kind: 'twist', pointAngle: 118, material: 'carbide' }).success → true
 */
export function drillSchema(unit: LengthUnit) {
  return z.strictObject({
    id: idField.describe('short name by which operations refer to the drill'),
    diameter: lengthField(unit, 'of the hole it makes', { max: 60 }),
    kind: z.enum(drillKinds, { error: `one of ${drillKinds.join(', ')}` }).describe('what kind of drill'),
    pointAngle: numberField('included angle of the point; 180 for a flat bottom or a reamer', 'degrees', 60, 180),
    material: cutterMaterial,
  });
}

/** A drill once read. */
export type Drill = z.output<ReturnType<typeof drillSchema>>;
