/**
 * What tests teach: the most likely values of all elements given what was believed and what was seen, and how sure that is.
 *
 * Knowledge: the maximum of prior times likelihood by damped Newton steps with expected curvature, and the normal
 * distribution that touches it there (Laplace). An altered lathe is the same lathe but for the elements altered, which are
 * numbered a second time.
 */
import { DomainError } from '../errors.ts';
import { type Belief, coordinateOf, type ElementId, valueAt } from './elements.ts';
import type { Observation } from './observation.ts';
import { type Joint, valuesOf } from './sampling.ts';

export interface State {
  readonly id: string;
  readonly changes: readonly ElementId[];
}

/** Where each element of a state stands among all unknowns. */
export interface Numbering {
  readonly count: number;
  /** The belief behind each unknown. */
  readonly beliefs: readonly Belief[];
  /** Unknowns of a state, in the order of the beliefs; the original state when left out. */
  of(state: string | undefined): readonly number[];
}

/** Numbers the unknowns of all states. */
export function numberStates(prior: readonly Belief[], states: readonly State[]): Numbering {
  const beliefs = [...prior];
  const plain = prior.map((_, i) => i);
  const byState = new Map<string, readonly number[]>();
  for (const { id, changes } of states) {
    byState.set(
      id,
      prior.map((belief, i) => {
        if (!changes.includes(belief.id)) return i;
        beliefs.push(belief);
        return beliefs.length - 1;
      }),
    );
  }
  return {
    count: beliefs.length,
    beliefs,
    of(state) {
      if (state === undefined) return plain;
      const found = byState.get(state);
      if (!found) {
        const named = states.map((s) => s.id).join(', ');
        throw new DomainError('state', state, named === '' ? 'no state: none is named' : `one of ${named}`);
      }
      return found;
    },
  };
}

/** What is known after the tests. */
export interface Posterior {
  readonly numbering: Numbering;
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** How far each observation misses the most likely lathe, in standard deviations. */
  readonly misses: readonly { readonly id: string; readonly what: string; readonly off: number }[];
}

const steps = 40;
/** A gain of the logarithm of likelihood that is none. */
const settled = 1e-7;
/** One that would not change any decision. */
const trifle = 0.02;

/** Finds the most likely lathe. */
export function identify(prior: readonly Belief[], states: readonly State[], seen: readonly Observation[]): Posterior {
  const numbering = numberStates(prior, states);
  const { beliefs, count } = numbering;
  const centre = beliefs.map(coordinateOf);
  let at = centre.slice();
  let here = assess(numbering, prior, seen, at, centre);
  let damping = 0;
  let stalled = 0;
  let bent = curvature(numbering, prior, seen, at, centre);
  for (let step = 0; step < steps; step++) {
    const { gradient, hessian } = bent;
    const damped = hessian.map((row, i) => row.map((h, j) => (i === j ? h * (1 + damping) : h)));
    const move = solve(damped, gradient);
    const next = at.map((x, i) => x - (move[i] ?? 0));
    const there = assess(numbering, prior, seen, next, centre);
    if (there <= here + 1e-12) {
      const gain = here - there;
      [at, here] = [next, there];
      const length = Math.sqrt(move.reduce((s, m) => s + m * m, 0) / count);
      // The slopes are wanted at the place that is answered for, in any case.
      bent = curvature(numbering, prior, seen, at, centre);
      if (gain < settled && length < 1e-3) break;
      // Where a limit has a kink the steps only shuffle about it, and what they gain is not worth having.
      stalled = gain < trifle && damping > 0.1 ? stalled + 1 : 0;
      if (stalled === 2) break;
      damping = damping < 1e-3 ? 0 : damping / 5;
    } else {
      damping = damping === 0 ? 1e-2 : damping * 6;
      if (damping > 1e6) break;
    }
  }
  const { hessian } = bent;
  return {
    numbering,
    mean: at,
    covariance: inverse(hessian),
    misses: seen.map((o) => ({
      id: o.id,
      what: o.what,
      off: Math.abs(o.loss(o.predict(valuesOf({ beliefs: prior }, pick(numbering, o, at)))).off),
    })),
  };
}

function pick(numbering: Numbering, o: Pick<Observation, 'state'>, at: readonly number[]): number[] {
  return numbering.of(o.state).map((i) => at[i] ?? 0);
}

function assess(
  numbering: Numbering,
  prior: readonly Belief[],
  seen: readonly Observation[],
  at: readonly number[],
  centre: readonly number[],
): number {
  let sum = 0;
  numbering.beliefs.forEach((b, i) => {
    sum += (((at[i] ?? 0) - (centre[i] ?? 0)) / b.spread) ** 2 / 2;
  });
  for (const o of seen) sum += o.loss(o.predict(valuesOf({ beliefs: prior }, pick(numbering, o, at)))).value;
  return Number.isFinite(sum) ? sum : Infinity;
}

/** Step for differences, in the coordinates of the beliefs. */
const difference = 1e-3;

/** How a prediction changes with each unknown. */
export function sensitivity(
  numbering: Numbering,
  prior: readonly Belief[],
  o: Pick<Observation, 'state' | 'depends' | 'predict'>,
  at: readonly number[],
): { readonly prediction: number; readonly slopes: ReadonlyMap<number, number> } {
  const places = numbering.of(o.state);
  const here = places.map((i) => at[i] ?? 0);
  const prediction = o.predict(valuesOf({ beliefs: prior }, here));
  const slopes = new Map<number, number>();
  prior.forEach((belief, i) => {
    if (!o.depends.includes(belief.id)) return;
    const h = difference * belief.spread * 10;
    const moved = (by: number) => {
      const there = here.slice();
      there[i] = (there[i] ?? 0) + by;
      return o.predict(valuesOf({ beliefs: prior }, there));
    };
    const place = places[i];
    if (place !== undefined) slopes.set(place, (moved(h) - moved(-h)) / (2 * h));
  });
  return { prediction, slopes };
}

/** Slope and curvature of a loss that moves nothing. */
const silent = 1e-6;

function curvature(
  numbering: Numbering,
  prior: readonly Belief[],
  seen: readonly Observation[],
  at: readonly number[],
  centre: readonly number[],
) {
  const { count, beliefs } = numbering;
  const gradient = beliefs.map((b, i) => ((at[i] ?? 0) - (centre[i] ?? 0)) / b.spread ** 2);
  const hessian = beliefs.map((b, i) => Array.from({ length: count }, (_, j) => (i === j ? 1 / b.spread ** 2 : 0)));
  for (const o of seen) {
    const loss = o.loss(o.predict(valuesOf({ beliefs: prior }, pick(numbering, o, at))));
    // A quiet cut far from its limit says nothing, and its slopes would cost the most.
    if (Math.abs(loss.slope) < silent && loss.curvature < silent) continue;
    const { slopes } = sensitivity(numbering, prior, o, at);
    for (const [i, a] of slopes) {
      gradient[i] = (gradient[i] ?? 0) + loss.slope * a;
      for (const [j, b] of slopes) {
        const row = hessian[i];
        if (row) row[j] = (row[j] ?? 0) + loss.curvature * a * b;
      }
    }
  }
  return { gradient, hessian };
}

/** Lower triangular factor of a positive definite matrix. */
export function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const l = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]?.[j] ?? 0;
      for (let k = 0; k < j; k++) sum -= (l[i]?.[k] ?? 0) * (l[j]?.[k] ?? 0);
      const row = l[i];
      if (!row) continue;
      if (i === j) {
        if (!(sum > 0)) throw new Error('what is known of the lathe lost its footing');
        row[j] = Math.sqrt(sum);
      } else row[j] = sum / (l[j]?.[j] ?? 1);
    }
  }
  return l;
}

function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const l = cholesky(matrix);
  const n = right.length;
  const y = right.slice();
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) y[i] = (y[i] ?? 0) - (l[i]?.[k] ?? 0) * (y[k] ?? 0);
    y[i] = (y[i] ?? 0) / (l[i]?.[i] ?? 1);
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) y[i] = (y[i] ?? 0) - (l[k]?.[i] ?? 0) * (y[k] ?? 0);
    y[i] = (y[i] ?? 0) / (l[i]?.[i] ?? 1);
  }
  return y;
}

function inverse(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const columns = Array.from({ length: n }, (_, j) =>
    solve(
      matrix,
      Array.from({ length: n }, (_, i) => (i === j ? 1 : 0)),
    ),
  );
  return Array.from({ length: n }, (_, i) => columns.map((column) => column[i] ?? 0));
}

/** What is believed of one state after the tests, ready for draws. */
export function jointOf(prior: readonly Belief[], posterior: Posterior, state: string | undefined): Joint {
  const places = posterior.numbering.of(state);
  const covariance = places.map((i) => places.map((j) => posterior.covariance[i]?.[j] ?? 0));
  return { beliefs: prior, mean: places.map((i) => posterior.mean[i] ?? 0), factor: cholesky(covariance) };
}

/** Bounds that hold nine in ten, of one unknown. */
export function interval(
  belief: Belief,
  mean: number,
  deviation: number,
): { low: number; middle: number; high: number } {
  const z = 1.6449;
  return {
    low: valueAt(belief, mean - z * deviation),
    middle: valueAt(belief, mean),
    high: valueAt(belief, mean + z * deviation),
  };
}
