/** The work as points along its outside and its holes, to be cut by numbers read off tables; and what each must come to. */
import type { Segment } from '../src/part/outline-types.ts';
import type { PartResult, PlacedThread } from '../src/part/part-result.ts';
import { fractionsAtZ, isVertical, pointAt } from '../src/part/segment.ts';
import type { WorkOutline } from '../src/route/route-result.ts';
import { preTurnedDiameter } from '../src/standards/threads/pre-turned.ts';

export interface Spot {
  readonly z: number;
  readonly chain: 'outside' | 'inside';
  readonly feature: string;
  /** Radius on the drawing. */
  readonly is: number;
  /** Radii between which it may end. */
  readonly low: number;
  readonly high: number;
  /** Radius now. */
  at: number;
  /** How often a table or an operation has brought it between its limits. */
  made: number;
}

/** Drawn sizes are met to this; titles and notes are printed to a thousandth of a diameter. */
export const close = 1.1e-3;

/** Spots on every surface that a table or a plain operation makes; edges and fillets, which follow their section, are left out. */
export function spotsOf(part: PartResult, stock: WorkOutline): Spot[] {
  const { outside, insideLeft, insideRight } = part.outline;
  const at = (chain: 'outside' | 'inside', segments: readonly Segment[]) =>
    segments
      .filter((s) => !s.feature.includes('.') && !isVertical(s) && Math.abs(s.to.z - s.from.z) > 0.02)
      .filter((s) => !isRounding(part, s))
      .flatMap((s) =>
        shares(part, s).map((t): Spot => {
          const z = s.from.z + (s.to.z - s.from.z) * t;
          const is = heightAt([s], z);
          return {
            z,
            chain,
            feature: s.feature,
            is,
            ...limitsAt(part, s.feature, z, is),
            at: chain === 'outside' ? heightAt(stock.outside, z) : 0,
            made: 0,
          };
        }),
      );
  return [...at('outside', outside), ...at('inside', [...insideLeft, ...insideRight])];
}

/** Curves are looked at closely, for steps touch them in one point each. */
function shares(part: PartResult, s: Segment): number[] {
  const kind = part.outside.find((o) => o.feature.id === s.feature)?.feature.kind;
  // A free curve is drawn in many pieces.
  const many = kind === 'arc' || kind === 'crown' ? 40 : kind === 'curve' ? 6 : 4;
  return Array.from({ length: many + 1 }, (_, i) => 0.03 + (0.94 * i) / many);
}

/** Corners of grooves, and the point that a drill leaves. */
function isRounding(part: PartResult, s: Segment): boolean {
  const flat = Math.abs(s.to.r - s.from.r) < 1e-9;
  if (part.grooves.some((g) => g.feature.id === s.feature)) return s.kind === 'arc' || !flat;
  const hole = part.inside.find((i) => i.feature.id === s.feature)?.feature.kind;
  return (hole === 'drilled' || hole === 'bored' || hole === 'undercut') && !flat;
}

function limitsAt(part: PartResult, feature: string, z: number, is: number): { low: number; high: number } {
  const on = part.threads.find((t) => t.on === feature);
  const crest = on && crestLimits(on);
  const size = part.dimensions.find((d) => d.id === `${feature}.diameter` || d.id === `${feature}.floorDiameter`);
  const own =
    size && Math.abs(size.nominal / 2 - is) < 1e-6 ? { low: size.min / 2, high: size.max / 2 } : { low: is, high: is };
  // A drilled hole keeps the size of the drill on hand.
  if (part.inside.some((i) => i.feature.id === feature && i.feature.kind === 'drilled'))
    return { low: is - drillOff, high: is + drillOff };
  if (!crest) return own;
  if (on && z > on.from - 1e-6 && z < on.to + 1e-6) return crest;
  // Where hardly anything of the section is left beside the thread, it is turned to the crests all along.
  return { low: Math.min(own.low, crest.low), high: Math.max(own.high, crest.high) };
}

/** A drill is taken for a hole when it is no further off on the radius; `common practice`. */
const drillOff = 0.05;

/** Limits of the crests by the standard of the thread; undefined where it gives none. */
function crestLimits({ thread, side }: PlacedThread): { low: number; high: number } | undefined {
  try {
    const { limits } = preTurnedDiameter(thread, side);
    return { low: limits.min / 2, high: limits.max / 2 };
  } catch {
    return undefined;
  }
}

export function heightAt(chain: readonly Segment[], z: number): number {
  return Math.max(
    0,
    ...chain
      .filter((s) => !isVertical(s) && z >= Math.min(s.from.z, s.to.z) - 1e-9 && z <= Math.max(s.from.z, s.to.z) + 1e-9)
      .flatMap((s) => fractionsAtZ(s, z).map((t) => pointAt(s, t).r)),
  );
}

/** Between its limits, or no more than `left` of metal off them. */
export function isMade({ chain, at, low, high }: Spot, left: number): boolean {
  return chain === 'outside'
    ? at >= low - close && at <= high + left + close
    : at <= high + close && at >= low - left - close;
}

export function isCutInto({ chain, at, low, high }: Spot): boolean {
  return chain === 'outside' ? at < low - close : at > high + close;
}
