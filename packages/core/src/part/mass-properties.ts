/**
 * Volume, surface, centre of mass and moments of inertia of the turned body, from its outline alone.
 *
 * Knowledge: Pappus and Guldin for surface and volume; Green's theorem turns every integral over the half-section into one along
 * its outline.
 */
import type { Mm, Mm2, Mm3 } from '../units/quantities.ts';
import type { Arc, Segment } from './outline-types.ts';
import { lengthOf, pointAt, startAngle } from './segment.ts';

/** Integrals over a body of density 1. */
export interface BodyIntegrals {
  readonly volume: Mm3;
  /** Whole surface. */
  readonly area: Mm2;
  /** ∫ z dV [mm⁴] */
  readonly firstMoment: number;
  /** ∫ r² dV about the axis [mm⁵] */
  readonly polar: number;
  /** ∫ (z² + x²) dV about a diameter at z = 0 [mm⁵] */
  readonly across: number;
}

/**
 * The integrals of the body that a closed outline turns out. The outline runs along +z on its outer side.
 *
 *     V = π ∮ r² dz,  A = 2π ∮ r ds,  ∫z dV = π ∮ z r² dz
 *     ∫r² dV = π/2 ∮ r⁴ dz,  ∫(z² + x²) dV = π ∮ z² r² dz + π/4 ∮ r⁴ dz
 */
export function bodyIntegrals(loop: readonly Segment[]): BodyIntegrals {
  let [volume, area, firstMoment, polar, across] = [0, 0, 0, 0, 0];
  for (const segment of loop) {
    const s = alongSegment(segment);
    volume += Math.PI * s.r2;
    area += 2 * Math.PI * s.rds;
    firstMoment += Math.PI * s.zr2;
    polar += (Math.PI / 2) * s.r4;
    across += Math.PI * s.z2r2 + (Math.PI / 4) * s.r4;
  }
  return { volume, area, firstMoment, polar, across };
}

/** ∫ r² dz, ∫ z r² dz, ∫ z² r² dz, ∫ r⁴ dz and ∫ r ds along one segment. */
interface Along {
  readonly r2: number;
  readonly zr2: number;
  readonly z2r2: number;
  readonly r4: number;
  readonly rds: number;
}

/** Arcs that turn less than this are so flat that the closed form loses digits, while the quadrature is exact to rounding. */
const flat = 0.3;

function alongSegment(segment: Segment): Along {
  if (segment.kind === 'arc') return Math.abs(segment.sweep) < flat ? flatArc(segment) : roundArc(segment);
  // Polynomials of degree 4: exact with three points.
  return quadrature(segment, gauss3, () => segment.to.z - segment.from.z);
}

function flatArc(arc: Arc): Along {
  const start = startAngle(arc);
  return quadrature(arc, gauss8, (t) => -arc.radius * Math.sin(start + arc.sweep * t) * arc.sweep);
}

function quadrature(segment: Segment, rule: readonly (readonly [number, number])[], dz: (t: number) => number): Along {
  const length = lengthOf(segment);
  let [r2, zr2, z2r2, r4, rds] = [0, 0, 0, 0, 0];
  for (const [t, weight] of rule) {
    const { z, r } = pointAt(segment, t);
    const w = weight * dz(t);
    r2 += w * r * r;
    zr2 += w * z * r * r;
    z2r2 += w * z * z * r * r;
    r4 += w * r ** 4;
    rds += weight * r * length;
  }
  return { r2, zr2, z2r2, r4, rds };
}

/** With z = c + ρ cos θ, r = b + ρ sin θ, dz = −ρ sin θ dθ, every integral is a sum of ∫ cosᵖθ sin^qθ dθ. */
function roundArc(arc: Arc): Along {
  const { radius: rho, centre } = arc;
  const from = startAngle(arc);
  const to = from + arc.sweep;
  const power = (p: number, q: number) => cosSin(p, q, to) - cosSin(p, q, from);
  /** ∫ zᵐ rⁿ dz */
  const moment = (m: number, n: number) => {
    let sum = 0;
    for (let i = 0; i <= m; i++) {
      for (let j = 0; j <= n; j++) {
        const factor = binomial(m, i) * centre.z ** (m - i) * binomial(n, j) * centre.r ** (n - j) * rho ** (i + j);
        sum -= factor * rho * power(i, j + 1);
      }
    }
    return sum;
  };
  const rds = rho * Math.sign(arc.sweep) * (centre.r * power(0, 0) + rho * power(0, 1));
  return { r2: moment(0, 2), zr2: moment(1, 2), z2r2: moment(2, 2), r4: moment(0, 4), rds };
}

/** An antiderivative of cosᵖθ sin^qθ. */
function cosSin(p: number, q: number, angle: number): number {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  if (q >= 2) return (-(c ** (p + 1)) * s ** (q - 1) + (q - 1) * cosSin(p, q - 2, angle)) / (p + q);
  if (q === 1) return -(c ** (p + 1)) / (p + 1);
  if (p >= 2) return (c ** (p - 1) * s + (p - 1) * cosSin(p - 2, 0, angle)) / p;
  return p === 1 ? s : angle;
}

function binomial(n: number, k: number): number {
  let b = 1;
  for (let i = 1; i <= k; i++) b = (b * (n - k + i)) / i;
  return b;
}

/** Points and weights on 0 … 1, by symmetry from one half. */
function rule(half: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  return half.flatMap(([x, w]) =>
    x === 0 ? [[0.5, w / 2] as const] : [[(1 - x) / 2, w / 2] as const, [(1 + x) / 2, w / 2] as const],
  );
}

const gauss3 = rule([
  [0, 8 / 9],
  [Math.sqrt(3 / 5), 5 / 9],
]);

/** Gauss and Legendre, eight points. */
const gauss8 = rule([
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
]);

/** About a diameter through the centre of mass, by Steiner's theorem [mm⁵]. */
export function acrossCentroid(body: BodyIntegrals): number {
  return body.across - body.firstMoment ** 2 / body.volume;
}

/** Centre of mass from the left end; 0 for a body without volume. */
export function centroidOf(body: BodyIntegrals): Mm {
  return body.volume > 0 ? body.firstMoment / body.volume : 0;
}
