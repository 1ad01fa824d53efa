/**
 * Symmetric positive definite systems whose entries lie near the diagonal: beams, chains of springs, smoothing.
 * Factored once, solved for as many loads as wanted.
 */
import { DomainError } from '../errors.ts';

/** A symmetric matrix of which only the diagonal and the bands below it are kept. */
export interface BandedSymmetric {
  readonly size: number;
  /** How many places off the diagonal an entry may lie. */
  readonly halfBandwidth: number;
  /** Row by row, `halfBandwidth + 1` entries each; the last of a row is the diagonal. */
  readonly entries: Float64Array;
}

/** The lower Cholesky factor of a banded matrix, stored in the same way. */
export interface BandedFactor extends BandedSymmetric {
  readonly kind: 'cholesky';
}

/**
 * An empty symmetric banded matrix.
 *
 * @param size  rows [-]
 * @param halfBandwidth  how many places off the diagonal an entry may lie [-]
 * @returns a matrix of zeros
 * @source golub-van-loan §4.3
 * @valid size ≥ 1, 0 ≤ halfBandwidth < size
 * @example bandedZeros(4, 1).entries.length → 8
 */
export function bandedZeros(size: number, halfBandwidth: number): BandedSymmetric {
  if (!Number.isInteger(size) || size < 1) throw new DomainError('size', size, 'a whole number from 1');
  return { size, halfBandwidth, entries: new Float64Array(size * (halfBandwidth + 1)) };
}

/** Where entry (row, column), column ≤ row, is kept. */
function place(m: BandedSymmetric, row: number, column: number): number {
  return row * (m.halfBandwidth + 1) + m.halfBandwidth - (row - column);
}

/**
 * Adds to entry (i, j) and with it to (j, i).
 *
 * @param matrix  the matrix, changed in place
 * @param i  row [-]
 * @param j  column [-]
 * @param value  what is added
 * @returns the new entry
 * @throws DomainError when the entry lies outside the band
 * @source golub-van-loan §4.3
 * @valid |i − j| ≤ halfBandwidth
 * @example addTo(bandedZeros(3, 1), 0, 1, 2.5) → 2.5
 */
export function addTo(matrix: BandedSymmetric, i: number, j: number, value: number): number {
  const row = Math.max(i, j);
  const column = Math.min(i, j);
  if (row - column > matrix.halfBandwidth || row >= matrix.size || column < 0) {
    throw new DomainError('entry', `${i}, ${j}`, `within ${matrix.halfBandwidth} of the diagonal`);
  }
  const at = place(matrix, row, column);
  const sum = (matrix.entries[at] ?? 0) + value;
  matrix.entries[at] = sum;
  return sum;
}

/**
 * Cholesky factor L of A = L Lᵀ, with no fill outside the band.
 *
 * @param matrix  a symmetric positive definite banded matrix
 * @returns the lower factor
 * @throws DomainError when the matrix is not positive definite: the structure can move freely somewhere
 * @source golub-van-loan algorithm 4.3.5
 * @valid positive definite matrices
 * @example factorBanded(bandedFrom([[4, 2], [2, 5]], 1)).entries[3] → 2
 */
export function factorBanded(matrix: BandedSymmetric): BandedFactor {
  const { size, halfBandwidth: w } = matrix;
  const entries = matrix.entries.slice();
  for (let row = 0; row < size; row++) {
    // An entry (row, k) lies at rowAt + k.
    const rowAt = row * (w + 1) + w - row;
    const first = row > w ? row - w : 0;
    const before = entries[rowAt + row] ?? 0;
    let pivot = before;
    for (let column = first; column < row; column++) {
      const columnAt = column * (w + 1) + w - column;
      let sum = entries[rowAt + column] ?? 0;
      for (let k = first; k < column; k++) {
        sum -= (entries[rowAt + k] ?? 0) * (entries[columnAt + k] ?? 0);
      }
      sum /= entries[columnAt + column] ?? 1;
      entries[rowAt + column] = sum;
      pivot -= sum * sum;
    }
    if (!(pivot > before * 1e-14))
      throw new DomainError('matrix', `pivot ${pivot} in row ${row}`, 'a positive definite matrix: every part held');
    entries[rowAt + row] = Math.sqrt(pivot);
  }
  return { kind: 'cholesky', size, halfBandwidth: w, entries };
}

/**
 * Solves A x = b with the factor of A.
 *
 * @param factor  from {@link factorBanded}
 * @param load  right-hand side b
 * @returns x
 * @throws DomainError when the load has not as many entries as the matrix has rows
 * @source golub-van-loan §4.3.2
 * @valid any load
 * @example solveBanded(factorBanded(bandedFrom([[4, 1], [1, 3]], 1)), [1, 2])[1] → 0.63636
 */
export function solveBanded(factor: BandedFactor, load: ArrayLike<number>): Float64Array {
  if (load.length !== factor.size) throw new DomainError('load', load.length, `${factor.size} entries`);
  const x = Float64Array.from(load);
  solveLower(factor, x);
  solveUpper(factor, x);
  return x;
}

/**
 * Solves L x = b.
 *
 * @param factor  from {@link factorBanded}
 * @param x  right-hand side b, overwritten with x
 * @returns the last entry of x
 * @source golub-van-loan §4.3.2
 * @valid any right-hand side
 * @example solveLower(factorBanded(bandedFrom([[4, 2], [2, 5]], 1)), new Float64Array([2, 5])) → 2
 */
export function solveLower({ size, halfBandwidth: w, entries }: BandedFactor, x: Float64Array): number {
  for (let row = 0; row < size; row++) {
    const rowAt = row * (w + 1) + w - row;
    let sum = x[row] ?? 0;
    for (let k = row > w ? row - w : 0; k < row; k++) sum -= (entries[rowAt + k] ?? 0) * (x[k] ?? 0);
    x[row] = sum / (entries[rowAt + row] ?? 1);
  }
  return x[size - 1] ?? 0;
}

/**
 * Solves Lᵀ x = b.
 *
 * @param factor  from {@link factorBanded}
 * @param x  right-hand side b, overwritten with x
 * @returns the first entry of x
 * @source golub-van-loan §4.3.2
 * @valid any right-hand side
 * @example solveUpper(factorBanded(bandedFrom([[4, 2], [2, 5]], 1)), new Float64Array([3, 4])) → 0.5
 */
export function solveUpper({ size, halfBandwidth: w, entries }: BandedFactor, x: Float64Array): number {
  for (let row = size - 1; row >= 0; row--) {
    const rowAt = row * (w + 1) + w - row;
    const value = (x[row] ?? 0) / (entries[rowAt + row] ?? 1);
    x[row] = value;
    for (let k = row > w ? row - w : 0; k < row; k++) x[k] = (x[k] ?? 0) - (entries[rowAt + k] ?? 0) * value;
  }
  return x[0] ?? 0;
}

/**
 * The diagonal of A⁻¹, from the entries of A⁻¹ inside the band alone.
 *
 *     Z_ij = (δ_ij / L_jj − Σ_{k = j+1 … j+w} Z_ik L_kj) / L_jj,  last column first
 *
 * @param factor  from {@link factorBanded}
 * @returns the diagonal entries of the inverse
 * @source takahashi-1973
 * @valid any factor
 * @example diagonalOfInverse(factorBanded(bandedFrom([[4, 2], [2, 5]], 1)))[0] → 0.3125
 */
export function diagonalOfInverse({ size, halfBandwidth: w, entries }: BandedFactor): Float64Array {
  // As the factor is kept: entry (i, j), j ≤ i, at i (w + 1) + w − (i − j).
  const inverse = new Float64Array(entries.length);
  const diagonal = new Float64Array(size);
  for (let j = size - 1; j >= 0; j--) {
    const last = j + w < size ? j + w : size - 1;
    const pivot = entries[j * (w + 1) + w] ?? 1;
    for (let i = last; i >= j; i--) {
      let sum = i === j ? 1 / pivot : 0;
      for (let k = j + 1; k <= last; k++) {
        const [high, low] = i > k ? [i, k] : [k, i];
        sum -= (inverse[high * w + w + low] ?? 0) * (entries[k * w + w + j] ?? 0);
      }
      inverse[i * w + w + j] = sum / pivot;
    }
    diagonal[j] = inverse[j * (w + 1) + w] ?? 0;
  }
  return diagonal;
}

/**
 * A banded matrix from rows written out in full; entries above the diagonal are not looked at.
 *
 * @param rows  the rows
 * @param halfBandwidth  how many places off the diagonal an entry may lie [-]
 * @returns the same matrix, banded
 * @source golub-van-loan §1.2.5
 * @valid small matrices
 * @example bandedFrom([[4, 1], [1, 3]], 1).entries[2] → 1
 */
export function bandedFrom(rows: readonly (readonly number[])[], halfBandwidth: number): BandedSymmetric {
  const matrix = bandedZeros(rows.length, halfBandwidth);
  rows.forEach((row, i) => {
    for (let j = Math.max(0, i - halfBandwidth); j <= i; j++) addTo(matrix, i, j, row[j] ?? 0);
  });
  return matrix;
}
