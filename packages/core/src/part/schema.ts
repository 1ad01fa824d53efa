/**
 * The part as it is written in a job: what was decided, in the words and numbers as typed.
 * Everything may be missing: a half-entered part is normal and still draws.
 */

import { z } from 'zod';
import { idField, lengthField, numberField, textField } from '../units/fields.ts';
import type { LengthUnit } from '../units/length.ts';
import { roles } from './roles.ts';
import { sizeField } from './size-field.ts';

const own = idField.describe('name by which the rest of the document refers to it');
const role = z.enum(roles).describe('what the surface is for; steers fits, finish and the order of work').optional();
const startEdge = 'edge or corner at its beginning';
const endEdge = 'edge or corner at its end';
const finish = numberField('roughness Ra', 'µm', 0.025, 50);

function edge(unit: LengthUnit) {
  return z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('chamfer').describe('a slope across the corner'),
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
    id: own,
    name: textField('what the turner calls it', 80).optional(),
    role,
    finish: finish.optional(),
    length: sizeField(unit, 'length along the part').optional(),
    startEdge: edge(unit).describe(startEdge).optional(),
    endEdge: edge(unit).describe(endEdge).optional(),
  };
  return z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('cylinder').describe('of one diameter'),
      ...common,
      diameter: sizeField(unit, 'diameter').optional(),
    }),
    z.strictObject({
      kind: z.literal('cone').describe('diameter changing evenly along it'),
      ...common,
      startDiameter: sizeField(unit, 'diameter at the left end').optional(),
      endDiameter: sizeField(unit, 'diameter at the right end').optional(),
    }),
    z.strictObject({
      kind: z.literal('arc').describe('an arc between two diameters'),
      ...common,
      startDiameter: sizeField(unit, 'diameter at the left end').optional(),
      endDiameter: sizeField(unit, 'diameter at the right end').optional(),
      radius: sizeField(unit, 'radius of the arc').optional(),
      bulge: z.enum(['outward', 'inward']).describe('side to which the arc bulges'),
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
        .max(200)
        .describe('points of the curve, from the left'),
    }),
  ]);
}

function insideSection(unit: LengthUnit) {
  const common = {
    id: own,
    name: textField('what the turner calls it', 80).optional(),
    role,
    finish: finish.optional(),
    /** From the face it is entered from to its far end; `through` comes out on the other side. */
    depth: z
      .union([z.literal('through'), sizeField(unit, 'depth from the face to the far end')])
      .describe('depth from the face to the far end, or through [mm or in, as typed]')
      .optional(),
    startEdge: edge(unit).describe(startEdge).optional(),
    endEdge: edge(unit).describe(endEdge).optional(),
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
      kind: z.literal('cone').describe('diameter changing evenly along it'),
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
    id: own,
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
    purpose: z
      .enum(['o-ring', 'square seal', 'retaining ring', 'thread relief', 'oil', 'other'])
      .describe('what it is for'),
  });
}

function thread(unit: LengthUnit) {
  return z.strictObject({
    id: own,
    on: idField.describe('id of the section that carries it'),
    designation: z.string().max(60).describe('as people write it: M10x1.25-6g, 3/8 BSF, G1/4 A').optional(),
    length: sizeField(unit, 'length of full thread from the free end of the section').optional(),
    from: z.enum(['start', 'end']).describe('the end of the section at which the thread begins').optional(),
  });
}

function notTurned(unit: LengthUnit) {
  const common = { id: own, name: textField('what the turner calls it', 80).optional() };
  const face = z.enum(['left', 'right']).describe('face it goes into');
  const on = idField.describe('id of the section it is on');
  return z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('hexagon socket').describe('a hexagon sunk into a face'),
      ...common,
      face,
      acrossFlats: sizeField(unit, 'across flats').optional(),
      depth: sizeField(unit, 'depth').optional(),
      made: z.enum(['broached', 'bonded insert', 'pinned insert']).describe('how it is made').optional(),
    }),
    z.strictObject({
      kind: z.literal('hexagon').describe('a hexagon outside'),
      ...common,
      on,
      acrossFlats: sizeField(unit, 'across flats').optional(),
    }),
    z.strictObject({
      kind: z.literal('flats').describe('flats on a section'),
      ...common,
      on,
      count: z.union([z.literal(1), z.literal(2), z.literal(4)]).describe('number of flats [-]'),
      acrossFlats: sizeField(unit, 'across flats, or flat to opposite side').optional(),
      along: sizeField(unit, "from the section's left end", { zero: true }).optional(),
      length: sizeField(unit, 'length').optional(),
    }),
    z.strictObject({
      kind: z.literal('cross hole').describe('a hole across the axis'),
      ...common,
      on,
      diameter: sizeField(unit, 'diameter').optional(),
      along: sizeField(unit, "from the section's left end to the centre of the hole").optional(),
      through: z.boolean().describe('through both walls'),
    }),
    z.strictObject({
      kind: z.literal('slot').describe('a slot across a face, for a screwdriver'),
      ...common,
      face,
      width: sizeField(unit, 'width').optional(),
      depth: sizeField(unit, 'depth').optional(),
    }),
    z.strictObject({
      kind: z.literal('knurl').describe('a knurled section'),
      ...common,
      on,
      pattern: z.enum(['straight', 'diamond']).describe('pattern of the knurl'),
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
    leftOpen: z
      .array(z.string().max(130).describe('a size, by its dimension: guide.diameter'))
      .max(400)
      .describe('sizes not settled yet: drawn in pencil until they are')
      .optional(),
    outside: z.array(outsideSection(unit)).max(80).describe('sections from the left face to the right'),
    inside: z
      .strictObject({
        left: z.array(insideSection(unit)).max(20).describe('bores from the left face inward').optional(),
        right: z.array(insideSection(unit)).max(20).describe('bores from the right face inward').optional(),
      })
      .describe('bores, from the face they are entered from')
      .optional(),
    grooves: z.array(groove(unit)).max(40).describe('grooves in sections').optional(),
    threads: z.array(thread(unit)).max(20).describe('threads on sections').optional(),
    notTurned: z.array(notTurned(unit)).max(20).describe('what is made off the lathe').optional(),
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

/**
 * A part as written in a document.
 *
 * @internal for tests that write parts
 */
export type PartDocument = z.input<Schema>;
/** A part as read: millimetres, sizes with their tolerances. */
export type Part = z.output<Schema>;
export type OutsideSection = Part['outside'][number];
export type InsideSection = NonNullable<NonNullable<Part['inside']>['left']>[number];
export type Groove = NonNullable<Part['grooves']>[number];
export type ThreadFeature = NonNullable<Part['threads']>[number];
export type NotTurned = NonNullable<Part['notTurned']>[number];
export type Edge = NonNullable<OutsideSection['startEdge']>;
