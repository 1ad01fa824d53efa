/**
 * The job document: one part to remake.
 */

import { z } from 'zod';
import { dutySchema, mateSchema } from '../duty/schema.ts';
import { evidenceSchema, inspectionSchema } from '../evidence/schema.ts';
import { partSchema } from '../part/schema.ts';
import { routeSchema } from '../route/schema.ts';
import { idField, lengthField, numberField, textField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';
import { hazards } from './hazards.ts';

export type Hazard = (typeof hazards)[number];

function jobBody(unit: LengthUnit) {
  return z.strictObject({
    sparewright: z.literal('job'),
    version: z.literal(1),
    title: textField('title of the job', 160),
    units: z.enum(['mm', 'in']),
    hazard: z.enum(hazards),
    invented: z.boolean().describe('all figures are made up for demonstration').optional(),
    machine: z
      .strictObject({
        name: textField('machine the part belongs to', 160),
        decade: z.int().min(1700).max(2100).describe('decade it was built: 1930').optional(),
        country: textField('country it was made in', 60).optional(),
      })
      .optional(),
    evidence: evidenceSchema(unit).optional(),
    mates: z.array(mateSchema(unit)).max(40).optional(),
    part: partSchema(unit).optional(),
    duty: dutySchema(unit).optional(),
    route: routeSchema(unit).optional(),
    inspection: inspectionSchema(unit).optional(),
    decisions: z
      .array(
        z.strictObject({
          id: idField,
          about: textField('dimension, feature or finding it settles', 160),
          decided: textField('what was decided', 500),
          why: textField('why', 1000),
        }),
      )
      .max(200)
      .optional(),
    photographs: z
      .array(
        z.strictObject({
          id: idField,
          file: z
            .string()
            .regex(/^[0-9a-f]{64}$/, 'the SHA-256 of the picture in hexadecimal digits')
            .describe('the picture among the attachments: SHA-256 of its content'),
          shows: textField('what it shows, in words for those who do not see it', 500).optional(),
          of: z
            .string()
            .max(130)
            .describe('specimen, mate, feature, dimension or reading it shows: guide.diameter')
            .optional(),
          along: lengthField(unit, "place along the part from the feature's left end", { zero: true }).optional(),
        }),
      )
      .max(200)
      .describe('photographs of the originals and of the new part')
      .optional(),
    notes: textField('notes', 20000).optional(),
    sheet: z
      .strictObject({
        paper: z.enum(['A4', 'Letter']).optional(),
        projection: z.enum(['first angle', 'third angle']).optional(),
        decimalSign: z.enum(['point', 'comma']).optional(),
        drawnBy: textField('name in the title block', 80).optional(),
        date: textField('date in the title block', 30).optional(),
        scale: numberField('scale of the main view', '-', 0.05, 20).optional(),
      })
      .optional(),
  });
}

const bodies = { mm: jobBody('mm'), in: jobBody('in') } as const;

/** Schema of a job whose bare numbers are in `unit`. */
export function jobSchema(unit: LengthUnit) {
  return bodies[unit];
}

/** A job as written in a file. */
export type JobDocument = z.input<typeof bodies.mm>;
/** A job as read. */
export type Job = z.output<typeof bodies.mm>;
