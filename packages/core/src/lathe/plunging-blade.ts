/**
 * The blade of a grooving or parting cutter as a part of the chain: how its edge gives way, how it rings, and when it digs in.
 *
 * Knowledge: a parting blade stands out of its holder over the whole overhang; a grooving cutter is ground from a shank, and only
 * as far as it cuts deep is it a blade. Sizes the workshop does not tell are those of common practice: a parting blade 12 mm high, a
 * ground one as high as its shank; relieved to 0.85 of the edge's width; ground a millimetre longer than it cuts deep.
 */
import { type Blade, type BladeGive, bladeGive } from '../cutting/blade.ts';
import { inPlaneRatio } from '../cutting/turning-force.ts';
import { type Radian, radians } from '../units/quantities.ts';
import type { CuttingTool } from './cutting-tool.ts';

const steel = { modulus: 206_000, density: 7.85e-6 } as const;
/** Of a light lathe, when the workshop does not tell; common practice. */
const usualShank = 10;
/** Parting blades for the holders of light lathes are 11 to 13 mm high; common practice [mm]. */
const usualBladeHeight = 12;
/** Thickness over the width of the edge: both sides are relieved; common practice. */
const relieved = 0.85;
/** A blade is ground so much longer than it cuts deep; common practice [mm]. */
const clear = 1;

/** Whether a cutter has a blade. */
export function hasBlade({ kind, width }: Pick<CuttingTool, 'kind' | 'width'>): boolean {
  return (kind === 'grooving' || kind === 'parting') && width !== undefined && width > 0;
}

/** The blade of a cutter; only for one that has a blade. */
export function bladeOf({ kind, width = 1, overhang, maxDepth, bladeHeight, shank = usualShank }: CuttingTool): Blade {
  return {
    thickness: relieved * width,
    height: bladeHeight ?? (kind === 'parting' ? usualBladeHeight : shank),
    reach: kind === 'parting' ? overhang : Math.min(overhang, maxDepth + clear),
    youngsModulus: steel.modulus,
  };
}

/** Give of the edge of a cutter with a blade: the blade, and behind it what is left of the shank. */
export function edgeGive(cutter: CuttingTool): BladeGive {
  const blade = bladeOf(cutter);
  const own = bladeGive(blade);
  const { shank = usualShank, overhang } = cutter;
  const rest = overhang - blade.reach;
  if (rest <= 1e-9) return own;
  // The shank is bent by the force at the edge, beyond its own end; the edge lies at half the height of the blade.
  const bending = (steel.modulus * shank ** 4) / 12;
  const lever = blade.height / 2;
  return {
    down: own.down + (overhang ** 3 - blade.reach ** 3) / (3 * bending),
    dips: own.dips + (lever * (overhang ** 2 - blade.reach ** 2)) / (2 * bending),
    back: own.back + (lever ** 2 * rest) / bending,
  };
}

/** How far the edge is moved away from the work for each newton of its push, cutting force and all; below 0 it digs in [mm/N]. */
export function edgeAway(cutter: CuttingTool): number {
  const { dips, back } = edgeGive(cutter);
  return back - dips / inPlaneRatio(radians(cutter.rake));
}

/**
 * The mode in which a blade whips: down, and with that towards the work. Stiffness along that way; `dip` is its slope from
 * away-from-the-work down.
 */
export function bladeMode(cutter: CuttingTool): {
  readonly frequency: number;
  readonly stiffness: number;
  readonly dip: Radian;
} {
  const { thickness, height, reach } = bladeOf(cutter);
  const { down, dips } = edgeGive(cutter);
  // Mass of a cantilever as it swings at its end: 33/140 of it (Rayleigh, static shape).
  const mass = (33 / 140) * steel.density * thickness * height * reach;
  const toward = dips / down;
  return {
    frequency: Math.sqrt(1000 / (down * mass)) / (2 * Math.PI),
    stiffness: 1 / (down * (1 + toward * toward)),
    dip: Math.atan2(1, -toward),
  };
}
