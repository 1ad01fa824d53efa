/**
 * A parting or grooving blade: a flat bar on edge, clamped at one end, with the cutting edge at the top corner of the other.
 *
 * Knowledge: the cutting force bends it down; as it bends, its end face leans over and the edge at its top goes towards the work,
 * which is how a slender blade digs in. The push of the work against the edge, off the blade's middle by half its height, bends it
 * up again.
 */
import { DomainError } from '../errors.ts';
import type { Mm, MPa, Newton } from '../units/quantities.ts';

export interface Blade {
  readonly thickness: Mm;
  readonly height: Mm;
  /** From where it is clamped to the edge. */
  readonly reach: Mm;
  readonly youngsModulus: MPa;
}

/** How far the edge of a blade moves for each newton [mm/N]. */
export interface BladeGive {
  /** Down, under the cutting force. */
  readonly down: number;
  /** Towards the work under the cutting force; and by reciprocity up under the push of the work. */
  readonly dips: number;
  /** Away from the work under its push. */
  readonly back: number;
}

/** G over E of steel. */
const shear = 1 / 2.6;

/**
 * Give of a blade at its edge.
 *
 *     down = 4 L³/(E t h³) + 1.2 L/(G t h),   dips = 3 L²/(E t h²),   back = 4 L/(E t h)
 *
 * @param blade  the blade
 * @returns down, dips and back, all positive [mm/N]
 * @throws DomainError when a size is not above 0
 * @source roark-8.1 cases 1a and 3a for a cantilever under an end load and an end moment
 * @source cowper-1966 shear of a rectangle, rounded to 1.2
 * @valid steel of an even section; blade clamped rigidly, thin against its height
 * @example bladeGive({ thickness: 2, height: 12, reach: 20, youngsModulus: 210000 }).dips → 0.0000198
 */
export function bladeGive(blade: Blade): BladeGive {
  const { thickness: t, height: h, reach: l, youngsModulus: e } = checked(blade);
  return {
    down: (4 * l ** 3) / (e * t * h ** 3) + (1.2 * l) / (shear * e * t * h),
    dips: (3 * l ** 2) / (e * t * h ** 2),
    back: (4 * l) / (e * t * h),
  };
}

/**
 * Bending stress where the blade is clamped.
 *
 *     σ = 6 F L / (t h²)
 *
 * @param blade  the blade
 * @param force  cutting force at the edge [N]
 * @returns stress [MPa]
 * @throws DomainError when a size is not above 0
 * @source roark-8.1 case 1a
 * @valid as {@link bladeGive}
 * @example bladeStress({ thickness: 2, height: 12, reach: 20, youngsModulus: 210000 }, 500) → 208.3
 */
export function bladeStress(blade: Blade, force: Newton): MPa {
  const { thickness, height, reach } = checked(blade);
  return (6 * force * reach) / (thickness * height ** 2);
}

function checked(blade: Blade): Blade {
  const { thickness, height, reach, youngsModulus } = blade;
  for (const [name, value] of Object.entries({ thickness, height, reach, youngsModulus })) {
    if (!(value > 0)) throw new DomainError(name, value, 'more than 0');
  }
  return blade;
}
