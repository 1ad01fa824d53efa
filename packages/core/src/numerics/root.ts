/**
 * Where a function crosses zero, and where it is least, on a bracket.
 */
import { DomainError } from '../errors.ts';

/**
 * Root of a continuous function inside a bracket, by Brent's method: inverse quadratic steps guarded by bisection.
 *
 * @param f  the function
 * @param low  one end of the bracket
 * @param high  the other end; f has the other sign there
 * @param tolerance  how close to come, in units of the argument
 * @returns the argument where f is zero
 * @throws DomainError when f has the same sign at both ends, or is not a number somewhere
 * @source brent-1973 ch. 4
 * @valid continuous functions with a change of sign
 * @example findRoot((x) => x * x - 2, 0, 2) → 1.414213562
 */
export function findRoot(f: (x: number) => number, low: number, high: number, tolerance = 1e-12): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (!(fa * fb <= 0)) throw new DomainError('bracket', `f(${low}) = ${fa}, f(${high}) = ${fb}`, 'a change of sign');
  let [c, fc] = [a, fa];
  let step = b - a;
  let previous = step;
  for (let i = 0; i < 200; i++) {
    if (fb * fc > 0) {
      [c, fc] = [a, fa];
      previous = step = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const enough = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= enough || fb === 0) return b;
    if (Math.abs(previous) >= enough && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const [u, r] = [fa / fc, fb / fc];
        p = s * (2 * half * u * (u - r) - (b - a) * (r - 1));
        q = (u - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      p = Math.abs(p);
      if (2 * p < Math.min(3 * half * q - Math.abs(enough * q), Math.abs(previous * q))) {
        previous = step;
        step = p / q;
      } else previous = step = half;
    } else previous = step = half;
    [a, fa] = [b, fb];
    b += Math.abs(step) > enough ? step : Math.sign(half) * enough;
    fb = f(b);
    if (Number.isNaN(fb)) throw new DomainError('f', `not a number at ${b}`, 'a number everywhere in the bracket');
  }
  return b;
}

/**
 * Where a function with one valley is least, by golden section.
 *
 * @param f  the function
 * @param low  one end of the valley
 * @param high  the other end
 * @param tolerance  how close to come, in units of the argument
 * @returns the argument where f is least
 * @throws DomainError when the interval is empty
 * @source brent-1973 ch. 5
 * @valid functions with a single minimum in the interval; near it the argument is known to about √ε of its size
 * @example goldenSection((x) => (x - 1.2) ** 2, 0, 3, 1e-7) → 1.2
 */
export function goldenSection(f: (x: number) => number, low: number, high: number, tolerance = 1e-8): number {
  if (!(low < high)) throw new DomainError('interval', `${low} to ${high}`, 'low below high');
  const shorter = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [x, y] = [b - shorter * (b - a), a + shorter * (b - a)];
  let [fx, fy] = [f(x), f(y)];
  while (b - a > tolerance && x < y) {
    if (fx < fy) {
      [b, y, fy] = [y, x, fx];
      x = b - shorter * (b - a);
      fx = f(x);
    } else {
      [a, x, fx] = [x, y, fy];
      y = a + shorter * (b - a);
      fy = f(y);
    }
  }
  return (a + b) / 2;
}
