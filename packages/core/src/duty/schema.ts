/**
 * What the part must do: the mates it works against, its seals, joints and loads.
 */
import { z } from 'zod';
import { sizeField } from '../part/size-field.ts';
import { idField, lengthField, numberField, textField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';

/** A part that the new one works against. */
export function mateSchema(unit: LengthUnit) {
  return z.strictObject({
    id: idField,
    name: textField('what it is', 120),
    kind: z.enum(['bore', 'shaft']).describe('the mate is the hole, or the mate is the shaft'),
    with: z.string().max(130).describe('dimension of the new part that meets it: guide.diameter'),
    sameAs: idField.describe('mate that is the same piece: a bore in which two sections run').optional(),
    size: sizeField(unit, 'its size as it is today, or as the manual gives it').optional(),
    material: z.string().max(80).optional(),
    wanted: z
      .strictObject({
        least: lengthField(unit, 'least clearance wanted (negative: interference)', { min: -5, zero: true, max: 5 }),
        most: lengthField(unit, 'most clearance wanted', { min: -5, zero: true, max: 5 }),
      })
      .optional(),
    note: textField('its state', 1000).optional(),
  });
}

function sealSchema() {
  return z.strictObject({
    id: idField,
    groove: idField,
    mate: idField.describe('the bore or shaft that it seals against'),
    ring: z.string().max(60).describe('AS568-112, 18.64 x 3.53'),
    elastomer: z.string().max(40).optional(),
    hardness: numberField('hardness', 'Shore A', 30, 95),
    motion: z.enum(['static', 'moving']),
  });
}

function bondSchema(unit: LengthUnit) {
  return z.strictObject({
    id: idField,
    feature: idField.describe('the feature that is bonded in'),
    diameter: lengthField(unit, 'diameter of the joint'),
    length: lengthField(unit, 'engaged length'),
    gap: lengthField(unit, 'diametral gap').optional(),
    strength: numberField('shear strength of the retaining compound in the standard test (ISO 10123)', 'MPa', 1, 60),
    torque: numberField('torque it must carry', 'N·m', 0, 1000).optional(),
    force: numberField('axial force it must carry', 'N', 0, 1e6).optional(),
  });
}

/** Duty as written in a job. */
export function dutySchema(unit: LengthUnit) {
  return z.strictObject({
    pressure: numberField('highest pressure', 'MPa', 0, 100).optional(),
    medium: z.string().max(60).optional(),
    temperature: z
      .strictObject({ from: numberField('coldest', '°C', -60, 300), to: numberField('hottest', '°C', -60, 300) })
      .optional(),
    seals: z.array(sealSchema()).max(20).optional(),
    bonds: z.array(bondSchema(unit)).max(20).optional(),
  });
}

export type Mate = z.output<ReturnType<typeof mateSchema>>;
export type Duty = z.output<ReturnType<typeof dutySchema>>;
export type Seal = NonNullable<Duty['seals']>[number];
export type Bond = NonNullable<Duty['bonds']>[number];
