/** The spread of a result whose inputs are spread in different ways, by drawing them: for results that are not near enough normal. */
import { DomainError } from '../errors.ts';
import { seeded } from '../numerics/seeded.ts';

/** What is known of one input. */
export type Spread =
  /** Mean of readings or a certificate: normal, or with few degrees of freedom the wider t. */
  | {
      readonly shape: 'normal';
      readonly value: number;
      readonly uncertainty: number;
      readonly degreesOfFreedom?: number | undefined;
    }
  /** Anywhere within limits alike; with `blur` the limits themselves are known only to so much. */
  | {
      readonly shape: 'rectangular';
      readonly value: number;
      readonly half: number;
      readonly blur?: number | undefined;
    }
  /** Near the middle rather than at the limits. */
  | { readonly shape: 'triangular'; readonly value: number; readonly half: number }
  /** To and fro between limits, as a temperature that is switched. */
  | { readonly shape: 'arcsine'; readonly value: number; readonly half: number };

export interface SpreadResult {
  readonly value: number;
  readonly uncertainty: number;
  /** Leaves out as much below as above. */
  readonly low: number;
  readonly high: number;
  /** Shortest interval that holds the share. */
  readonly shortest: { readonly low: number; readonly high: number };
}

/**
 * Distribution of a result by drawing its inputs.
 *
 *     y = f(x₁ … xₙ), each xᵢ from its own distribution; u = standard deviation of y; ends = quantiles of y
 *
 * @param formula  the result as a function of the inputs
 * @param inputs  what is known of each
 * @param share  share that the intervals are to hold [-]
 * @param trials  how many are drawn [-]
 * @returns mean, standard deviation, and the intervals, in the unit of the result
 * @throws DomainError when the share is not between 0 and 1, there are fewer than 1000 trials or the formula gives no finite value
 * @source JCGM101 clause 7
 * @valid independent inputs; ends are good to about u/√trials times three
 * @example spread(([a = 0, b = 0]) => a + b, [{ shape: 'normal', value: 3, uncertainty: 0 }, { shape: 'rectangular', value: 1, half: 0 }], 0.95, 1000).value → 4
 */
export function spread(
  formula: (values: readonly number[]) => number,
  inputs: readonly Spread[],
  share: number,
  trials: number,
): SpreadResult {
  if (!(share > 0 && share < 1)) throw new DomainError('share', share, 'a share above 0 and below 1');
  if (!(trials >= 1000)) throw new DomainError('trials', trials, '1000 or more');
  const random = seeded(101);
  const results = new Float64Array(trials);
  let [mean, squares] = [0, 0];
  for (let i = 0; i < trials; i++) {
    const y = formula(inputs.map((input) => draw(input, random)));
    if (!Number.isFinite(y)) throw new DomainError('formula', y, 'a finite result for all that the inputs may be');
    results[i] = y;
    const before = y - mean;
    mean += before / (i + 1);
    squares += before * (y - mean);
  }
  results.sort();
  const at = (k: number) => results[Math.min(trials - 1, Math.max(0, k))] ?? mean;
  const held = Math.round(share * trials);
  const below = Math.round((trials - held) / 2);
  let first = 0;
  for (let k = 0; k + held < trials; k++) if (at(k + held) - at(k) < at(first + held) - at(first)) first = k;
  return {
    value: mean,
    uncertainty: Math.sqrt(squares / (trials - 1)),
    low: at(below),
    high: at(below + held),
    shortest: { low: at(first), high: at(first + held) },
  };
}

function draw(input: Spread, random: () => number): number {
  switch (input.shape) {
    case 'normal': {
      const { value, uncertainty, degreesOfFreedom: nu } = input;
      const turn = Math.cos(2 * Math.PI * random());
      const v = 1 - random();
      // By Bailey's polar method for t, which goes over into that of Box and Muller for the normal.
      const radius = nu === undefined ? Math.sqrt(-2 * Math.log(v)) : Math.sqrt(nu * (v ** (-2 / nu) - 1));
      return value + uncertainty * radius * turn;
    }
    case 'rectangular': {
      const half = input.half + (input.blur ?? 0) * (2 * random() - 1);
      return input.value + half * (2 * random() - 1);
    }
    case 'triangular':
      return input.value + input.half * (random() + random() - 1);
    case 'arcsine':
      return input.value + input.half * Math.sin(2 * Math.PI * random());
  }
}
