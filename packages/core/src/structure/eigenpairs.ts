/**
 * Lowest natural frequencies and shapes of a banded system K v = λ M v, by Lanczos steps on the inverse.
 *
 * Knowledge: with K = L Lᵀ, the largest eigenvalues of L⁻¹ M L⁻ᵀ are 1/λ of the lowest modes and come out first. Every
 * Lanczos vector is made square to all before it, twice, so no false copies of a mode appear.
 */
import { DomainError } from '../errors.ts';
import { type BandedFactor, type BandedSymmetric, factorBanded, solveLower, solveUpper } from '../numerics/banded.ts';
import { type Eigenpairs, tridiagonalEigenpairs } from '../numerics/symmetric.ts';

/** An eigenvalue with its vector, scaled so that vᵀ M v = 1. */
export interface Eigenpair {
  readonly value: number;
  readonly vector: Float64Array;
}

/** The product A x of a banded matrix. */
export function timesBanded({ size, halfBandwidth: w, entries }: BandedSymmetric, x: Float64Array): Float64Array {
  const y = new Float64Array(size);
  for (let row = 0; row < size; row++) {
    const rowAt = row * (w + 1) + w - row;
    const xr = x[row] ?? 0;
    let sum = (entries[rowAt + row] ?? 0) * xr;
    for (let column = row > w ? row - w : 0; column < row; column++) {
      const a = entries[rowAt + column] ?? 0;
      sum += a * (x[column] ?? 0);
      y[column] = (y[column] ?? 0) + a * xr;
    }
    y[row] = sum;
  }
  return y;
}

function dot(a: Float64Array, b: Float64Array): number {
  // Two sums, so that one addition need not wait for the other.
  let even = 0;
  let odd = 0;
  const last = a.length - 1;
  for (let i = 0; i < last; i += 2) {
    even += (a[i] ?? 0) * (b[i] ?? 0);
    odd += (a[i + 1] ?? 0) * (b[i + 1] ?? 0);
  }
  if (a.length % 2 === 1) even += (a[last] ?? 0) * (b[last] ?? 0);
  return even + odd;
}

function subtract(a: Float64Array, factor: number, b: Float64Array): void {
  for (let i = 0; i < a.length; i++) a[i] = (a[i] ?? 0) - factor * (b[i] ?? 0);
}

/** Takes from a vector what it has in common with those of the basis; four at once, to go through it fewer times. */
function makeSquare(v: Float64Array, basis: readonly Float64Array[]): void {
  let k = 0;
  for (; k + 3 < basis.length; k += 4) {
    const [a, b, c, d] = [basis[k], basis[k + 1], basis[k + 2], basis[k + 3]];
    if (!a || !b || !c || !d) return;
    let [ha, hb, hc, hd] = [0, 0, 0, 0];
    for (let i = 0; i < v.length; i++) {
      const x = v[i] ?? 0;
      ha += (a[i] ?? 0) * x;
      hb += (b[i] ?? 0) * x;
      hc += (c[i] ?? 0) * x;
      hd += (d[i] ?? 0) * x;
    }
    for (let i = 0; i < v.length; i++) {
      v[i] = (v[i] ?? 0) - ha * (a[i] ?? 0) - hb * (b[i] ?? 0) - hc * (c[i] ?? 0) - hd * (d[i] ?? 0);
    }
  }
  for (; k < basis.length; k++) {
    const a = basis[k];
    if (a) subtract(v, dot(v, a), a);
  }
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
  const most = Math.min(size, 2 * count + 14);
  const basis: Float64Array[] = [];
  const diagonal: number[] = [];
  const off: number[] = [];
  let q = startVector(size);
  scale(q);
  let before = q;
  for (let step = 1; ; step++) {
    basis.push(q);
    const r = q.slice();
    solveUpper(factor, r);
    const next = timesBanded(mass, r);
    solveLower(factor, next);
    const alpha = dot(next, q);
    diagonal.push(alpha);
    subtract(next, alpha, q);
    if (step > 1) subtract(next, off[step - 2] ?? 0, before);
    makeSquare(next, basis);
    const beta = Math.sqrt(dot(next, next));
    const exhausted = step === most || !(beta > 1e-13 * Math.abs(diagonal[0] ?? 1));
    // Looked at now and then: each look costs as much as a step.
    const looks = step >= 2 * count + 4 && step % 2 === 0;
    if (exhausted || looks) {
      const ritz = tridiagonalEigenpairs(diagonal, off);
      const wanted = largest(ritz.values, count);
      if (exhausted || settled(ritz, wanted, beta)) return wanted.map((i) => modeOf(ritz, i, basis, factor));
    }
    off.push(beta);
    before = q;
    q = next;
    for (let i = 0; i < size; i++) q[i] = (q[i] ?? 0) / beta;
  }
}

/** Residual of a pair over its value; the value itself is then right to the square of it. */
const settledShare = 1e-7;

/** Whether more steps would not change the pairs: the residual of each is β times the last entry of its vector. */
function settled({ values, vectors }: Eigenpairs, wanted: readonly number[], beta: number): boolean {
  const n = values.length;
  for (const i of wanted) {
    if (!(Math.abs(beta * (vectors[i * n + n - 1] ?? 1)) < settledShare * (values[i] ?? 0))) return false;
  }
  return true;
}

/** Numbers of the largest values, largest first. */
function largest(values: Float64Array, count: number): number[] {
  const order: number[] = [];
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? 0;
    let at = order.length;
    while (at > 0 && (values[order[at - 1] ?? 0] ?? 0) < value) at--;
    if (at < count) order.splice(at, 0, i);
    if (order.length > count) order.pop();
  }
  return order;
}

function modeOf(
  { values, vectors }: Eigenpairs,
  number: number,
  basis: readonly Float64Array[],
  factor: BandedFactor,
): Eigenpair {
  const n = values.length;
  const value = values[number] ?? 1;
  const v = new Float64Array(factor.size);
  for (let i = 0; i < n; i++) subtract(v, -(vectors[number * n + i] ?? 0), basis[i] ?? v);
  solveUpper(factor, v);
  // With K = L Lᵀ and v = L⁻ᵀ u, vᵀ M v = 1/λ for a unit u.
  const norm = 1 / Math.sqrt(value);
  for (let i = 0; i < v.length; i++) v[i] = (v[i] ?? 0) * norm;
  return { value: 1 / value, vector: v };
}

function scale(v: Float64Array): void {
  const length = Math.sqrt(dot(v, v));
  for (let i = 0; i < v.length; i++) v[i] = (v[i] ?? 0) / length;
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
