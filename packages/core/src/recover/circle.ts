/** Circles through measured points: the algebraic fits and the geometric one. */
import { DomainError } from '../errors.ts';
import type { Mm } from '../units/quantities.ts';

export interface Point {
  readonly x: Mm;
  readonly y: Mm;
}

export interface Circle {
  readonly x: Mm;
  readonly y: Mm;
  readonly radius: Mm;
}

interface Moments {
  readonly n: number;
  readonly meanX: number;
  readonly meanY: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
  readonly xz: number;
  readonly yz: number;
  readonly zz: number;
}

/** Moments about the centre of the points; z is the square of the distance from it. */
function moments(points: readonly Point[]): Moments {
  const n = points.length;
  if (n < 3) throw new DomainError('points', n, 'at least three points');
  const meanX = points.reduce((s, p) => s + p.x, 0) / n;
  const meanY = points.reduce((s, p) => s + p.y, 0) / n;
  let [xx, yy, xy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const p of points) {
    const [x, y] = [p.x - meanX, p.y - meanY];
    const z = x * x + y * y;
    xx += (x * x) / n;
    yy += (y * y) / n;
    xy += (x * y) / n;
    xz += (x * z) / n;
    yz += (y * z) / n;
    zz += (z * z) / n;
  }
  if (!(xx * yy - xy * xy > 1e-14 * (xx + yy) ** 2))
    throw new DomainError('points', 'in one line', 'points that do not lie in one line');
  return { n, meanX, meanY, xx, yy, xy, xz, yz, zz };
}

export type AlgebraicFit = 'Kåsa' | 'Pratt' | 'Taubin';

/**
 * Circle by one of the algebraic fits: quick, and the start of the geometric one.
 *
 *     Kåsa: least squares of x² + y² = 2ax + 2by + c;  Pratt, Taubin: smallest η ≥ 0 of det(M − ηB) = 0, by Newton from 0
 *
 * @param points  coordinates, at least three not in one line [mm]
 * @param fit  which
 * @returns centre and radius [mm]
 * @throws DomainError when there are fewer than three points or all lie in one line
 * @source metrology-methods §5
 * @valid Kåsa is biased small on a short arc; Pratt and Taubin hardly
 * @example algebraicCircle([{ x: 7, y: 4.5 }, { x: 2, y: 9.5 }, { x: -3, y: 4.5 }], 'Taubin').radius → 5
 */
export function algebraicCircle(points: readonly Point[], fit: AlgebraicFit): Circle {
  const m = moments(points);
  const z = m.xx + m.yy;
  const cov = m.xx * m.yy - m.xy * m.xy;
  const eta = fit === 'Kåsa' ? 0 : smallestRoot(m, z, cov, fit);
  const determinant = eta * eta - eta * z + cov;
  const x = (m.xz * (m.yy - eta) - m.yz * m.xy) / determinant / 2;
  const y = (m.yz * (m.xx - eta) - m.xz * m.xy) / determinant / 2;
  const extra = fit === 'Pratt' ? 2 * eta : 0;
  return { x: x + m.meanX, y: y + m.meanY, radius: Math.sqrt(x * x + y * y + z + extra) };
}

function smallestRoot(m: Moments, z: number, cov: number, fit: 'Pratt' | 'Taubin'): number {
  const a1 = m.zz * z + 4 * cov * z - m.xz ** 2 - m.yz ** 2 - z ** 3;
  const a0 = m.xz ** 2 * m.yy + m.yz ** 2 * m.xx - m.zz * cov - 2 * m.xz * m.yz * m.xy + z * z * cov;
  const [a2, a3, a4] = fit === 'Taubin' ? [-3 * z * z - m.zz, 4 * z, 0] : [4 * cov - 3 * z * z - m.zz, 0, 4];
  let eta = 0;
  for (let i = 0; i < 99; i++) {
    const value = a0 + eta * (a1 + eta * (a2 + eta * (a3 + eta * a4)));
    const slope = a1 + eta * (2 * a2 + eta * (3 * a3 + 4 * a4 * eta));
    const next = eta - value / slope;
    if (!Number.isFinite(next) || next < 0 || Math.abs(next - eta) < 1e-15 * z) break;
    eta = next;
  }
  return eta;
}

/**
 * Circle whose distances from the points are least in the squares.
 *
 *     Σ (√((x−a)² + (y−b)²) − R)² least, by Gauss–Newton with damping from the Taubin circle
 *
 * @param points  coordinates, at least three not in one line [mm]
 * @returns centre and radius, and the standard deviation of a point from it (n − 3 degrees of freedom) [mm]
 * @throws DomainError when there are fewer than three points or all lie in one line
 * @source GGS94
 * @valid arcs of any length; on a short one the radius is uncertain, u(R) ≈ σ √(720/n)/θ²
 * @example geometricCircle([{ x: 7, y: 4.5 }, { x: 2, y: 9.5 }, { x: -3, y: 4.5 }]).radius → 5
 */
export function geometricCircle(points: readonly Point[]): Circle & { readonly deviation: Mm } {
  let circle = algebraicCircle(points, 'Taubin');
  let damping = 1e-3;
  let sum = squares(points, circle);
  for (let i = 0; i < 300; i++) {
    const next = step(points, circle, damping);
    const trial = squares(points, next);
    if (trial <= sum) {
      const moved = Math.hypot(next.x - circle.x, next.y - circle.y, next.radius - circle.radius);
      [circle, sum, damping] = [next, trial, damping / 5];
      if (moved < 1e-13 * circle.radius) break;
    } else {
      damping *= 5;
      if (damping > 1e12) break;
    }
  }
  return { ...circle, deviation: Math.sqrt(sum / Math.max(1, points.length - 3)) };
}

const squares = (points: readonly Point[], c: Circle) =>
  points.reduce((s, p) => s + (Math.hypot(p.x - c.x, p.y - c.y) - c.radius) ** 2, 0);

function step(points: readonly Point[], c: Circle, damping: number): Circle {
  let [uu, vv, uv, u, v, ud, vd, d] = [0, 0, 0, 0, 0, 0, 0, 0];
  for (const p of points) {
    const r = Math.hypot(p.x - c.x, p.y - c.y) || 1e-300;
    const [cx, cy, off] = [(p.x - c.x) / r, (p.y - c.y) / r, r - c.radius];
    uu += cx * cx;
    vv += cy * cy;
    uv += cx * cy;
    u += cx;
    v += cy;
    ud += cx * off;
    vd += cy * off;
    d += off;
  }
  const k = 1 + damping;
  const solved = solve3(
    [
      [uu * k, uv, u],
      [uv, vv * k, v],
      [u, v, points.length * k],
    ],
    [ud, vd, d],
  );
  return { x: c.x + solved[0], y: c.y + solved[1], radius: c.radius + solved[2] };
}

type Row = readonly [number, number, number];

/** Three equations by Cramer's rule. */
export function solve3(a: readonly [Row, Row, Row], b: Row): Row {
  const det = (p: Row, q: Row, r: Row) =>
    p[0] * (q[1] * r[2] - q[2] * r[1]) - p[1] * (q[0] * r[2] - q[2] * r[0]) + p[2] * (q[0] * r[1] - q[1] * r[0]);
  const whole = det(...a) || 1e-300;
  const put = (row: Row, column: number, value: number): Row => [
    column === 0 ? value : row[0],
    column === 1 ? value : row[1],
    column === 2 ? value : row[2],
  ];
  const one = (column: number) =>
    det(put(a[0], column, b[0]), put(a[1], column, b[1]), put(a[2], column, b[2])) / whole;
  return [one(0), one(1), one(2)];
}
