/**
 * What a turning cut pushes with: along the cut, along the feed, and away from the axis.
 *
 * Knowledge: Kienzle for the chip, with the engaged edge of a rounded nose; the in-plane force from the friction angle,
 * square to the effective edge; and the force of the edge's own rounding for each millimetre engaged.
 */
import { DomainError } from '../errors.ts';
import { degrees, type Mm, type MPa, type Newton, type Radian } from '../units/quantities.ts';
import { type ChipGeometry, type Cut, chipGeometry } from './chip-geometry.ts';
import { type EdgeCondition, edgeForce } from './edge.ts';

/** What a material asks of the cutter. */
export interface CutData {
  /** kc1.1: force on a chip 1 mm thick and 1 mm broad. */
  readonly specificForce: MPa;
  /** mc: how fast the specific force rises as the chip gets thinner. */
  readonly exponent: number;
  /** Rake the specific force holds for; 0 when left out. */
  readonly rakeReference?: Radian | undefined;
}

/** A cut with its cutter and material. */
export interface TurningCut extends Cut {
  readonly rake: Radian;
  readonly edge: EdgeCondition;
  readonly cutData: CutData;
  /** 1 for a fresh edge; see {@link wearFactors}. */
  readonly wearFactor?: number | undefined;
  /** A chip in a bore is squeezed more than one outside; outside when left out. */
  readonly where?: 'outside' | 'bore' | undefined;
}

export interface TurningForce extends ChipGeometry {
  /** Along the cut: makes the torque. */
  readonly cutting: Newton;
  /** Along the feed. */
  readonly feed: Newton;
  /** Square to the surface turned: bends the work. In facing it acts along the spindle. */
  readonly radial: Newton;
}

/** Share by which a worn edge cuts harder [MH31 tool wear factor W, from memory]. */
export const wearFactors = { fresh: 1, finishing: 1.1, roughing: 1.3, dull: 1.6 } as const;

/** How much more force the chip needs where it is squeezed [KOE chip compression, from memory]. */
export const chipCompression = { outside: 1, bore: 1.2, groove: 1.3 } as const;

/** Thinnest chip for which printed tables of specific force were at hand; below it Kienzle is carried on [mm]. */
export const thinnestTabulated: Mm = 0.05;

/** In-plane over cutting force at an approach near 90° and a rake of 6°: midway in 0.3 to 0.5 [KOE, from memory]. */
const usualRatio = { inPlane: 0.4, rake: (6 * Math.PI) / 180 } as const;

/**
 * Cutting force on a plain chip.
 *
 *     Fc = b · h^(1 − mc) · kc1.1
 *
 * @param width  chip breadth b [mm]
 * @param thickness  chip thickness h [mm]
 * @param cutData  specific force and exponent of the material
 * @returns cutting force, sharp tool at the rake the data hold for [N]
 * @throws DomainError when a value is out of range
 * @source WKZ Kienzle formula
 * @valid 0 < h ≤ 2.5 mm, 100 ≤ kc1.1 ≤ 6000 MPa, 0 ≤ mc < 0.6; printed tables reach down to h = 0.05 mm
 * @example kienzleForce(1, 0.1, { specificForce: 2500, exponent: 0.26 }) → 454.9
 */
export function kienzleForce(width: Mm, thickness: Mm, cutData: CutData): Newton {
  const { specificForce, exponent } = cutData;
  if (!(width > 0)) throw new DomainError('chipWidth', width, 'more than 0 mm');
  if (!(thickness > 0 && thickness <= 2.5)) throw new DomainError('chipThickness', thickness, 'more than 0 to 2.5 mm');
  if (!(specificForce >= 100 && specificForce <= 6000))
    throw new DomainError('specificForce', specificForce, '100 to 6000 MPa');
  if (!(exponent >= 0 && exponent < 0.6)) throw new DomainError('exponent', exponent, '0 to less than 0.6');
  return width * thickness ** (1 - exponent) * specificForce;
}

/**
 * Correction of the cutting force for rake: one part in a hundred less for each degree more.
 *
 *     K = 1 − (γ − γ_ref) / 100°
 *
 * @param rake  γ [rad]
 * @param reference  rake the specific force holds for γ_ref [rad]
 * @returns factor on the cutting force [-]
 * @throws DomainError when the rake is out of range
 * @source SVF 1 % a degree
 * @source KOE gives 1.5 % a degree, disputed
 * @valid −15° ≤ γ ≤ 30°
 * @example rakeCorrection(0.2, 0) → 0.8854
 */
export function rakeCorrection(rake: Radian, reference: Radian): number {
  if (!(degrees(rake) >= -15.001 && degrees(rake) <= 30.001))
    throw new DomainError('rake', degrees(rake), '-15 to 30 degrees');
  return 1 - degrees(rake - reference) / 100;
}

/**
 * Friction angle between chip and rake face, from two forces measured.
 *
 *     β = atan(Fn / Fc) + γ
 *
 * @param cutting  force along the cut Fc [N]
 * @param inPlane  force square to the edge, off the work Fn [N]
 * @param rake  γ [rad]
 * @returns friction angle [rad]
 * @throws DomainError when the cutting force is not above 0
 * @source merchant-1945 circle of forces
 * @valid orthogonal cutting, sharp edge
 * @example frictionAngle(125, 50, 0.17453) → 0.5550
 */
export function frictionAngle(cutting: Newton, inPlane: Newton, rake: Radian): Radian {
  if (!(cutting > 0)) throw new DomainError('cutting', cutting, 'more than 0 N');
  return Math.atan(inPlane / cutting) + rake;
}

const usualFriction = frictionAngle(1, usualRatio.inPlane, usualRatio.rake);

/**
 * Force square to the edge in the plane of depth and feed, over the cutting force.
 *
 *     Fn / Fc = tan(β − γ),  β set so that the ratio is 0.4 at γ = 6°
 *
 * @param rake  γ [rad]
 * @returns ratio [-]
 * @throws DomainError when the rake is out of range
 * @source merchant-1945 circle of forces
 * @source KOE 0.3 to 0.5 near 90°, from memory
 * @valid −15° ≤ γ ≤ 25°
 * @example inPlaneRatio(0) → 0.5273
 */
export function inPlaneRatio(rake: Radian): number {
  if (!(degrees(rake) >= -15.001 && degrees(rake) <= 25.001))
    throw new DomainError('rake', degrees(rake), '-15 to 25 degrees');
  return Math.tan(usualFriction - rake);
}

/**
 * The three forces of a turning cut.
 *
 *     Fc = b h^(1−mc) kc1.1 K_rake K_wear K_squeeze + t b
 *     Fn = tan(β − γ) · (Fc − t b) + p b,   Ff = Fn sin κₑ,   Fp = Fn cos κₑ
 *
 * The published specific forces hold for usual carbide edges and so carry a little of the edge's own force already; the
 * edge terms t and p count that twice, by some 6 % of Fc for a honed edge at h = 0.1 mm, well inside the spread of ±25 to
 * 40 % between publishers.
 *
 * @param cut  the cut, its cutter and material
 * @returns cutting, feed and radial force [N], with the chip they belong to
 * @throws DomainError when a value is out of range
 * @source WKZ Kienzle formula
 * @source colwell-1954 effective approach angle
 * @source merchant-1945 in-plane force
 * @source budak-1996 edge force, from memory
 * @valid as {@link checkCut} and {@link inPlaneRatio}; one edge, continuous cut, no built-up edge; ±40 %, the radial force within a factor of two below h = 0.02 mm
 * @example turningForce({ depth: 0.2, feed: 0.05, noseRadius: 0.4, approachAngle: 1.6232, rake: 0, edge: 'sharp', cutData: { specificForce: 2150, exponent: 0.2 } }).radial → 26.8
 */
export function turningForce(cut: TurningCut): TurningForce {
  const chip = chipGeometry(cut);
  const { cutData, rake } = cut;
  const factor =
    rakeCorrection(rake, cutData.rakeReference ?? 0) *
    wear(cut.wearFactor ?? 1) *
    chipCompression[cut.where ?? 'outside'];
  const onChip = kienzleForce(chip.chipWidth, chip.chipThickness, cutData) * factor;
  const edge = edgeForce(cutData.specificForce, cut.edge);
  const inPlane = onChip * inPlaneRatio(rake) + edge.push * chip.chipWidth;
  return {
    ...chip,
    cutting: onChip + edge.drag * chip.chipWidth,
    feed: inPlane * Math.sin(chip.effectiveApproach),
    radial: inPlane * Math.cos(chip.effectiveApproach),
  };
}

function wear(factor: number): number {
  if (!(factor >= 1 && factor <= 2)) throw new DomainError('wearFactor', factor, '1 (fresh) to 2 (very dull)');
  return factor;
}
