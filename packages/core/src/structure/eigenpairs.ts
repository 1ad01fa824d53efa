/**
 * Lowest natural frequencies and shapes of a banded system K v = λ M v, by Lanczos steps on the inverse.
 *
 * Knowledge: with K = L Lᵀ, the largest eigenvalues of L⁻¹ M L⁻ᵀ are 1/λ of the lowest modes and come out first. Every
 * Lanczos vector is made square to all before it, twice, so no false copies of a mode appear.
 */
import { DomainError } from '../errors.ts';
import { type BandedSymmetric, factorBanded } from '../numerics/banded.ts';

/** An eigenvalue with its vector, scaled so that vᵀ M v = 1. */
export interface Eigenpair {
  readonly value: number;
  readonly vector: Float64Array;
}

/** The product A x of a banded matrix. */
export function timesBanded(matrix: BandedSymmetric, x: Float64Array): Float64Array {
  const { size, halfBandwidth, entries } = matrix;
  const y = new Float64Array(size);
  for (let row = 0; row < size; row++) {
    const diagonal = row * (halfBandwidth + 1) + halfBandwidth;
    const xr = x[row] ?? 0;
    let sum = (entries[diagonal] ?? 0) * xr;
    for (let column = Math.max(0, row - halfBandwidth); column < row; column++) {
      const a = entries[diagonal - (row - column)] ?? 0;
      sum += a * (x[column] ?? 0);
      y[column] = (y[column] ?? 0) + a * xr;
    }
    y[row] = (y[row] ?? 0) + sum;
  }
  return y;
}

/** Solves L x = b in place. */
function forward(factor: BandedSymmetric, x: Float64Array): void {
  const { size, halfBandwidth: w, entries } = factor;
  for (let row = 0; row < size; row++) {
    const diagonal = row * (w + 1) + w;
    let sum = x[row] ?? 0;
    for (let k = Math.max(0, row - w); k < row; k++) sum -= (entries[diagonal - (row - k)] ?? 0) * (x[k] ?? 0);
    x[row] = sum / (entries[diagonal] ?? 1);
  }
}

/** Solves Lᵀ x = b in place. */
function backward(factor: BandedSymmetric, x: Float64Array): void {
  const { size, halfBandwidth: w, entries } = factor;
  for (let row = size - 1; row >= 0; row--) {
    const diagonal = row * (w + 1) + w;
    const value = (x[row] ?? 0) / (entries[diagonal] ?? 1);
    x[row] = value;
    for (let k = Math.max(0, row - w); k < row; k++) x[k] = (x[k] ?? 0) - (entries[diagonal - (row - k)] ?? 0) * value;
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}

function subtract(a: Float64Array, factor: number, b: Float64Array): void {
  for (let i = 0; i < a.length; i++) a[i] = (a[i] ?? 0) - factor * (b[i] ?? 0);
}

/** A start that leans on every mode, the same each time. */
function startVector(size: number): Float64Array {
  const v = new Float64Array(size);
  let seed = 12345;
  for (let i = 0; i < size; i++) {
    seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
    v[i] = 0.5 + seed / 0x7fffffff;
  }
  return v;
}

/**
 * The lowest eigenpairs of K v = λ M v.
 *
 * @param stiffness  K, positive definite
 * @param mass  M, positive definite
 * @param count  how many are wanted [-]
 * @returns eigenpairs, lowest first; as many as wanted or as there are unknowns
 * @throws DomainError when K is not positive definite: something is not held
 * @source golub-van-loan chapter 10, Lanczos with full reorthogonalization
 * @valid no two modes of the same frequency, as in a beam bending in one plane
 * @example lowestEigenpairs(bandedDiagonal([4, 9]), bandedDiagonal([1, 1]), 1)[0].value → 4.0
 */
export function lowestEigenpairs(stiffness: BandedSymmetric, mass: BandedSymmetric, count: number): Eigenpair[] {
  if (stiffness.size !== mass.size) throw new DomainError('mass', mass.size, `${stiffness.size} rows, as K has`);
  const factor = factorBanded(stiffness);
  const { size } = factor;
  const steps = Math.min(size, 2 * count + 14);
  const basis: Float64Array[] = [];
  const diagonal: number[] = [];
  const off: number[] = [];
  let q = startVector(size);
  scale(q);
  for (let step = 0; step < steps; step++) {
    basis.push(q);
    const r = q.slice();
    backward(factor, r);
    const next = timesBanded(mass, r);
    forward(factor, next);
    diagonal.push(dot(next, q));
    for (let twice = 0; twice < 2; twice++) for (const b of basis) subtract(next, dot(next, b), b);
    const beta = Math.sqrt(dot(next, next));
    if (!(beta > 1e-13 * Math.abs(diagonal[0] ?? 1))) break;
    off.push(beta);
    q = next;
    for (let i = 0; i < size; i++) q[i] = (q[i] ?? 0) / beta;
  }
  const ritz = tridiagonalEigenpairs(diagonal, off.slice(0, diagonal.length - 1));
  return ritz.slice(0, count).map(({ value, vector }) => {
    const v = new Float64Array(size);
    basis.forEach((b, i) => {
      subtract(v, -(vector[i] ?? 0), b);
    });
    backward(factor, v);
    // With K = L Lᵀ and v = L⁻ᵀ u, vᵀ M v = 1/λ for a unit u.
    const norm = 1 / Math.sqrt(value);
    for (let i = 0; i < size; i++) v[i] = (v[i] ?? 0) * norm;
    return { value: 1 / value, vector: v };
  });
}

function scale(v: Float64Array): void {
  const length = Math.sqrt(dot(v, v));
  for (let i = 0; i < v.length; i++) v[i] = (v[i] ?? 0) / length;
}

/** Eigenpairs of a symmetric tridiagonal matrix, largest first: implicit QL steps. */
function tridiagonalEigenpairs(
  diagonal: readonly number[],
  off: readonly number[],
): { value: number; vector: Float64Array }[] {
  const n = diagonal.length;
  const d = Float64Array.from(diagonal);
  const e = new Float64Array(n);
  e.set(off);
  // Row i of z is the i-th eigenvector to be: rows are rotated, so that they lie together.
  const z = Array.from({ length: n }, (_, i) => {
    const row = new Float64Array(n);
    row[i] = 1;
    return row;
  });
  for (let l = 0; l < n; l++) {
    for (let turn = 0; ; turn++) {
      let m = l;
      while (m < n - 1 && Math.abs(e[m] ?? 0) > Number.EPSILON * (Math.abs(d[m] ?? 0) + Math.abs(d[m + 1] ?? 0))) m++;
      if (m === l) break;
      if (turn > 60) throw new Error('the frequencies of a beam did not settle');
      rotate(d, e, z, l, m);
    }
  }
  return [...d].map((value, i) => ({ value, vector: z[i] ?? new Float64Array(n) })).sort((a, b) => b.value - a.value);
}

/** One implicit QL sweep from m down to l [golub-van-loan §8.3]. */
function rotate(d: Float64Array, e: Float64Array, z: Float64Array[], l: number, m: number): void {
  const at = (v: Float64Array, i: number) => v[i] ?? 0;
  let g = (at(d, l + 1) - at(d, l)) / (2 * at(e, l));
  let r = Math.hypot(g, 1);
  g = at(d, m) - at(d, l) + at(e, l) / (g + (g >= 0 ? r : -r));
  let [s, c, p] = [1, 1, 0];
  let i = m - 1;
  for (; i >= l; i--) {
    const f = s * at(e, i);
    const b = c * at(e, i);
    r = Math.hypot(f, g);
    e[i + 1] = r;
    if (r === 0) {
      d[i + 1] = at(d, i + 1) - p;
      e[m] = 0;
      return;
    }
    s = f / r;
    c = g / r;
    g = at(d, i + 1) - p;
    r = (at(d, i) - g) * s + 2 * c * b;
    p = s * r;
    d[i + 1] = g + p;
    g = c * r - b;
    const [low, high] = [z[i], z[i + 1]];
    if (!low || !high) return;
    for (let k = 0; k < low.length; k++) {
      const h = at(high, k);
      high[k] = s * at(low, k) + c * h;
      low[k] = c * at(low, k) - s * h;
    }
  }
  d[l] = at(d, l) - p;
  e[l] = g;
  e[m] = 0;
}

/**
 * A matrix with entries on its diagonal only.
 *
 * @param entries  of the diagonal [-]
 * @returns the matrix
 * @source golub-van-loan §4.3
 * @valid any entries
 * @example bandedDiagonal([4, 9]).size → 2
 * @internal
 */
export function bandedDiagonal(entries: readonly number[]): BandedSymmetric {
  return { size: entries.length, halfBandwidth: 0, entries: Float64Array.from(entries) };
}
