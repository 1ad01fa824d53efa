/**
 * Fields that several questions on cutting share, and how the work's own figures are found from them.
 */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { cuttingData, specificForceSpread } from '../materials/cutting-data.ts';
import { findMaterial } from '../materials/find.ts';
import type { Material } from '../materials/material.ts';
import type { SourceKey } from '../sources/register.ts';
import { lengthField, numberField } from '../units/fields.ts';
import { type Mm, radians } from '../units/quantities.ts';
import { edgeConditions } from './edge.ts';
import type { CutData, wearFactors } from './turning-force.ts';

/** What is cut: a material by name, or its own figures. */
export const workFields = {
  material: z
    .string()
    .max(100)
    .optional()
    .describe('what is cut, by any name: 303, 1.4305, EN58M; or give its figures instead'),
  specificForce: numberField('specific cutting force kc1.1, when no material is named', 'MPa', 100, 6000).optional(),
  exponent: numberField('exponent mc, when no material is named', '', 0, 0.59).optional(),
};

export const cutFields = {
  depth: lengthField('mm', 'depth of cut, on the radius', { max: 20 }),
  feed: lengthField('mm', 'feed for each turn', { max: 2 }),
  noseRadius: lengthField('mm', 'rounding of the corner, 0 when ground sharp', { max: 16, zero: true }),
  approachAngle: numberField(
    'between the edge and the direction of feed; 90 turns to a square shoulder',
    'degrees',
    10,
    135,
  ),
};

export const edgeField = z
  .enum(edgeConditions, { error: 'one of sharp, honed, moulded' })
  .describe('sharp: stoned or ground; honed: ground and lightly rounded; moulded: pressed and coated');

const wearNames = ['fresh', 'finishing', 'roughing', 'dull'] as const satisfies readonly (keyof typeof wearFactors)[];

export const wearField = z
  .enum(wearNames, { error: `one of ${wearNames.join(', ')}` })
  .default('fresh')
  .describe('how far the edge is worn: fresh, as usual in finishing, as usual in roughing, dull');

export const remarksField = z.array(z.string()).describe('what to know about this answer');
export const sourcesField = z.array(z.string()).describe('where the answer comes from');

/** What is known of the work. */
export interface Work {
  readonly cutData: CutData;
  readonly hardens: boolean;
  /** Share of the force at which the lowest and highest publisher stand, at a chip thickness. */
  spread(chipThickness: Mm): { readonly low: number; readonly high: number };
  readonly remarks: readonly string[];
  readonly sources: readonly SourceKey[];
}

interface AskedWork {
  readonly material?: string | undefined;
  readonly specificForce?: number | undefined;
  readonly exponent?: number | undefined;
}

/** Whether a material hardens under a rubbing edge so much that it spoils the next cut. */
export function hardens(material: Material): boolean {
  return material.workHardening === 'high' || material.workHardening === 'medium to high';
}

/** Publishers differ by at least this share on one material: ±25 to 40 % in the cutting README. */
const publishers = { low: 0.75, high: 1.35 };

/** The figures of the work asked about; refuses when there are none, or two sets of them. */
export function workOf({ material, specificForce, exponent }: AskedWork): Work {
  if (material === undefined) {
    if (specificForce === undefined || exponent === undefined) {
      throw new InputError([
        { path: 'material', value: material, expected: 'a material, or specificForce with exponent', example: '303' },
      ]);
    }
    return { cutData: { specificForce, exponent }, hardens: false, spread: () => publishers, remarks: [], sources: [] };
  }
  if (specificForce !== undefined || exponent !== undefined) {
    throw new InputError([
      { path: 'specificForce', value: specificForce, expected: 'nothing when a material is named' },
    ]);
  }
  const found = findMaterial(material);
  const data = cuttingData(found);
  if (data.specificForce === undefined || data.exponent === undefined) {
    throw new InputError([
      {
        path: 'material',
        value: material,
        expected: `a material whose cutting force is known (${data.missing.join('; ')})`,
        example: '303',
      },
    ]);
  }
  const [used] = data.forces;
  const cutData: CutData = {
    specificForce: data.specificForce,
    exponent: data.exponent,
    ...(data.rakeReference === undefined ? {} : { rakeReference: radians(data.rakeReference) }),
  };
  return {
    cutData,
    hardens: hardens(found),
    spread: (chipThickness) => {
      const range = specificForceSpread(data, chipThickness);
      const own = cutData.specificForce * chipThickness ** -cutData.exponent;
      if (!range) return publishers;
      return { low: Math.min(publishers.low, range.low / own), high: Math.max(publishers.high, range.high / own) };
    },
    remarks: [...found.remarks, ...(used ? [`cutting force printed for ${used.for} (${used.status})`] : [])],
    sources: used ? [used.source] : [],
  };
}

/**
 * A number to as many significant digits as it is worth showing.
 *
 * @param value  the number [-]
 * @param digits  significant digits to keep [-]
 * @returns the number rounded [-]
 * @source geometry
 * @valid any number
 * @example significant(50.868, 3) → 50.9
 */
export function significant(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}
