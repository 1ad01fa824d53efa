/**
 * Domed and hollow ends from depths at distances from the axis: sphere, ellipse or cone, whichever the readings bear out,
 * fitted by least squares in which wear counts to one side only.
 *
 * Each reading is z = f(r) + e + w, with w ≥ 0 where metal is gone. Which places are worn, and how much, is found together
 * with the curve by expectation and maximisation: a worn reading pulls the curve no farther than its share of being sound.
 */
import { DomainError } from '../errors.ts';
import { inverseMills } from '../numerics/normal.ts';
import type { Mm } from '../units/quantities.ts';
import { solve3 } from './circle.ts';
import { quickWornReading } from './worn-reading.ts';

/** Depth below the top of the curve at a distance from the axis. */
export interface DepthReading {
  readonly radius: Mm;
  readonly depth: Mm;
}

export type CrownShape = 'sphere' | 'ellipse' | 'cone';

export interface CrownFit {
  readonly shape: CrownShape;
  /** Depth of the curve on the axis. */
  readonly start: Mm;
  /** Radius of curvature on the axis; for a cone, 0. */
  readonly radius: Mm;
  readonly radiusUncertainty: Mm;
  /** 0 for a sphere; an ellipse has half axes R/(1+k) along and R/√(1+k) across. */
  readonly conic: number;
  /** Depth gained per millimetre of radius of a cone. */
  readonly slope: number;
  /** Root mean square of what is left over at places that count as sound. */
  readonly deviation: Mm;
  /** Wear at each reading, in their order. */
  readonly wear: readonly Mm[];
  /** Compared with the other shapes. */
  readonly probability: number;
}

/**
 * Depth of a conic of revolution at a distance from its axis.
 *
 *     z = c r² / (1 + √(1 − (1 + k) c² r²)),  c = 1/R
 *
 * @param radius  distance from the axis [mm]
 * @param curvature  curvature on the axis, 1/R [1/mm]
 * @param conic  k: 0 sphere, above −1 ellipse [-]
 * @returns depth [mm]; where the curve has already turned back, its steepest depth goes on
 * @source geometry
 * @valid any radius
 * @example conicDepth(20, 0.02, 0) → 4.1742
 */
export function conicDepth(radius: Mm, curvature: number, conic: number): Mm {
  const inside = Math.max(1e-6, 1 - (1 + conic) * curvature * curvature * radius * radius);
  return (curvature * radius * radius) / (1 + Math.sqrt(inside));
}

type Shape = readonly [start: number, first: number, second: number];

interface Kind {
  readonly shape: CrownShape;
  readonly parameters: number;
  readonly depth: (r: Mm, p: Shape) => Mm;
}

const kinds: readonly Kind[] = [
  { shape: 'sphere', parameters: 2, depth: (r, [z, c]) => z + conicDepth(r, c, 0) },
  { shape: 'ellipse', parameters: 3, depth: (r, [z, c, k]) => z + conicDepth(r, c, Math.max(-0.999, k)) },
  { shape: 'cone', parameters: 2, depth: (r, [z, s]) => z + s * Math.abs(r) },
];

/** Prior of the shapes: most domes are turned to a radius. `common practice` */
const shapePrior: Readonly<Record<CrownShape, number>> = { sphere: 0.7, ellipse: 0.1, cone: 0.2 };

/**
 * Fits sphere, ellipse and cone to depth readings and ranks them.
 *
 * @param readings  at least three, at different distances from the axis [mm]
 * @param uncertainty  standard uncertainty of a depth [mm]
 * @param wears  whether places may have lost metal, so that the depth reads too large
 * @returns the fits, likeliest first
 * @throws DomainError when there are fewer than three distances or the uncertainty is not above 0
 */
export function fitCrown(readings: readonly DepthReading[], uncertainty: Mm, wears: boolean): CrownFit[] {
  if (!(uncertainty > 0)) throw new DomainError('uncertainty', uncertainty, 'above 0 mm');
  const distinct = new Set(readings.map((p) => Math.abs(p.radius).toFixed(4))).size;
  if (distinct < 3) throw new DomainError('readings', distinct, 'depths at three or more distances from the axis');
  const fits = kinds
    .filter((k) => distinct > k.parameters)
    .map((kind) => ({ kind, ...fitKind(kind, readings, uncertainty, wears) }));
  const scores = fits.map(
    (f) => f.log - (f.kind.parameters / 2) * Math.log(readings.length) + Math.log(shapePrior[f.kind.shape]),
  );
  const top = Math.max(...scores);
  const total = scores.reduce((sum, s) => sum + Math.exp(s - top), 0);
  return fits
    .map((f, i) => describe(f, readings, Math.exp((scores[i] ?? 0) - top) / total))
    .toSorted((a, b) => b.probability - a.probability);
}

interface Fitted {
  readonly kind: Kind;
  readonly at: Shape;
  readonly covariance: number;
  readonly log: number;
  readonly wear: readonly Mm[];
  readonly sound: readonly number[];
}

function fitKind(kind: Kind, readings: readonly DepthReading[], u: Mm, wears: boolean): Omit<Fitted, 'kind'> {
  let at = startOf(kind, readings);
  let lost = readings.map(() => 0);
  let sound = readings.map(() => 1);
  let [share, scale] = [wears ? 0.5 : 0, 10 * u];
  let log = 0;
  for (let round = 0; round < (wears ? 200 : 1); round++) {
    const before = at;
    at = leastSquares(kind, readings, lost, at);
    const off = readings.map((p) => p.depth - kind.depth(p.radius, at));
    const each = off.map((v) => responsibility(v, u, share, scale));
    log = each.reduce((sum, e) => sum + Math.log(e.density), 0);
    if (!wears) break;
    sound = each.map((e) => e.sound);
    lost = each.map((e) => (1 - e.sound) * e.wear);
    const wornCount = each.reduce((sum, e) => sum + 1 - e.sound, 0);
    share = Math.min(0.95, Math.max(0.02, (wornCount + 0.5) / (readings.length + 1)));
    scale = Math.max(u, lost.reduce((a, b) => a + b, 0) / Math.max(0.5, wornCount));
    if (round > 5 && Math.hypot(at[0] - before[0], at[1] - before[1], at[2] - before[2]) < 1e-10) break;
  }
  return { at, covariance: varianceOfSecond(kind, readings, sound, at) * u * u, log, wear: lost, sound };
}

/** How far a place counts as sound, and its expected wear if it is not. */
function responsibility(off: Mm, u: Mm, share: number, scale: Mm): { sound: number; wear: Mm; density: number } {
  const z = off / u;
  const bell = Math.exp((-z * z) / 2);
  const plain = (1 - share) * bell * (0.3989422804014327 / u);
  const worn = share > 0 ? share * quickWornReading(-z, bell, u / scale, scale) : 0;
  const density = plain + worn + 1e-12;
  const middle = off - (u * u) / scale;
  return { sound: plain / density, wear: Math.max(0, middle + u * inverseMills(middle / u)), density };
}

function startOf(kind: Kind, readings: readonly DepthReading[]): Shape {
  const far = readings.reduce((a, b) => (Math.abs(b.radius) > Math.abs(a.radius) ? b : a));
  const near = readings.reduce((a, b) => (Math.abs(b.radius) < Math.abs(a.radius) ? b : a));
  const [rise, run] = [far.depth - near.depth, far.radius ** 2 - near.radius ** 2];
  if (kind.shape === 'cone')
    return [near.depth, rise / Math.max(1e-9, Math.abs(far.radius) - Math.abs(near.radius)), 0];
  return [near.depth, (2 * rise) / Math.max(1e-9, run + rise * rise), 0];
}

/** Gauss–Newton with damping on depths from which the expected wear was taken. */
function leastSquares(kind: Kind, readings: readonly DepthReading[], lost: readonly Mm[], from: Shape): Shape {
  const target = readings.map((p, i) => p.depth - (lost[i] ?? 0));
  const squares = (p: Shape) =>
    readings.reduce((sum, q, i) => sum + ((target[i] ?? 0) - kind.depth(q.radius, p)) ** 2, 0);
  let [at, sum, damping] = [from, squares(from), 1e-6];
  for (let i = 0; i < 40; i++) {
    const { matrix, right } = normalEquations(kind, readings, target, at);
    const damped = matrix.map((row, r) => row.map((v, c) => (r === c ? v * (1 + damping) + 1e-18 : v)));
    const [a = [1, 0, 0], b = [0, 1, 0], c = [0, 0, 1]] = damped;
    const d = solve3([row3(a), row3(b), row3(c)], row3(right));
    const next: Shape = [at[0] + d[0], at[1] + d[1], at[2] + d[2]];
    const trial = squares(next);
    if (!(trial <= sum)) {
      damping = Math.max(damping * 10, 1e-8);
      if (damping > 1e8) break;
      continue;
    }
    const gained = sum - trial;
    [at, sum, damping] = [next, trial, damping / 10];
    if (gained <= 1e-14 * (sum + 1e-20)) break;
  }
  return at;
}

const row3 = (v: readonly number[]): readonly [number, number, number] => [v[0] ?? 0, v[1] ?? 0, v[2] ?? 0];

function slopes(kind: Kind, r: Mm, at: Shape): readonly [number, number, number] {
  const d = (i: 1 | 2, h: number) => {
    const up: Shape = [at[0], at[1] + (i === 1 ? h : 0), at[2] + (i === 2 ? h : 0)];
    const down: Shape = [at[0], at[1] - (i === 1 ? h : 0), at[2] - (i === 2 ? h : 0)];
    return (kind.depth(r, up) - kind.depth(r, down)) / (2 * h);
  };
  return [1, d(1, 1e-6 * Math.max(1e-3, Math.abs(at[1]))), kind.parameters > 2 ? d(2, 1e-4) : 0];
}

function normalEquations(
  kind: Kind,
  readings: readonly DepthReading[],
  target: readonly number[],
  at: Shape,
  weights?: readonly number[],
) {
  const matrix = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, kind.parameters > 2 ? 0 : 1],
  ];
  const right = [0, 0, 0];
  readings.forEach((p, i) => {
    const s = slopes(kind, p.radius, at);
    const w = weights?.[i] ?? 1;
    const off = (target[i] ?? 0) - kind.depth(p.radius, at);
    for (let r = 0; r < 3; r++) {
      right[r] = (right[r] ?? 0) + w * (s[r] ?? 0) * off;
      for (let c = 0; c < 3; c++) {
        const row = matrix[r];
        if (row) row[c] = (row[c] ?? 0) + w * (s[r] ?? 0) * (s[c] ?? 0);
      }
    }
  });
  return { matrix, right };
}

/** Variance of the second parameter (curvature or slope) for readings of unit variance, worn places not counted. */
function varianceOfSecond(kind: Kind, readings: readonly DepthReading[], sound: readonly number[], at: Shape): number {
  const { matrix } = normalEquations(
    kind,
    readings,
    readings.map(() => 0),
    at,
    sound,
  );
  const [a = [], b = [], c = []] = matrix;
  return Math.max(0, solve3([row3(a), row3(b), row3(c)], [0, 1, 0])[1]);
}

/** A radius beyond this is a flat [mm]. */
const flat: Mm = 1e6;

function describe(f: Fitted, readings: readonly DepthReading[], probability: number): CrownFit {
  const [start, second, third] = f.at;
  const isCone = f.kind.shape === 'cone';
  const radius = isCone ? 0 : Math.abs(second) < 1 / flat ? flat : 1 / second;
  const total = f.sound.reduce((a, b) => a + b, 0) || 1;
  const squares = readings.reduce(
    (sum, p, i) => sum + (f.sound[i] ?? 0) * (p.depth - f.kind.depth(p.radius, f.at)) ** 2,
    0,
  );
  return {
    shape: f.kind.shape,
    start,
    radius,
    radiusUncertainty: isCone ? 0 : Math.min(1e6, Math.sqrt(f.covariance) * radius * radius),
    conic: f.kind.shape === 'ellipse' ? third : 0,
    slope: isCone ? second : 0,
    deviation: Math.sqrt(squares / total),
    wear: f.wear,
    probability,
  };
}
