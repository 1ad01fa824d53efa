/**
 * Area under a curve, to a stated accuracy.
 */
import { DomainError } from '../src/errors.ts';

/** Places on (0, 1], and weights of the 15-point Kronrod and the 7-point Gauss rule; even places belong to Kronrod alone. */
const places = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
] as const;
const kronrod = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
] as const;
const gauss = [0.1294849661688697, 0.27970539148927664, 0.3818300505051189, 0.4179591836734694] as const;

interface Panel {
  readonly from: number;
  readonly to: number;
  readonly area: number;
  readonly error: number;
}

function panel(f: (x: number) => number, from: number, to: number): Panel {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  let fine = 0;
  let coarse = 0;
  places.forEach((place, i) => {
    const sum = place === 0 ? f(middle) : f(middle - half * place) + f(middle + half * place);
    if (!Number.isFinite(sum)) throw new DomainError('f', sum, `a finite value between ${from} and ${to}`);
    fine += (kronrod[i] ?? 0) * sum;
    if (i % 2 === 1) coarse += (gauss[(i - 1) / 2] ?? 0) * sum;
  });
  return { from, to, area: half * fine, error: Math.abs(half * (fine - coarse)) };
}

/**
 * Definite integral by adaptive Gauss–Kronrod quadrature: the worst stretch is halved until the whole is good enough.
 *
 * @param f  the function
 * @param from  lower limit
 * @param to  upper limit
 * @param tolerance  error allowed, relative to the area where it is above 1
 * @returns the area
 * @throws DomainError when f is not finite somewhere, or 2000 stretches are not enough
 * @source kronrod-15
 * @valid finite limits; a spike far narrower than the interval must be given its own limits
 * @example integrate((x) => x * x, 0, 3) → 9
 */
export function integrate(f: (x: number) => number, from: number, to: number, tolerance = 1e-10): number {
  if (!(Number.isFinite(from) && Number.isFinite(to)))
    throw new DomainError('limits', `${from} to ${to}`, 'finite limits');
  if (from === to) return 0;
  const panels: Panel[] = [panel(f, from, to)];
  for (let i = 0; i < 2000; i++) {
    const area = panels.reduce((sum, p) => sum + p.area, 0);
    const error = panels.reduce((sum, p) => sum + p.error, 0);
    if (error <= tolerance * Math.max(1, Math.abs(area))) return area;
    let worst = 0;
    panels.forEach((p, j) => {
      if (p.error > (panels[worst]?.error ?? 0)) worst = j;
    });
    const [bad] = panels.splice(worst, 1);
    if (!bad) return area;
    const middle = (bad.from + bad.to) / 2;
    panels.push(panel(f, bad.from, middle), panel(f, middle, bad.to));
  }
  throw new DomainError('f', 'too rough', `a function smooth enough to integrate to ${tolerance}`);
}
