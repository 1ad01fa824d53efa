/**
 * The normal distribution.
 */
import { DomainError } from '../errors.ts';
import { erfc, erfcx } from './error-function.ts';

/**
 * Density of the standard normal distribution.
 *
 *     φ(z) = e^(−z²/2) / √(2π)
 *
 * @param z  standard deviations from the mean [-]
 * @returns density [-]
 * @source abramowitz-stegun 26.2.1
 * @valid all z
 * @example normalPdf(0) → 0.3989422804014327
 */
export function normalPdf(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/**
 * Probability that a standard normal value lies below z.
 *
 *     Φ(z) = ½ erfc(−z/√2)
 *
 * @param z  standard deviations from the mean [-]
 * @returns probability [-]
 * @source abramowitz-stegun 26.2.29
 * @valid all z, with full relative precision in both tails
 * @example normalCdf(-2) → 0.0227501319481792
 */
export function normalCdf(z: number): number {
  return erfc(-z / Math.SQRT2) / 2;
}

/**
 * Logarithm of the probability that a standard normal value lies below z, for tails too thin to be a number.
 *
 * @param z  standard deviations from the mean [-]
 * @returns ln Φ(z) [-]
 * @source abramowitz-stegun 7.1.2
 * @valid all z
 * @example logNormalCdf(-6) → -20.7367689
 */
export function logNormalCdf(z: number): number {
  if (z > -1) return Math.log1p(-normalCdf(-z));
  return Math.log(erfcx(-z / Math.SQRT2) / 2) - (z * z) / 2;
}

/**
 * Value below which a standard normal variable lies with probability p.
 *
 *     Φ(z) = p
 *
 * Started from a rational approximation good to 5·10⁻⁴ and finished by Halley steps on Φ itself.
 *
 * @param p  probability [-]
 * @returns z [-]
 * @throws DomainError when p is not between 0 and 1
 * @source abramowitz-stegun 26.2.23 for the start
 * @valid 0 < p < 1
 * @example normalQuantile(0.975) → 1.959963984540054
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new DomainError('p', p, 'a probability above 0 and below 1');
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  let z = (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t ** 3) - t;
  for (let i = 0; i < 3; i++) {
    // Newton's correction on ln Φ would do; on Φ relative to φ it is Halley's with the curvature −z.
    const step = (normalCdf(z) - p) / normalPdf(z);
    z -= step / (1 + (z * step) / 2);
  }
  return z;
}

/**
 * Density over probability: how far the mean moves when everything above z is cut off.
 *
 *     φ(z) / Φ(z)
 *
 * @param z  standard deviations from the mean [-]
 * @returns ratio [-]
 * @source abramowitz-stegun 26.2
 * @valid all z, also far below, where both vanish
 * @example inverseMills(1) → 0.287599970939178
 */
export function inverseMills(z: number): number {
  return z < -1 ? Math.sqrt(2 / Math.PI) / erfcx(-z / Math.SQRT2) : normalPdf(z) / normalCdf(z);
}
