/**
 * The spectrum of evenly spaced values.
 */
import { DomainError } from '../errors.ts';

/**
 * Power at each frequency of real values, by the fast transform of Cooley and Tukey.
 *
 *     P_k = |Σ x_n e^(−2πi kn/N)|²,  k = 0 … N/2
 *
 * @param values  evenly spaced; as many as a power of two [any unit]
 * @returns power from nought to half the sampling rate, N/2 + 1 of them [that unit squared]
 * @throws DomainError when there are not as many as a power of two
 * @source geometry the definition itself, held against it term by term in the test
 * @valid any finite values
 * @example powerSpectrum([1, 0, -1, 0])[1] → 4
 */
export function powerSpectrum(values: ArrayLike<number>): Float64Array {
  const n = values.length;
  if (n < 2 || (n & (n - 1)) !== 0) throw new DomainError('values', n, 'a power of two of them');
  const re = Float64Array.from(values);
  const im = new Float64Array(n);
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) [re[i], re[j]] = [re[j] ?? 0, re[i] ?? 0];
  }
  for (let size = 2; size <= n; size *= 2) butterflies(re, im, size);
  return Float64Array.from({ length: n / 2 + 1 }, (_, k) => (re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2);
}

function butterflies(re: Float64Array, im: Float64Array, size: number): void {
  const half = size / 2;
  const cos = Float64Array.from({ length: half }, (_, k) => Math.cos((-2 * Math.PI * k) / size));
  const sin = Float64Array.from({ length: half }, (_, k) => Math.sin((-2 * Math.PI * k) / size));
  for (let start = 0; start < re.length; start += size) {
    for (let k = 0; k < half; k++) {
      const [a, b] = [start + k, start + k + half];
      const [c, s] = [cos[k] ?? 0, sin[k] ?? 0];
      const [x, y] = [re[b] ?? 0, im[b] ?? 0];
      const [tr, ti] = [x * c - y * s, x * s + y * c];
      const [ar, ai] = [re[a] ?? 0, im[a] ?? 0];
      re[a] = ar + tr;
      im[a] = ai + ti;
      re[b] = ar - tr;
      im[b] = ai - ti;
    }
  }
}
