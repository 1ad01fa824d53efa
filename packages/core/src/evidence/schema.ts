/**
 * What was measured: specimens, mates, gauges and readings.
 */

import { z } from 'zod';
import { sizeField } from '../part/size-field.ts';
import { idField, lengthField, numberField, textField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';
import { conditions, gaugeKinds } from './reading-kinds.ts';

/** A gauge on the bench. */
export function gaugeSchema(unit: LengthUnit) {
  return z.strictObject({
    id: idField,
    name: textField('what it is called', 80),
    kind: z.enum(gaugeKinds),
    resolution: lengthField(unit, 'smallest step that is read').optional(),
    permissibleError: lengthField(unit, 'largest permissible error, from its standard or certificate').optional(),
    from: lengthField(unit, 'smallest size it takes', { zero: true }).optional(),
    to: lengthField(unit, 'largest size it takes').optional(),
    zeroError: lengthField(unit, 'what it shows too much at a known size', { min: -5, zero: true, max: 5 }).optional(),
  });
}

function readingSchema(unit: LengthUnit) {
  return z.strictObject({
    id: idField,
    of: z
      .string()
      .max(130)
      .describe(
        'dimension it is a reading of: guide.diameter; of a thread: thread.crest, thread.pitch; of a curve: bowl.profile (its diameter at a place along), dome.depths (its depth at a distance from the axis)',
      ),
    specimen: idField.describe('specimen or mate it was taken on').optional(),
    value: lengthField(unit, 'what the gauge showed'),
    gauge: idField.optional(),
    along: lengthField(unit, "place along the part from the feature's left end; of depths, distance from the axis", {
      zero: true,
    }).optional(),
    angle: numberField('place round the part', '°', 0, 360).optional(),
    condition: z.enum(conditions).optional(),
    temperature: numberField('temperature of the part', '°C', -20, 120).optional(),
    gaugeTemperature: numberField('temperature of the gauge; 20 unless it is given', '°C', -20, 60).optional(),
    crests: z.int().min(1).max(200).describe('pitches the value spans, when it is a pitch [-]').optional(),
    note: textField('note', 500).optional(),
  });
}

/** Evidence as written in a job. */
export function evidenceSchema(unit: LengthUnit) {
  return z.strictObject({
    specimens: z
      .array(
        z.strictObject({
          id: idField,
          name: textField('which one', 120),
          note: textField('its state', 1000).optional(),
        }),
      )
      .max(20)
      .optional(),
    readings: z.array(readingSchema(unit)).max(2000).optional(),
    manual: z
      .array(
        z.strictObject({
          of: z.string().max(130).describe('dimension it is about: guide.diameter'),
          size: sizeField(unit, 'size with its limits as the manual or an old drawing gives them'),
          note: textField('where it stands', 500).optional(),
        }),
      )
      .max(200)
      .describe('limits quoted in a manual or on an old drawing')
      .optional(),
    flankAngles: z
      .array(
        z.strictObject({
          of: idField.describe('the thread, or the section that carries it'),
          angle: numberField('angle between the flanks', '°', 20, 100),
          uncertainty: numberField('how sure, one standard uncertainty', '°', 0.05, 20).optional(),
        }),
      )
      .max(100)
      .describe('flank angles of threads, found with gauges against the light')
      .optional(),
  });
}

/** The part's inspection after it is made: the same kind of readings, on the new part. */
export function inspectionSchema(unit: LengthUnit) {
  return z.strictObject({ readings: z.array(readingSchema(unit)).max(2000).optional() });
}

export type Gauge = z.output<ReturnType<typeof gaugeSchema>>;
export type Reading = z.output<ReturnType<typeof readingSchema>>;
export type Evidence = z.output<ReturnType<typeof evidenceSchema>>;
export type Inspection = z.output<ReturnType<typeof inspectionSchema>>;
