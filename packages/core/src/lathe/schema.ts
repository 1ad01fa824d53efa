/**
 * The workshop as written by its owner: the lathe, its cutters, drills, gauges and the bars on the rack.
 */
import { z } from 'zod';
import { cutterSchema, drillSchema } from '../cutting/cutter.ts';
import { gaugeSchema } from '../evidence/schema.ts';
import { idField, lengthField, numberField, textField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';
import { testsSchema } from './test-schema.ts';

function dial(unit: LengthUnit, what: string) {
  return z
    .strictObject({
      division: lengthField(unit, 'one division of the dial'),
      perTurn: lengthField(unit, 'one turn of the dial'),
      reads: z
        .enum(['radius', 'diameter', 'travel'])
        .describe('what one division takes off: radius, diameter, or plain travel'),
    })
    .describe(what);
}

function latheSchema(unit: LengthUnit) {
  return z.strictObject({
    name: textField('what it is called', 80),
    speeds: z
      .discriminatedUnion('kind', [
        z.strictObject({
          kind: z.literal('steps'),
          rpm: z
            .array(numberField('spindle speed', 'rpm', 1, 20000))
            .min(1)
            .max(40),
        }),
        z.strictObject({
          kind: z.literal('range'),
          from: numberField('slowest', 'rpm', 1, 20000),
          to: numberField('fastest', 'rpm', 1, 20000),
        }),
      ])
      .describe('spindle speeds'),
    drive: z.strictObject({
      power: numberField('power of the motor', 'W', 10, 50000),
      efficiency: numberField('share of it that reaches the spindle', '-', 0.1, 1).optional(),
      behaviour: z
        .enum(['constant power', 'constant torque'])
        .describe(
          'stepped pulleys give constant power over the steps; an electronic drive gives constant torque below its base speed',
        ),
      baseSpeed: numberField('below this spindle speed the torque no longer rises', 'rpm', 1, 20000).optional(),
    }),
    swing: lengthField(unit, 'largest diameter over the bed'),
    swingOverSlide: lengthField(unit, 'largest diameter over the cross slide').optional(),
    betweenCentres: lengthField(unit, 'distance between centres'),
    spindleBore: lengthField(unit, 'largest bar through the spindle'),
    chucks: z
      .array(
        z.strictObject({
          id: idField,
          name: textField('what it is called', 80),
          jaws: z.union([z.literal(3), z.literal(4), z.literal(6)]),
          kind: z.enum(['self-centring', 'independent', 'collet']),
          from: lengthField(unit, 'smallest diameter held', { zero: true }),
          to: lengthField(unit, 'largest diameter held'),
          jawLength: lengthField(unit, 'depth of grip'),
          runout: lengthField(unit, 'total run-out as it comes', { zero: true }).optional(),
        }),
      )
      .min(1)
      .max(20),
    tailstock: z
      .strictObject({
        centre: z.enum(['dead', 'live', 'none']),
        travel: lengthField(unit, 'travel of the quill'),
        largestDrill: lengthField(unit, 'largest drill held').optional(),
      })
      .optional(),
    dials: z.strictObject({
      crossSlide: dial(unit, 'cross slide'),
      topSlide: dial(unit, 'top slide').optional(),
      topSlideTravel: lengthField(unit, 'travel of the top slide').optional(),
      saddle: dial(unit, 'saddle').optional(),
      tailstock: dial(unit, 'tailstock quill').optional(),
    }),
    feeds: z
      .array(numberField('power feed', 'mm/rev', 0.001, 2))
      .max(60)
      .describe('power feeds; empty when fed by hand'),
    leadscrew: z
      .discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('metric'), pitch: numberField('pitch', 'mm', 0.5, 12) }),
        z.strictObject({ kind: z.literal('inch'), threadsPerInch: numberField('threads', 'per inch', 2, 40) }),
      ])
      .optional(),
    changeGears: z.array(z.int().min(10).max(200)).max(60).optional(),
    threadDial: z
      .strictObject({
        divisions: z.int().min(1).max(64).default(8).describe('numbered and plain lines together [-]'),
        travelPerTurn: numberField('travel of the saddle for one turn of the dial', 'in', 0.25, 24).default(1),
      })
      .describe('thread dial of a lathe with an inch leadscrew')
      .optional(),
    tests: testsSchema(unit).optional().describe('tests of its stiffness, and what it has been heard and seen to do'),
  });
}

function barSchema(unit: LengthUnit) {
  return z.strictObject({
    id: idField,
    material: textField('as people name it', 80),
    diameter: lengthField(unit, 'diameter'),
    length: lengthField(unit, 'length left'),
    note: textField('note', 300).optional(),
  });
}

function workshopBody(unit: LengthUnit) {
  return z.strictObject({
    sparewright: z.literal('workshop'),
    version: z.literal(1),
    units: z.enum(['mm', 'in']),
    name: textField('whose workshop', 120),
    note: textField('note', 2000).optional(),
    lathe: latheSchema(unit),
    cutters: z.array(cutterSchema(unit)).max(200),
    drills: z.array(drillSchema(unit)).max(300),
    gauges: z.array(gaugeSchema(unit)).max(100),
    bars: z.array(barSchema(unit)).max(300),
  });
}

const bodies = { mm: workshopBody('mm'), in: workshopBody('in') } as const;

/** Schema of a workshop whose bare numbers are in `unit`. */
export function workshopSchema(unit: LengthUnit) {
  return bodies[unit];
}

/**
 * A workshop as written in a document.
 *
 * @internal for tests that write workshops
 */
export type WorkshopDocument = z.input<typeof bodies.mm>;
export type Workshop = z.output<typeof bodies.mm>;
export type Lathe = Workshop['lathe'];
export type Chuck = Lathe['chucks'][number];
export type Bar = Workshop['bars'][number];
