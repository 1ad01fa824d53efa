/**
 * What a drill pushes with and turns against, how to peck, and how slowly it may be fed where the work hardens.
 *
 * Three published ways stand side by side: Kienzle for each lip, a handbook's factors, and a tool maker's constant. They
 * differ by up to two in thrust; the range is given rather than one of them.
 */
import { DomainError } from '../errors.ts';
import { degrees, type Mm, type MmPerRev, type Newton, type NewtonMetre, type Radian } from '../units/quantities.ts';
import { type CutData, kienzleForce } from './turning-force.ts';

/** A drill at work. */
export interface DrillingCut {
  readonly diameter: Mm;
  readonly feed: MmPerRev;
  /** Included angle of the point, 118° as a rule. */
  readonly pointAngle: Radian;
  readonly cutData: CutData;
  /** 1.3 in normal work, 1.5 for a dull drill or a material hard to drill [MH31, from memory]; 1 when left out. */
  readonly wearFactor?: number | undefined;
}

export interface DrillingForce {
  readonly torque: NewtonMetre;
  /** Two published rules; the chisel edge is not in the lower one. */
  readonly thrust: { readonly low: Newton; readonly high: Newton };
  readonly chipThickness: Mm;
}

function checkDrill(diameter: Mm, feed: MmPerRev): void {
  if (!(diameter >= 0.5 && diameter <= 60)) throw new DomainError('diameter', diameter, '0.5 to 60 mm');
  if (!(feed > 0 && feed <= 1.25)) throw new DomainError('feed', feed, 'more than 0 to 1.25 mm/rev');
}

/**
 * Torque and thrust of a twist drill in full material, from the specific force.
 *
 *     h = (f / 2) sin(σ/2),   kc = kc1.1 h^(−mc),   M = D² f kc / 8000
 *     thrust 0.25 D f kc sin(σ/2) to 0.45 D f kc
 *
 * @param cut  the drill and material
 * @returns torque [N·m], and the range of thrust between two published rules [N]
 * @throws DomainError when a value is out of range
 * @source WKZ Kienzle formula, each lip taken as a cutter
 * @source HAI thrust 0.45 D f kc
 * @valid 0.5 ≤ D ≤ 60 mm, f ≤ 1.25 mm/rev, point 60° to 180°; no pilot hole; sharp drill when the wear factor is left out
 * @example drillingForce({ diameter: 6, feed: 0.1, pointAngle: 2.0595, cutData: { specificForce: 1780, exponent: 0.17 } }).torque → 1.368
 */
export function drillingForce(cut: DrillingCut): DrillingForce {
  const { diameter, feed, pointAngle, cutData } = cut;
  checkDrill(diameter, feed);
  if (!(degrees(pointAngle) >= 59.99 && degrees(pointAngle) <= 180.01)) {
    throw new DomainError('pointAngle', degrees(pointAngle), '60 to 180 degrees');
  }
  const wear = cut.wearFactor ?? 1;
  if (!(wear >= 1 && wear <= 2)) throw new DomainError('wearFactor', wear, '1 (fresh) to 2 (very dull)');
  const sine = Math.sin(pointAngle / 2);
  const chipThickness = (feed / 2) * sine;
  const specific = (kienzleForce(1, chipThickness, cutData) / chipThickness) * wear;
  const push = diameter * feed * specific;
  return { torque: (diameter * push) / 8000, thrust: { low: 0.25 * push * sine, high: 0.45 * push }, chipThickness };
}

/** Chisel-edge factors by chisel-edge length over diameter; a drill of standard web has about 0.18 [MH31, read]. */
export const chiselEdge = {
  thinned: { torque: 1.02, thrust: 1.235, web: 0.01 },
  standard: { torque: 1.085, thrust: 1.355, web: 0.03 },
  heavy: { torque: 1.155, thrust: 1.445, web: 0.065 },
} as const;

/**
 * Thrust of a twist drill by the handbook's factors.
 *
 *     T = 0.05 Kd f^0.8 D^0.8 B W + 0.007 Kd D² J W
 *
 * @param factor  Kd of the material for thrust: 24000 for steel of 200 HB, 35000 for austenitic 316 [-]
 * @param diameter  D [mm]
 * @param feed  f [mm/rev]
 * @param chisel  web of the drill
 * @param wearFactor  W, 1.3 in normal work [-]
 * @returns thrust [N]
 * @throws DomainError when the diameter or feed is out of range
 * @source MH31 pp. 1152-1153, with Kd and W from memory
 * @valid as the printed tables: f to 1.25 mm/rev; D to 25.5 mm printed, carried on to 60 mm
 * @example handbookThrust(24000, 8, 0.15, 'standard', 1.3) → 2865
 */
export function handbookThrust(
  factor: number,
  diameter: Mm,
  feed: MmPerRev,
  chisel: keyof typeof chiselEdge,
  wearFactor: number,
): Newton {
  checkDrill(diameter, feed);
  const { thrust, web } = chiselEdge[chisel];
  return factor * wearFactor * (0.05 * (feed * diameter) ** 0.8 * thrust + 0.007 * diameter ** 2 * web);
}

/**
 * Torque of a twist drill by the handbook's factors.
 *
 *     M = 0.000025 Kd f^0.8 D^1.8 A W
 *
 * @param factor  Kd of the material for torque: 24000 for steel of 200 HB [-]
 * @param diameter  D [mm]
 * @param feed  f [mm/rev]
 * @param chisel  web of the drill
 * @param wearFactor  W, 1.3 in normal work [-]
 * @returns torque [N·m]
 * @throws DomainError when the diameter or feed is out of range
 * @source MH31 pp. 1152-1153, with Kd and W from memory
 * @valid as {@link handbookThrust}
 * @example handbookTorque(24000, 8, 0.15, 'standard', 1.3) → 7.83
 */
export function handbookTorque(
  factor: number,
  diameter: Mm,
  feed: MmPerRev,
  chisel: keyof typeof chiselEdge,
  wearFactor: number,
): NewtonMetre {
  checkDrill(diameter, feed);
  return 0.000025 * factor * feed ** 0.8 * diameter ** 1.8 * chiselEdge[chisel].torque * wearFactor;
}

/**
 * Thrust and torque of a twist drill by a tool maker's constant.
 *
 *     T = 570 K D f^0.85,   M = K D² (0.630 + 16.84 f) / 100
 *
 * @param constant  K of the material: 1 for cast iron of 177 HB, 2.22 for low carbon steel of 160 HB [-]
 * @param diameter  D [mm]
 * @param feed  f [mm/rev]
 * @returns thrust [N] and torque [N·m]
 * @throws DomainError when the diameter or feed is out of range
 * @source TUN p. L068
 * @valid the source gives none; printed for cast iron, aluminium and steels
 * @example makerDrilling(2.22, 6, 0.1).torque → 1.849
 */
export function makerDrilling(constant: number, diameter: Mm, feed: MmPerRev): { thrust: Newton; torque: NewtonMetre } {
  checkDrill(diameter, feed);
  return {
    thrust: 570 * constant * diameter * feed ** 0.85,
    torque: (constant * diameter ** 2 * (0.63 + 16.84 * feed)) / 100,
  };
}

/**
 * Least feed at which each lip cuts under the skin the last turn hardened.
 *
 *     f_min = D / 100, at least 0.02 mm/rev
 *
 * @param diameter  D [mm]
 * @returns least feed [mm/rev]
 * @throws DomainError when the diameter is out of range
 * @source common-practice drilling austenitic stainless: 0.02 to 0.05 mm/rev, about D/100 to D/60
 * @valid materials that harden when rubbed; 0.5 ≤ D ≤ 60 mm
 * @example chipLoadFloor(5) → 0.05
 */
export function chipLoadFloor(diameter: Mm): MmPerRev {
  checkDrill(diameter, 0.1);
  return Math.max(0.02, diameter / 100);
}

/**
 * Depths to which to drill before drawing out to clear the swarf, the last being the hole's own.
 *
 * Holes up to three diameters go in one; deeper ones start with two diameters, go on by one, and by half beyond six.
 *
 * @param diameter  of the drill [mm]
 * @param depth  of the hole [mm]
 * @returns depth of each peck from the face, in order [mm]
 * @throws DomainError when a size is not above 0
 * @source KEN first peck and when to begin
 * @source common-practice steps after the first
 * @valid twist drills; the source begins pecking between 3 and 4 diameters
 * @example pecks(5, 22) → [10, 15, 20, 22]
 */
export function pecks(diameter: Mm, depth: Mm): Mm[] {
  checkDrill(diameter, 0.1);
  if (!(depth > 0)) throw new DomainError('depth', depth, 'more than 0 mm');
  if (depth <= 3 * diameter) return [depth];
  const stops: Mm[] = [];
  for (let at = 2 * diameter; at < depth - 1e-9; at += at < 6 * diameter - 1e-9 ? diameter : diameter / 2)
    stops.push(at);
  return [...stops, depth];
}

/**
 * What is left of speed and feed in a deep hole.
 *
 * @param depthRatio  depth over diameter [-]
 * @returns factors on cutting speed and feed [-]
 * @throws DomainError when the hole is deeper than 8 diameters
 * @source DEC reductions, with the depths they belong to from memory
 * @valid twist drills without coolant through them, to 8 diameters
 * @example deepHole(4).speed → 0.8
 */
export function deepHole(depthRatio: number): { readonly speed: number; readonly feed: number } {
  if (!(depthRatio >= 0 && depthRatio <= 8)) throw new DomainError('depthRatio', depthRatio, '0 to 8 diameters');
  if (depthRatio < 3) return { speed: 1, feed: 1 };
  if (depthRatio < 4) return { speed: 0.9, feed: 0.9 };
  if (depthRatio < 5) return { speed: 0.8, feed: 0.9 };
  if (depthRatio < 6) return { speed: 0.7, feed: 0.8 };
  return { speed: 0.6, feed: 0.8 };
}
