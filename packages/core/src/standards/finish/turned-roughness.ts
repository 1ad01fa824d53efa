/**
 * Roughness that feed and nose radius leave on a turned face or diameter.
 * The tool copies its nose into the work once a turn; what stands between the copies is the roughness.
 */
import { DomainError } from '../../errors.ts';
import type { Micrometre, Mm, MmPerRev, Radian } from '../../units/quantities.ts';

/**
 * Peak-to-valley height left by a round nose, parabola for the arc.
 *
 *     Rt = f² / (8 r)
 *
 * @param feed  feed [mm/rev]
 * @param noseRadius  nose radius of the cutter [mm]
 * @returns Rt [µm]
 * @throws DomainError when the feed exceeds the nose radius (7 % low there; the exact arc is in arcRt)
 * @source mem-machinery
 * @valid feed ≤ nose radius; within 2 % up to half of it
 * @example parabolaRt(0.2, 0.8) → 6.25
 */
export function parabolaRt(feed: MmPerRev, noseRadius: Mm): Micrometre {
  checkFeed(feed, noseRadius, 1);
  return (1000 * feed ** 2) / (8 * noseRadius);
}

/**
 * Peak-to-valley height left by a round nose, exact arc.
 *
 *     Rt = r − √(r² − f²/4)
 *
 * @param feed  feed [mm/rev]
 * @param noseRadius  nose radius of the cutter [mm]
 * @returns Rt [µm]
 * @throws DomainError when the feed reaches twice the nose radius: the arcs no longer meet
 * @source surface-derived
 * @valid feed < 2 r, and only while the straight edges stay clear of the work
 * @example arcRt(0.1, 0.1) → 13.397
 */
export function arcRt(feed: MmPerRev, noseRadius: Mm): Micrometre {
  checkFeed(feed, noseRadius, 2);
  const half = feed / 2;
  // Written so that no digits are lost when the feed is small: r − √(r²−a²) = a²/(r + √(r²−a²)).
  return (1000 * half ** 2) / (noseRadius + Math.sqrt(noseRadius ** 2 - half ** 2));
}

/**
 * Ra left by a round nose, parabola for the arc.
 *
 *     Ra = 4/(9√3) · f²/(8 r) = f² / (31.2 r)
 *
 * @param feed  feed [mm/rev]
 * @param noseRadius  nose radius of the cutter [mm]
 * @returns Ra [µm]
 * @throws DomainError when the feed exceeds the nose radius
 * @source surface-derived
 * @valid feed ≤ nose radius
 * @example parabolaRa(0.2, 0.8) → 1.604
 */
export function parabolaRa(feed: MmPerRev, noseRadius: Mm): Micrometre {
  return (4 / (9 * Math.sqrt(3))) * parabolaRt(feed, noseRadius);
}

/**
 * Ra left by a round nose, exact arc: mean distance from the mean line.
 *
 *     Ra = (4/f) ∫₀^x₀ (m − z) dx,  z = r − √(r² − x²),  m the mean height, z(x₀) = m
 *
 * @param feed  feed [mm/rev]
 * @param noseRadius  nose radius of the cutter [mm]
 * @returns Ra [µm]
 * @throws DomainError when the feed reaches twice the nose radius
 * @source surface-derived
 * @valid feed < 2 r
 * @example arcRa(0.2, 0.2) → 6.772
 */
export function arcRa(feed: MmPerRev, noseRadius: Mm): Micrometre {
  checkFeed(feed, noseRadius, 2);
  const r = noseRadius;
  const underArc = (x: number) => (x * Math.sqrt(r ** 2 - x ** 2) + r ** 2 * Math.asin(x / r)) / 2;
  const half = feed / 2;
  const meanChord = underArc(half) / half;
  const crossing = Math.sqrt(r ** 2 - meanChord ** 2);
  return (4000 / feed) * (underArc(crossing) - meanChord * crossing);
}

/**
 * Peak-to-valley height left by a pointed tool without a radius.
 *
 *     Rt = f / (cot κ + cot κ′)
 *
 * @param feed  feed [mm/rev]
 * @param lead  angle between the cutting edge and the axis [rad]
 * @param end  angle between the trailing edge and the axis [rad]
 * @returns Rt [µm]
 * @throws DomainError for angles that are not between 0 and 90°
 * @source mem-machinery
 * @valid nose radius much smaller than the feed
 * @example pointedRt(0.1, Math.PI / 4, Math.PI / 4) → 50
 */
export function pointedRt(feed: MmPerRev, lead: Radian, end: Radian): Micrometre {
  if (!(feed > 0)) throw new DomainError('feed', feed, 'more than 0 mm/rev');
  for (const [name, angle] of [
    ['lead', lead],
    ['end', end],
  ] as const) {
    if (!(angle > 0 && angle <= Math.PI / 2)) throw new DomainError(name, angle, 'over 0 to π/2 rad (90°)');
  }
  return (1000 * feed) / (1 / Math.tan(lead) + 1 / Math.tan(end));
}

/**
 * Feed that leaves a wanted peak-to-valley height.
 *
 *     f = √(8 r Rt)
 *
 * @param rt  wanted Rt [µm]
 * @param noseRadius  nose radius of the cutter [mm]
 * @returns feed [mm/rev]
 * @throws DomainError when the answer would exceed the nose radius
 * @source mem-machinery
 * @valid answer ≤ nose radius
 * @example feedForRt(8, 0.8) → 0.226
 */
export function feedForRt(rt: Micrometre, noseRadius: Mm): MmPerRev {
  if (!(noseRadius > 0)) throw new DomainError('noseRadius', noseRadius, 'more than 0 mm');
  const most = (1000 * noseRadius) / 8;
  if (!(rt > 0 && rt <= most))
    throw new DomainError('rt', rt, `over 0 to ${most} µm with a nose radius of ${noseRadius} mm`);
  return Math.sqrt((8 * noseRadius * rt) / 1000);
}

/**
 * Peak-to-valley height with the metal that slides under the edge because the chip there is too thin to form.
 *
 *     Rt = f²/(8 r) + (h/2)(1 + r h / f²)
 *
 * @param feed  feed [mm/rev]
 * @param noseRadius  nose radius of the cutter [mm]
 * @param leastChip  thinnest chip that still forms [mm]
 * @returns Rt [µm]; it rises again as the feed falls
 * @throws DomainError when the feed exceeds the nose radius or the chip is negative
 * @source brammertz-1961
 * @valid steel turned without a built-up edge
 * @example springRt(0.05, 0.4, 0.004) → 4.061
 */
export function springRt(feed: MmPerRev, noseRadius: Mm, leastChip: Mm): Micrometre {
  if (!(leastChip >= 0)) throw new DomainError('leastChip', leastChip, '0 mm or more');
  return parabolaRt(feed, noseRadius) + 500 * leastChip * (1 + (noseRadius * leastChip) / feed ** 2);
}

export interface ExpectedRa {
  /** By geometry alone. */
  readonly theory: Micrometre;
  readonly low: Micrometre;
  readonly high: Micrometre;
  /** Finer than this, turning usually does not get. */
  readonly floor: Micrometre;
  /** The floor, not the feed, sets the finish. */
  readonly atFloor: boolean;
}

/** Turning and boring usually reach no finer [mem-b46]. */
const turningFloor: Micrometre = 0.4;

/**
 * What to expect on a light lathe with a sharp tool: 1.5 to 2 times the geometry, never finer than turning usually gets.
 *
 * @param feed  feed [mm/rev]
 * @param noseRadius  nose radius of the cutter [mm]
 * @returns theory and the range to expect, all Ra [µm]
 * @throws DomainError when the feed exceeds the nose radius
 * @source common-practice
 * @source mem-b46
 * @valid sharp tool, no built-up edge; with one (mild steel, slow) it is far worse
 * @example expectedRa(0.2, 0.8).high → 3.208
 */
export function expectedRa(feed: MmPerRev, noseRadius: Mm): ExpectedRa {
  const theory = parabolaRa(feed, noseRadius);
  const low = Math.max(1.5 * theory, turningFloor);
  const high = Math.max(2 * theory, turningFloor);
  return { theory, low, high, floor: turningFloor, atFloor: 1.5 * theory < turningFloor };
}

function checkFeed(feed: MmPerRev, noseRadius: Mm, times: 1 | 2): void {
  if (!(noseRadius > 0 && Number.isFinite(noseRadius)))
    throw new DomainError('noseRadius', noseRadius, 'more than 0 mm');
  const ok = times === 1 ? feed <= noseRadius : feed < 2 * noseRadius;
  if (!(feed > 0 && ok)) {
    throw new DomainError(
      'feed',
      feed,
      `over 0 to ${times === 1 ? '' : 'under '}${times * noseRadius} mm/rev with this nose radius`,
    );
  }
}
