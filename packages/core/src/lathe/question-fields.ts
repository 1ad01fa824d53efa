/**
 * Fields by which questions are told of a workshop, of work held in its lathe, and of a cut.
 */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { findMaterial } from '../materials/find.ts';
import { lengthField, numberField, textField } from '../units/fields.ts';
import { axialFloatOf } from './axial-float.ts';
import type { Operation, Setup } from './chain.ts';
import type { CutMaterial } from './cut-forces.ts';
import { type Workshop, workshopSchema } from './schema.ts';
import { knownOf, materialOf } from './workshop-known.ts';

/** A workshop document; bare numbers in its own unit. */
export const workshopField = z
  .unknown()
  .transform((document, ctx): Workshop => {
    const inches = typeof document === 'object' && document !== null && 'units' in document && document.units === 'in';
    const read = workshopSchema(inches ? 'in' : 'mm').safeParse(document);
    if (read.success) return read.data;
    for (const { message, path } of read.error.issues) ctx.addIssue({ code: 'custom', message, path: [...path] });
    return z.NEVER;
  })
  .describe('workshop document, as in a workshop file');

const operations = ['turning', 'facing', 'boring', 'grooving', 'parting'] as const satisfies readonly Operation[];

export const cutOnLatheFields = {
  workshop: workshopField,
  state: z.string().max(60).optional().describe('state of the lathe; its present one when left out'),
  operation: z
    .enum(operations, { error: `one of ${operations.join(', ')}` })
    .default('turning')
    .describe('what is cut'),
  cutter: z.string().max(60).describe('cutter, as listed in the workshop'),
  material: textField('what is cut, by any name', 100),
  sections: z
    .array(
      z.strictObject({
        length: lengthField('mm', 'of the section'),
        outerDiameter: lengthField('mm', 'outside diameter', { max: 500 }),
        innerDiameter: lengthField('mm', 'bore, 0 or left out when solid', { max: 500, zero: true }).optional(),
      }),
    )
    .min(1)
    .max(200)
    .describe('the work from the jaw faces outwards, as it stands'),
  grip: lengthField('mm', 'length held in the jaws'),
  tailstock: z.boolean().default(false).describe('supported by the tailstock centre at its end'),
  from: lengthField('mm', 'where the cut ends towards the jaws; 0 when left out', { zero: true }).default(0),
  to: lengthField('mm', 'where it begins; the end of the work when left out').optional(),
  diameter: lengthField('mm', 'diameter cut; that of the last section when left out', { max: 500 }).optional(),
  depth: lengthField('mm', 'depth on the radius; the width of the edge when grooving or parting', { max: 20 }),
  feed: numberField('feed for each turn', 'mm/rev', 0.001, 2),
  speed: numberField('spindle speed', 'rpm', 1, 20_000),
  sizeLimit: lengthField('mm', 'greatest difference of size along the work that will do, on the diameter').optional(),
};

const cutOnLatheSchema = z.strictObject(cutOnLatheFields);
export type CutOnLathe = z.output<typeof cutOnLatheSchema>;

/** Places along a cut. */
const stationCount = 40;

/** The setup a question tells of. */
export function setupOf(asked: CutOnLathe): { setup: Setup; material: CutMaterial } {
  const { workshop, sections, operation, grip, tailstock } = asked;
  let end = 0;
  const placed = sections.map(({ length, outerDiameter, innerDiameter }) => {
    const section = { from: end, to: end + length, outerDiameter, innerDiameter };
    end = section.to;
    return section;
  });
  fits(workshop, asked, end);
  const last = asked.to ?? end;
  const single = operation === 'facing' || operation === 'grooving' || operation === 'parting';
  const stations = single
    ? [last]
    : Array.from({ length: stationCount }, (_, i) => asked.from + ((last - asked.from) * i) / (stationCount - 1));
  const { youngsModulus, poisson, density } = findMaterial(asked.material);
  const known = knownOf(workshop);
  return {
    setup: {
      operation,
      work: {
        sections: placed,
        youngsModulus,
        poissonRatio: poisson,
        density,
        gripLength: grip,
        centreAt: tailstock ? end : undefined,
      },
      cutter: { ...known.cutter(asked.cutter), shank: known.shank },
      stations,
      diameter: asked.diameter ?? placed.at(-1)?.outerDiameter ?? 0,
      axialFloat: operation === 'facing' ? axialFloatOf(workshop.lathe) : undefined,
    },
    material: materialOf(asked.material),
  };
}

/** Refuses work that does not go into the lathe. */
function fits({ lathe }: Workshop, asked: CutOnLathe, end: number): void {
  const refuse = (path: string, value: unknown, expected: string): never => {
    throw new InputError([{ path, value, expected }]);
  };
  if (end > lathe.betweenCentres)
    refuse('sections', `${end} mm`, `work of at most ${lathe.betweenCentres} mm, the distance between centres`);
  const largest = Math.max(...asked.sections.map((s) => s.outerDiameter));
  if (largest > lathe.swing) refuse('sections', `Ø${largest} mm`, `at most Ø${lathe.swing} mm, the swing of the lathe`);
  const last = asked.to ?? end;
  if (!(last <= end && asked.from < last))
    refuse('to', last, `a place beyond ${asked.from} mm and at most ${end} mm, on the work`);
  if (asked.tailstock && (!lathe.tailstock || lathe.tailstock.centre === 'none'))
    refuse('tailstock', true, 'a lathe with a centre in its tailstock');
}
