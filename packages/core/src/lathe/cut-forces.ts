/**
 * Forces and chip of a cut in a setup, before anything gives way.
 */
import { groovingForce } from '../cutting/grooving.ts';
import { type CutData, chipCompression, inPlaneRatio, rakeCorrection, turningForce } from '../cutting/turning-force.ts';
import { type Mm, type MmPerRev, type Newton, type Radian, radians } from '../units/quantities.ts';
import type { Setup } from './chain.ts';

/** Forces and chip of a cut, before anything gives way. */
export interface CutForces {
  readonly cutting: Newton;
  /** Square to the surface cut. */
  readonly square: Newton;
  readonly feed: Newton;
  readonly chipWidth: Mm;
  readonly chipThickness: Mm;
  readonly effectiveApproach: Radian;
  /** By how much the in-plane force grows for each mm of breadth and of thickness [MPa]. */
  readonly chipStiffness: number;
}

export interface CutMaterial {
  readonly cutData: CutData;
  /** Hardens where it is rubbed. */
  readonly hardens: boolean;
}

/** Forces of a cut in this setup; depth is the width of the edge when grooving or parting. */
export function cutForces(setup: Setup, material: CutMaterial, depth: Mm, feed: MmPerRev): CutForces {
  const { cutter, operation } = setup;
  const { cutData } = material;
  const rake = radians(cutter.rake);
  const slope = (thickness: Mm, squeeze: number) =>
    (1 - cutData.exponent) *
    cutData.specificForce *
    thickness ** -cutData.exponent *
    squeeze *
    rakeCorrection(rake, cutData.rakeReference ?? 0) *
    inPlaneRatio(rake);
  if (operation === 'grooving' || operation === 'parting') {
    const made = groovingForce({ width: depth, feed, rake, edge: cutter.edge, cutData });
    return {
      cutting: made.cutting,
      square: made.radial,
      feed: 0,
      chipWidth: depth,
      chipThickness: feed,
      effectiveApproach: 0,
      chipStiffness: slope(feed, chipCompression.groove),
    };
  }
  const where = operation === 'boring' ? 'bore' : 'outside';
  const { noseRadius } = cutter;
  const approachAngle = radians(cutter.approachAngle);
  const made = turningForce({ depth, feed, noseRadius, approachAngle, rake, edge: cutter.edge, cutData, where });
  return {
    cutting: made.cutting,
    square: made.radial,
    feed: made.feed,
    chipWidth: made.chipWidth,
    chipThickness: made.chipThickness,
    effectiveApproach: Math.min(made.effectiveApproach, Math.PI / 2),
    chipStiffness: slope(made.chipThickness, chipCompression[where]),
  };
}
