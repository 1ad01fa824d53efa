/**
 * Grooving and parting: the whole width of the edge cuts at once, on a blade that stands far out.
 */
import { DomainError } from '../errors.ts';
import type { Mm, MmPerRev, Newton, Radian } from '../units/quantities.ts';
import { type EdgeCondition, edgeForce } from './edge.ts';
import { type CutData, chipCompression, inPlaneRatio, kienzleForce, rakeCorrection } from './turning-force.ts';

/** A plunge straight at the axis. */
export interface Plunge {
  /** Of the edge. */
  readonly width: Mm;
  readonly feed: MmPerRev;
  readonly rake: Radian;
  readonly edge: EdgeCondition;
  readonly cutData: CutData;
  /** 1 for a fresh edge. */
  readonly wearFactor?: number | undefined;
}

/**
 * Forces of a plunge cut: all of the in-plane force pushes the work away.
 *
 *     Fc = w f^(1−mc) kc1.1 · 1.3 K_rake K_wear + t w,   Fp = tan(β − γ) · (Fc − t w) + p w
 *
 * @param plunge  the plunge
 * @returns cutting force, and radial force away from the edge [N]
 * @throws DomainError when a value is out of range
 * @source WKZ Kienzle formula
 * @source KOE chip compression 1.3 in grooves, from memory
 * @source merchant-1945 in-plane force
 * @valid 0 < w ≤ 20 mm, f ≤ 0.5 mm/rev, straight edge square to the feed; ±40 %
 * @example groovingForce({ width: 2, feed: 0.05, rake: 0, edge: 'sharp', cutData: { specificForce: 2150, exponent: 0.2 } }).cutting → 523
 */
export function groovingForce(plunge: Plunge): { readonly cutting: Newton; readonly radial: Newton } {
  const { width, feed, rake, cutData } = plunge;
  if (!(width > 0 && width <= 20)) throw new DomainError('width', width, 'more than 0 to 20 mm');
  if (!(feed > 0 && feed <= 0.5)) throw new DomainError('feed', feed, 'more than 0 to 0.5 mm/rev');
  const wear = plunge.wearFactor ?? 1;
  if (!(wear >= 1 && wear <= 2)) throw new DomainError('wearFactor', wear, '1 (fresh) to 2 (very dull)');
  const onChip =
    kienzleForce(width, feed, cutData) *
    rakeCorrection(rake, cutData.rakeReference ?? 0) *
    wear *
    chipCompression.groove;
  const edge = edgeForce(cutData.specificForce, plunge.edge);
  return { cutting: onChip + edge.drag * width, radial: onChip * inPlaneRatio(rake) + edge.push * width };
}

/**
 * Deepest groove or largest radius parted with an edge of a width.
 *
 *     depth ≤ 8 w
 *
 * @param width  of the edge w [mm]
 * @returns greatest depth from the surface [mm]
 * @throws DomainError when the width is not above 0
 * @source ING parting depth up to 8 × insert width in steel
 * @valid steel, an industrial lathe; stay well below on a light one
 * @example deepestPlunge(3) → 24
 */
export function deepestPlunge(width: Mm): Mm {
  if (!(width > 0)) throw new DomainError('width', width, 'more than 0 mm');
  return 8 * width;
}
