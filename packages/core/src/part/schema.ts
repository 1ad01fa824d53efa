/**
 * The part as it is written in a job: what was decided, in the words and numbers as typed.
 * Everything may be missing: a half-entered part is normal and still draws.
 */
import { z } from 'zod';
import { idField, lengthField, numberField, textField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';
import { sizeField } from './size-field.ts';

/** What a surface is for; steers fits, finish and the order of work. */
export const roles = ['sliding', 'sealing', 'locating', 'running', 'pressed', 'bonded', 'clearance', 'free'] as const;

const finish = numberField('roughness Ra', 'µm', 0.025, 50);

function edge(unit: LengthUnit) {
  return z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('chamfer'),
      size: lengthField(unit, 'length of the chamfer along the part'),
      angle: numberField('angle between chamfer and axis', '°', 5, 85).optional(),
    }),
    z.strictObject({
      kind: z.literal('fillet').describe('a radius: fills an inner corner, rounds an outer one'),
      radius: lengthField(unit, 'radius'),
    }),
    z.strictObject({
      kind: z
        .literal('relief')
        .describe('a shallow undercut at an inner corner, for the mating edge or the grinding of it'),
      width: lengthField(unit, 'width along the part'),
      depth: lengthField(unit, 'depth below the surface'),
    }),
  ]);
}

function outsideSection(unit: LengthUnit) {
  const common = {
    id: idField,
    name: textField('what the turner calls it', 80).optional(),
    role: z.enum(roles).optional(),
    finish: finish.optional(),
    length: sizeField(unit, 'length along the part').optional(),
    startEdge: edge(unit).optional(),
    endEdge: edge(unit).optional(),
  };
  return z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('cylinder'), ...common, diameter: sizeField(unit, 'diameter').optional() }),
    z.strictObject({
      kind: z.literal('cone'),
      ...common,
      startDiameter: sizeField(unit, 'diameter at the left end').optional(),
      endDiameter: sizeField(unit, 'diameter at the right end').optional(),
    }),
    z.strictObject({
      kind: z.literal('arc'),
      ...common,
      startDiameter: sizeField(unit, 'diameter at the left end').optional(),
      endDiameter: sizeField(unit, 'diameter at the right end').optional(),
      radius: sizeField(unit, 'radius of the arc').optional(),
      bulge: z.enum(['outward', 'inward']),
    }),
    z.strictObject({
      kind: z
        .literal('crown')
        .describe('a domed end: spherical cap whose foot has `diameter` and whose height is `length`'),
      ...common,
      diameter: sizeField(unit, 'diameter at the foot of the dome').optional(),
    }),
    z.strictObject({
      kind: z.literal('curve').describe('a free curve through points'),
      ...common,
      points: z
        .array(
          z.strictObject({
            along: lengthField(unit, "distance from the section's left end", { zero: true }),
            diameter: lengthField(unit, 'diameter there', { zero: true }),
          }),
        )
        .min(2)
        .max(200),
    }),
  ]);
}

function insideSection(unit: LengthUnit) {
  const common = {
    id: idField,
    name: textField('what the turner calls it', 80).optional(),
    role: z.enum(roles).optional(),
    finish: finish.optional(),
    /** From the face it is entered from to its far end; `through` comes out on the other side. */
    depth: z.union([z.literal('through'), sizeField(unit, 'depth from the face to the far end')]).optional(),
    startEdge: edge(unit).optional(),
    endEdge: edge(unit).optional(),
  };
  return z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z
        .literal('drilled')
        .describe('as the drill leaves it; depth to the full diameter, the point goes on beyond'),
      ...common,
      diameter: sizeField(unit, 'diameter').optional(),
      pointAngle: numberField('included angle of the point', '°', 60, 180).optional(),
    }),
    z.strictObject({
      kind: z.literal('bored').describe('bored, or milled flat at the bottom'),
      ...common,
      diameter: sizeField(unit, 'diameter').optional(),
    }),
    z.strictObject({
      kind: z.literal('cone'),
      ...common,
      startDiameter: sizeField(unit, 'diameter at the end nearer the face').optional(),
      endDiameter: sizeField(unit, 'diameter at the far end').optional(),
    }),
    z.strictObject({
      kind: z.literal('undercut').describe('a wider stretch behind a narrower one'),
      ...common,
      diameter: sizeField(unit, 'diameter').optional(),
      width: sizeField(unit, 'width along the part').optional(),
    }),
  ]);
}

function groove(unit: LengthUnit) {
  return z.strictObject({
    id: idField,
    name: textField('what the turner calls it', 80).optional(),
    on: idField.describe('id of the outside or inside section it is cut into'),
    along: sizeField(
      unit,
      "from the section's start (left end; inside: the end nearer the face) to the groove's nearer wall",
      { zero: true },
    ).optional(),
    width: sizeField(unit, 'width at the floor').optional(),
    floorDiameter: sizeField(unit, 'diameter at the floor').optional(),
    floorRadius: lengthField(unit, 'radius in the corners of the floor').optional(),
    edgeRadius: lengthField(unit, 'radius broken on the two edges').optional(),
    finish: finish.optional(),
    purpose: z.enum(['o-ring', 'square seal', 'retaining ring', 'thread relief', 'oil', 'other']),
  });
}

function thread(unit: LengthUnit) {
  return z.strictObject({
    id: idField,
    on: idField.describe('id of the section that carries it'),
    designation: z.string().max(60).describe('as people write it: M10x1.25-6g, 3/8 BSF, G1/4 A').optional(),
    length: sizeField(unit, 'length of full thread from the free end of the section').optional(),
    from: z.enum(['start', 'end']).describe('the end of the section at which the thread begins').optional(),
  });
}

function notTurned(unit: LengthUnit) {
  const common = { id: idField, name: textField('what the turner calls it', 80).optional() };
  const face = z.enum(['left', 'right']);
  return z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('hexagon socket'),
      ...common,
      face,
      acrossFlats: sizeField(unit, 'across flats').optional(),
      depth: sizeField(unit, 'depth').optional(),
      made: z.enum(['broached', 'bonded insert', 'pinned insert']).optional(),
    }),
    z.strictObject({
      kind: z.literal('hexagon'),
      ...common,
      on: idField,
      acrossFlats: sizeField(unit, 'across flats').optional(),
    }),
    z.strictObject({
      kind: z.literal('flats'),
      ...common,
      on: idField,
      count: z.union([z.literal(1), z.literal(2), z.literal(4)]),
      acrossFlats: sizeField(unit, 'across flats, or flat to opposite side').optional(),
      along: sizeField(unit, "from the section's left end", { zero: true }).optional(),
      length: sizeField(unit, 'length').optional(),
    }),
    z.strictObject({
      kind: z.literal('cross hole'),
      ...common,
      on: idField,
      diameter: sizeField(unit, 'diameter').optional(),
      along: sizeField(unit, "from the section's left end to the centre of the hole").optional(),
      through: z.boolean().describe('through both walls'),
    }),
    z.strictObject({
      kind: z.literal('slot'),
      ...common,
      face,
      width: sizeField(unit, 'width').optional(),
      depth: sizeField(unit, 'depth').optional(),
    }),
    z.strictObject({
      kind: z.literal('knurl'),
      ...common,
      on: idField,
      pattern: z.enum(['straight', 'diamond']),
      pitch: lengthField(unit, 'pitch of the knurl').optional(),
    }),
  ]);
}

function buildSchema(unit: LengthUnit) {
  return z.strictObject({
    name: textField('name of the part', 120),
    number: textField('part number, if it ever had one', 60).optional(),
    material: z.string().max(80).describe('as people name it: 303, 1.4305, gunmetal').optional(),
    generalTolerance: z.enum(['f', 'm', 'c', 'v']).describe('ISO 2768-1 class for sizes without limits').optional(),
    finish: finish.optional(),
    edgeBreak: lengthField(unit, 'sharp edges are broken by this much').optional(),
    minimumWall: lengthField(unit, 'no wall may be thinner than this').optional(),
    outside: z.array(outsideSection(unit)).max(80),
    inside: z
      .strictObject({
        left: z.array(insideSection(unit)).max(20).optional(),
        right: z.array(insideSection(unit)).max(20).optional(),
      })
      .optional(),
    grooves: z.array(groove(unit)).max(40).optional(),
    threads: z.array(thread(unit)).max(20).optional(),
    notTurned: z.array(notTurned(unit)).max(20).optional(),
  });
}

type Schema = ReturnType<typeof buildSchema>;

const built = new Map<LengthUnit, Schema>();

/** Schema of a part whose bare numbers are in `unit`. Built once: that takes longer than reading a part with it. */
export function partSchema(unit: LengthUnit): Schema {
  const schema = built.get(unit) ?? buildSchema(unit);
  built.set(unit, schema);
  return schema;
}

/** A part as written in a document. */
export type PartDocument = z.input<Schema>;
/** A part as read: millimetres, sizes with their tolerances. */
export type Part = z.output<Schema>;
export type OutsideSection = Part['outside'][number];
export type InsideSection = NonNullable<NonNullable<Part['inside']>['left']>[number];
export type Groove = NonNullable<Part['grooves']>[number];
export type ThreadFeature = NonNullable<Part['threads']>[number];
export type NotTurned = NonNullable<Part['notTurned']>[number];
export type Edge = NonNullable<OutsideSection['startEdge']>;
