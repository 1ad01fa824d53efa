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
  const { size, halfBandwidth } = matrix;
  const entries = matrix.entries.slice();
  const factor: BandedFactor = { kind: 'cholesky', size, halfBandwidth, entries };
  for (let row = 0; row < size; row++) {
    for (let column = Math.max(0, row - halfBandwidth); column <= row; column++) {
      const at = place(factor, row, column);
      const before = entries[at] ?? 0;
      let sum = before;
      for (let k = Math.max(0, row - halfBandwidth); k < column; k++) {
        sum -= (entries[place(factor, row, k)] ?? 0) * (entries[place(factor, column, k)] ?? 0);
      }
      if (column < row) entries[at] = sum / (entries[place(factor, column, column)] ?? 1);
      else if (sum > before * 1e-14) entries[at] = Math.sqrt(sum);
      else throw new DomainError('matrix', `pivot ${sum} in row ${row}`, 'a positive definite matrix: every part held');
    }
  }
  return factor;
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
  const { size, halfBandwidth, entries } = factor;
  if (load.length !== size) throw new DomainError('load', load.length, `${size} entries`);
  const x = Float64Array.from(load);
  for (let row = 0; row < size; row++) {
    let sum = x[row] ?? 0;
    for (let k = Math.max(0, row - halfBandwidth); k < row; k++)
      sum -= (entries[place(factor, row, k)] ?? 0) * (x[k] ?? 0);
    x[row] = sum / (entries[place(factor, row, row)] ?? 1);
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = x[row] ?? 0;
    for (let k = row + 1; k <= Math.min(size - 1, row + halfBandwidth); k++) {
      sum -= (entries[place(factor, k, row)] ?? 0) * (x[k] ?? 0);
    }
    x[row] = sum / (entries[place(factor, row, row)] ?? 1);
  }
  return x;
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
