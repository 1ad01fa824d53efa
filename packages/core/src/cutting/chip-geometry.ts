/**
 * How broad and how thick the chip is, and which way the edge faces, when a rounded nose does part or all of the cutting.
 *
 * Knowledge: the engaged edge runs from the feed mark behind the nose, round the nose, and up the straight edge. Below the
 * nose radius only the arc cuts, and then it faces the axis more than the feed: that is what bends slender work.
 */
import { DomainError } from '../errors.ts';
import { degrees, type Mm, type MmPerRev, type Radian } from '../units/quantities.ts';

/** A turning cut. */
export interface Cut {
  /** Square to the surface turned, on the radius. */
  readonly depth: Mm;
  readonly feed: MmPerRev;
  /** 0 for a corner ground sharp. */
  readonly noseRadius: Mm;
  /** Between the edge and the direction of feed; 90° turns up to a square shoulder. */
  readonly approachAngle: Radian;
}

export interface ChipGeometry {
  /** Length of edge engaged. */
  readonly chipWidth: Mm;
  /** Mean over the engaged edge. */
  readonly chipThickness: Mm;
  readonly thickestChip: Mm;
  /** Direction of the chord of the engaged edge against the feed. */
  readonly effectiveApproach: Radian;
}

const steepest: Radian = (135 * Math.PI) / 180;
const flattest: Radian = (10 * Math.PI) / 180;

/**
 * Refuses a cut outside what the chip formulas cover.
 *
 * @param cut  the cut
 * @returns the same cut
 * @throws DomainError naming the first value out of range
 * @source geometry
 * @valid depth to 20 mm, feed to 2 mm/rev, nose radius to 16 mm, approach angle 10° to 135°
 * @example checkCut({ depth: 1, feed: 0.1, noseRadius: 0.4, approachAngle: 1.5 }).depth → 1
 */
export function checkCut(cut: Cut): Cut {
  const { depth, feed, noseRadius, approachAngle } = cut;
  if (!(depth > 0 && depth <= 20)) throw new DomainError('depth', depth, 'more than 0 to 20 mm');
  if (!(feed > 0 && feed <= 2)) throw new DomainError('feed', feed, 'more than 0 to 2 mm/rev');
  if (!(noseRadius >= 0 && noseRadius <= 16)) throw new DomainError('noseRadius', noseRadius, '0 to 16 mm');
  if (!(approachAngle >= flattest && approachAngle <= steepest)) {
    throw new DomainError('approachAngle', degrees(approachAngle), '10 to 135 degrees');
  }
  return cut;
}

/**
 * Angle against the feed at which a rounded nose meets the uncut surface.
 *
 *     cos κ = 1 − a / r
 *
 * @param depth  depth of cut a, on the radius [mm]
 * @param noseRadius  r [mm]
 * @returns entering angle at the uppermost point of the arc engaged κ [rad]
 * @throws DomainError when the cut is deeper than the nose is round
 * @source SVH p. 19, round inserts
 * @valid 0 < a ≤ r
 * @example enteringAngle(0.2, 0.4) → 1.0472
 */
export function enteringAngle(depth: Mm, noseRadius: Mm): Radian {
  if (!(depth > 0 && depth <= noseRadius))
    throw new DomainError('depth', depth, `more than 0 to ${noseRadius} mm, the nose radius`);
  return Math.acos(1 - depth / noseRadius);
}

/**
 * Breadth, thickness and facing of the chip.
 *
 *     b = r (φ₀ + φ₁) + (a − r (1 − cos κ)) / sin κ,   h = a f / b,   κₑ = direction of the chord
 *
 * φ₀ is the arc up to the surface or to the straight edge, φ₁ = asin(f / 2r) the arc behind the nose down to the last
 * feed mark. Without a nose radius it is the plain b = a / sin κ, h = f sin κ.
 *
 * @param cut  the cut
 * @returns breadth and thickness of the chip [mm], and the effective approach angle [rad]
 * @throws DomainError when the cut lies outside what {@link checkCut} allows
 * @source colwell-1954 chord of the engaged edge
 * @source SVT b and h without nose radius
 * @valid as {@link checkCut}; feeds up to about the nose radius
 * @example chipGeometry({ depth: 0.1, feed: 0.05, noseRadius: 0.4, approachAngle: 1.57 }).effectiveApproach → 0.330
 */
export function chipGeometry(cut: Cut): ChipGeometry {
  const { depth: a, feed: f, noseRadius: r, approachAngle: kappa } = checkCut(cut);
  const arcDepth = r * (1 - Math.cos(kappa));
  const straight = Math.max(0, a - arcDepth) / Math.sin(kappa);
  const top = a < arcDepth ? enteringAngleAt(a, r) : kappa;
  const behind = r > 0 ? Math.min(Math.asin(Math.min(1, f / (2 * r))), top) : 0;
  const chipWidth = r * (top + behind) + straight;
  const along = r * (Math.sin(top) + Math.sin(behind)) + straight * Math.cos(kappa);
  const across = a - r * (1 - Math.cos(behind));
  return {
    chipWidth,
    chipThickness: (a * f) / chipWidth,
    thickestChip: f * Math.sin(r > 0 ? Math.min(top, Math.PI / 2) : top),
    effectiveApproach: Math.atan2(Math.max(0, across), along),
  };
}

/** Like {@link enteringAngle}, past the quarter circle when the edge leans back over 90°. */
function enteringAngleAt(depth: Mm, noseRadius: Mm): Radian {
  return Math.acos(Math.max(-1, 1 - depth / noseRadius));
}
