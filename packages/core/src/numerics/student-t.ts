/**
 * Student's t distribution, for coverage factors from few readings; degrees of freedom need not be whole.
 */
import { DomainError } from '../errors.ts';
import { normalQuantile } from './normal.ts';
import { findRoot } from './root.ts';

const lanczos = [
  0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
] as const;

/**
 * Logarithm of the gamma function.
 *
 * @param x  argument [-]
 * @returns ln Γ(x) [-]
 * @throws DomainError when x is not above 0
 * @source lanczos-gamma
 * @valid x > 0
 * @example logGamma(5) → 3.1780538303479458
 */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new DomainError('x', x, 'more than 0');
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const y = x - 1;
  let sum: number = lanczos[0];
  for (let i = 1; i < lanczos.length; i++) sum += (lanczos[i] ?? 0) / (y + i);
  const t = y + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (y + 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
 * Regularized incomplete beta function.
 *
 * @param x  from 0 to 1 [-]
 * @param a  first shape [-]
 * @param b  second shape [-]
 * @returns I_x(a, b), from 0 to 1 [-]
 * @throws DomainError when x lies outside 0 to 1 or a shape is not above 0
 * @source abramowitz-stegun 26.5.8, the continued fraction, by Lentz's method
 * @valid 0 ≤ x ≤ 1, a > 0, b > 0
 * @example incompleteBeta(0.5, 2, 3) → 0.6875
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (!(x >= 0 && x <= 1)) throw new DomainError('x', x, '0 to 1');
  if (!(a > 0)) throw new DomainError('a', a, 'more than 0');
  if (!(b > 0)) throw new DomainError('b', b, 'more than 0');
  if (x === 0 || x === 1) return x;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  const nonzero = (v: number) => (Math.abs(v) < 1e-300 ? 1e-300 : v);
  let c = 1;
  let d = 1 / nonzero(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonzero(1 + even * d);
    c = nonzero(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonzero(1 + odd * d);
    c = nonzero(1 + odd / c);
    const change = d * c;
    fraction *= change;
    if (Math.abs(change - 1) < 1e-15) return front * fraction;
  }
  throw new DomainError('a, b', `${a}, ${b}`, 'shapes for which the continued fraction settles');
}

/**
 * Probability that a t variable lies below t.
 *
 *     P(t) = 1 − ½ I_{ν/(ν+t²)}(ν/2, ½) for t ≥ 0
 *
 * @param t  argument [-]
 * @param degreesOfFreedom  ν, whole or not [-]
 * @returns probability [-]
 * @throws DomainError when ν is not above 0
 * @source abramowitz-stegun 26.7.1
 * @valid ν > 0
 * @example studentCdf(2.0150483733, 5) → 0.95
 */
export function studentCdf(t: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0)) throw new DomainError('degreesOfFreedom', degreesOfFreedom, 'more than 0');
  const tail = incompleteBeta(degreesOfFreedom / (degreesOfFreedom + t * t), degreesOfFreedom / 2, 0.5) / 2;
  return t >= 0 ? 1 - tail : tail;
}

/**
 * Value below which a t variable lies with probability p.
 *
 * @param p  probability [-]
 * @param degreesOfFreedom  ν, whole or not; Infinity gives the normal distribution [-]
 * @returns t [-]
 * @throws DomainError when p is not between 0 and 1 or ν not above 0
 * @source abramowitz-stegun 26.7
 * @valid 0 < p < 1, ν > 0
 * @example studentQuantile(0.975, 15.78) → 2.12230985888
 */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  if (!(p > 0 && p < 1)) throw new DomainError('p', p, 'a probability above 0 and below 1');
  if (!(degreesOfFreedom > 0)) throw new DomainError('degreesOfFreedom', degreesOfFreedom, 'more than 0');
  if (p > 0.5) return -studentQuantile(1 - p, degreesOfFreedom);
  if (p === 0.5) return 0;
  // Past a hundred million the two distributions differ by less than a number can hold.
  if (degreesOfFreedom > 1e8) return normalQuantile(p);
  let low = normalQuantile(p);
  while (studentCdf(low, degreesOfFreedom) > p) low *= 2;
  return findRoot((t) => Math.log(studentCdf(t, degreesOfFreedom) / p), low, 0, 1e-14 * Math.abs(low));
}
