/**
 * All eigenpairs of small symmetric matrices, and of tridiagonal ones.
 */

/** Eigenvalues in no order, and their vectors of length one, row by row. */
export interface Eigenpairs {
  readonly values: Float64Array;
  readonly vectors: Float64Array;
}

/** Square of what is nothing beside the largest entry, which is 1. */
const negligible = 1e-40;

/**
 * Eigenpairs of a symmetric matrix: Householder steps to three diagonals, then implicit QL steps.
 *
 *     A v = λ v
 *
 * @param matrix  entries row by row, n · n of them
 * @param size  rows n [-]
 * @returns eigenvalues, and vector i at entries i·n to i·n + n − 1
 * @source golub-van-loan §8.3
 * @valid real symmetric matrices; what lies above the diagonal is not looked at
 * @example symmetricEigenpairs(new Float64Array([2, 1, 1, 2]), 2).values.reduce((a, b) => Math.max(a, b)) → 3
 */
export function symmetricEigenpairs(matrix: Float64Array, size: number): Eigenpairs {
  let norm = 0;
  for (let i = 0; i < size * size; i++) norm = Math.max(norm, Math.abs(matrix[i] ?? 0));
  // Of like size, so that squares neither overflow nor vanish.
  const a = norm > 0 ? matrix.map((x) => x / norm) : matrix.slice();
  const diagonal = new Float64Array(size);
  const off = new Float64Array(size);
  const u = new Float64Array(size);
  const p = new Float64Array(size);
  const reflections: { readonly vector: Float64Array; readonly rows: number }[] = [];
  // The last row is freed first: reflections of the rows above it leave the entry beside the diagonal.
  for (let row = size - 1; row > 0; row--) {
    const at = row * size;
    let rest = 0;
    for (let k = 0; k < row - 1; k++) rest += (a[at + k] ?? 0) * (a[at + k] ?? 0);
    const beside = a[at + row - 1] ?? 0;
    const square = rest + beside * beside;
    const length = Math.sqrt(square);
    if (rest <= negligible) {
      off[row - 1] = beside;
      continue;
    }
    const sign = beside >= 0 ? length : -length;
    for (let k = 0; k < row; k++) u[k] = a[at + k] ?? 0;
    u[row - 1] = beside + sign;
    const half = square + sign * beside;
    off[row - 1] = -sign;
    // A − u qᵀ − q uᵀ with q = p − (uᵀp / 2h) u, p = A u / h.
    let up = 0;
    for (let i = 0; i < row; i++) {
      let sum = 0;
      for (let k = 0; k <= i; k++) sum += (a[i * size + k] ?? 0) * (u[k] ?? 0);
      for (let k = i + 1; k < row; k++) sum += (a[k * size + i] ?? 0) * (u[k] ?? 0);
      p[i] = sum / half;
      up += (p[i] ?? 0) * (u[i] ?? 0);
    }
    const share = up / (2 * half);
    for (let i = 0; i < row; i++) p[i] = (p[i] ?? 0) - share * (u[i] ?? 0);
    for (let i = 0; i < row; i++) {
      for (let k = 0; k <= i; k++) {
        a[i * size + k] = (a[i * size + k] ?? 0) - (u[i] ?? 0) * (p[k] ?? 0) - (p[i] ?? 0) * (u[k] ?? 0);
      }
    }
    const scaled = u.slice(0, row);
    const unit = 1 / Math.sqrt(half);
    for (let k = 0; k < row; k++) scaled[k] = (scaled[k] ?? 0) * unit;
    reflections.push({ vector: scaled, rows: row });
  }
  for (let i = 0; i < size; i++) diagonal[i] = a[i * size + i] ?? 0;
  const pairs = tridiagonalEigenpairs(diagonal, off.subarray(0, size - 1));
  const { values, vectors } = pairs;
  for (let i = 0; i < size; i++) values[i] = (values[i] ?? 0) * norm;
  for (const { vector, rows } of reflections.reverse()) {
    for (let i = 0; i < size; i++) {
      let sum = 0;
      for (let k = 0; k < rows; k++) sum += (vectors[i * size + k] ?? 0) * (vector[k] ?? 0);
      for (let k = 0; k < rows; k++) vectors[i * size + k] = (vectors[i * size + k] ?? 0) - sum * (vector[k] ?? 0);
    }
  }
  return pairs;
}

/**
 * Eigenpairs of a symmetric tridiagonal matrix: implicit QL steps.
 *
 * @param diagonal  entries of the diagonal
 * @param off  entries beside it, one fewer
 * @returns as {@link symmetricEigenpairs}
 * @source golub-van-loan §8.3
 * @valid any entries
 * @example tridiagonalEigenpairs([2, 2], [1]).values.reduce((a, b) => Math.min(a, b)) → 1
 */
export function tridiagonalEigenpairs(diagonal: ArrayLike<number>, off: ArrayLike<number>): Eigenpairs {
  const n = diagonal.length;
  const d = Float64Array.from(diagonal);
  const e = new Float64Array(n);
  e.set(off);
  const vectors = new Float64Array(n * n);
  for (let i = 0; i < n; i++) vectors[i * n + i] = 1;
  let norm = 0;
  for (let i = 0; i < n; i++) norm = Math.max(norm, Math.abs(d[i] ?? 0), Math.abs(e[i] ?? 0));
  // Beside entries that are all but nothing the test of smallness would never be met.
  const nothing = 1e-30 * norm;
  for (let l = 0; l < n; l++) {
    for (let turn = 0; ; turn++) {
      let m = l;
      while (
        m < n - 1 &&
        Math.abs(e[m] ?? 0) > nothing + Number.EPSILON * (Math.abs(d[m] ?? 0) + Math.abs(d[m + 1] ?? 0))
      )
        m++;
      if (m === l) break;
      if (turn > 60) throw new Error('the eigenvalues of a matrix did not settle');
      rotate(d, e, vectors, l, m);
    }
  }
  return { values: d, vectors };
}

/** One implicit QL sweep from m down to l [golub-van-loan §8.3]. */
function rotate(d: Float64Array, e: Float64Array, vectors: Float64Array, l: number, m: number): void {
  const n = d.length;
  const dl = d[l] ?? 0;
  const el = e[l] ?? 0;
  let g = ((d[l + 1] ?? 0) - dl) / (2 * el);
  let r = Math.sqrt(g * g + 1);
  g = (d[m] ?? 0) - dl + el / (g + (g >= 0 ? r : -r));
  let s = 1;
  let c = 1;
  let p = 0;
  for (let i = m - 1; i >= l; i--) {
    const ei = e[i] ?? 0;
    const f = s * ei;
    const b = c * ei;
    r = Math.sqrt(f * f + g * g);
    e[i + 1] = r;
    if (r === 0) {
      d[i + 1] = (d[i + 1] ?? 0) - p;
      e[m] = 0;
      return;
    }
    s = f / r;
    c = g / r;
    g = (d[i + 1] ?? 0) - p;
    r = ((d[i] ?? 0) - g) * s + 2 * c * b;
    p = s * r;
    d[i + 1] = g + p;
    g = c * r - b;
    const low = i * n;
    const high = low + n;
    for (let k = 0; k < n; k++) {
      const h = vectors[high + k] ?? 0;
      const w = vectors[low + k] ?? 0;
      vectors[high + k] = s * w + c * h;
      vectors[low + k] = c * w - s * h;
    }
  }
  d[l] = (d[l] ?? 0) - p;
  e[l] = g;
  e[m] = 0;
}
