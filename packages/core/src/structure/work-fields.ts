/**
 * Fields by which questions are told of held work.
 */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { findMaterial } from '../materials/find.ts';
import { lengthField, numberField } from '../units/fields.ts';
import { type ChuckSprings, clamped, type SteppedBeam } from './stepped-beam.ts';

const rigid = z.literal('rigid');

const chuckField = z
  .union(
    [
      rigid,
      z.strictObject({
        translational: numberField('sideways stiffness of jaws and spindle together', 'N/mm', 1, 1e9),
        rotational: numberField('stiffness against tilting of jaws and spindle together', 'N·m/rad', 0, 1e9),
      }),
    ],
    { error: '"rigid", or the translational [N/mm] and rotational [N·m/rad] stiffness' },
  )
  .default('rigid')
  .describe('how far the chuck gives: "rigid", or its stiffness');

const tailstockField = z
  .strictObject({
    at: lengthField('mm', 'where the centre supports the work, from the jaw faces'),
    stiffness: z
      .union([rigid, numberField('sideways stiffness of the centre', 'N/mm', 1, 1e9)], {
        error: '"rigid", or a stiffness in N/mm',
      })
      .default('rigid')
      .describe('how far the centre gives [N/mm], or "rigid"'),
  })
  .optional()
  .describe('a centre in the tailstock, if there is one');

export const workFields = {
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
    .describe('the work from the jaw faces outwards'),
  material: z.string().max(100).optional().describe('of the work, by any name; or give youngsModulus'),
  youngsModulus: numberField('modulus of elasticity, when no material is named', 'MPa', 1000, 1_000_000).optional(),
  poissonRatio: numberField('Poisson’s ratio, when no material is named', '', 0, 0.49).default(0.3),
  chuck: chuckField,
  tailstock: tailstockField,
};

export const workSchema = z.strictObject(workFields);

/** The beam a question tells of. */
export function beamOf(work: z.output<typeof workSchema>): SteppedBeam {
  let from = 0;
  const sections = work.sections.map(({ length, outerDiameter, innerDiameter }) => {
    const section = { from, to: from + length, outerDiameter, innerDiameter };
    from = section.to;
    return section;
  });
  const chuck: ChuckSprings = work.chuck === 'rigid' ? clamped : work.chuck;
  const { at, stiffness } = work.tailstock ?? {};
  const tailstock =
    at === undefined ? undefined : { at, stiffness: typeof stiffness === 'number' ? stiffness : Infinity };
  return { sections, chuck, tailstock, ...elasticity(work) };
}

function elasticity({ material, youngsModulus, poissonRatio }: z.output<typeof workSchema>) {
  if ((material === undefined) === (youngsModulus === undefined)) {
    throw new InputError([
      { path: 'material', value: material, expected: 'either a material or youngsModulus', example: '303' },
    ]);
  }
  if (youngsModulus !== undefined) return { youngsModulus, poissonRatio };
  const found = findMaterial(material ?? '');
  return { youngsModulus: found.youngsModulus, poissonRatio: found.poisson };
}

/**
 * A figure to the digits that matter, without the noise of the last binary place.
 *
 * @param value  the figure [-]
 * @returns the figure rounded [-]
 * @source geometry
 * @valid any number
 * @example shown(0.123456789) → 0.123457
 */
export function shown(value: number): number {
  return Number(value.toPrecision(6));
}

/**
 * Density of the work a question tells of.
 *
 * @param work  its material, or its density [kg/m³]
 * @returns density [kg/mm³]
 * @throws InputError when neither is told
 * @source geometry
 * @valid one of the two
 * @example densityOf({ density: 7850 }) → 7.85e-6
 */
export function densityOf(work: {
  readonly material?: string | undefined;
  readonly density?: number | undefined;
}): number {
  if (work.density !== undefined) return work.density * 1e-9;
  if (work.material !== undefined) return findMaterial(work.material).density;
  throw new InputError([
    { path: 'work.density', value: undefined, expected: 'a density in kg/m³, or a material', example: '7850' },
  ]);
}
