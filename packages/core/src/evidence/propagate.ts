/** The uncertainty of a result worked out from several inputs: the law of propagation, and the coverage factor that belongs to it. */
import { DomainError } from '../errors.ts';
import { studentQuantile } from '../numerics/student-t.ts';

/** One input of a measurement. */
export interface Input {
  readonly value: number;
  /** Standard uncertainty. */
  readonly uncertainty: number;
  /** Degrees of freedom of that uncertainty; left out: known surely. */
  readonly degreesOfFreedom?: number | undefined;
}

/** Correlation of two inputs, by their places. */
export interface Correlation {
  readonly first: number;
  readonly second: number;
  readonly r: number;
}

export interface Propagated {
  readonly value: number;
  readonly uncertainty: number;
  readonly degreesOfFreedom: number;
  /** What each input contributes, with its sign. */
  readonly contributions: readonly number[];
}

/**
 * Result and standard uncertainty of a formula of measured inputs.
 *
 *     u² = Σ (cᵢ uᵢ)² + 2 Σ Σ cᵢ cⱼ uᵢ uⱼ rᵢⱼ,  cᵢ = ∂f/∂xᵢ by central differences of one uncertainty
 *     ν = u⁴ / Σ ((cᵢ uᵢ)⁴ / νᵢ)
 *
 * @param formula  the result as a function of the inputs
 * @param inputs  values with their standard uncertainties
 * @param correlations  pairs that move together, by place in `inputs`
 * @returns value, standard uncertainty, effective degrees of freedom and the contributions
 * @throws DomainError when the formula gives no finite value or the correlations are impossible
 * @source GUM clauses 5 and G.4
 * @valid a formula nearly straight over one uncertainty; where an input's slope is nought by chance add {@link productOfSmall}
 * @example propagate(([a = 0, b = 0]) => a * b, [{ value: 10, uncertainty: 0.1 }, { value: 5, uncertainty: 0.1 }], []).uncertainty → 1.118
 */
export function propagate(
  formula: (values: readonly number[]) => number,
  inputs: readonly Input[],
  correlations: readonly Correlation[] = [],
): Propagated {
  const values = inputs.map((i) => i.value);
  const at = (k: number, by: number) => formula(values.map((v, i) => (i === k ? v + by : v)));
  const contributions = inputs.map(({ uncertainty: u }, k) => (u === 0 ? 0 : (at(k, u) - at(k, -u)) / 2));
  const c = (k: number) => contributions[k] ?? 0;
  const own = contributions.reduce((sum, v) => sum + v * v, 0);
  const shared = correlations.reduce((sum, { first, second, r }) => sum + 2 * r * c(first) * c(second), 0);
  const value = formula(values);
  const variance = own + shared;
  if (!Number.isFinite(value) || !(variance >= -1e-12 * own))
    throw new DomainError('formula', value, 'a finite result and correlations that can be');
  const uncertainty = Math.sqrt(Math.max(0, variance));
  const weights = inputs.reduce((sum, { degreesOfFreedom: nu }, k) => sum + (nu === undefined ? 0 : c(k) ** 4 / nu), 0);
  return {
    value,
    uncertainty,
    degreesOfFreedom: weights > 0 ? uncertainty ** 4 / weights : Number.POSITIVE_INFINITY,
    contributions,
  };
}

/**
 * Second-order share of a product of two inputs whose estimates are nought.
 *
 *     u = |s| u₁ u₂
 *
 * @param scale  factor before the product [-]
 * @param first  standard uncertainty of one input [-]
 * @param second  standard uncertainty of the other [-]
 * @returns standard uncertainty to be added by squares [-]
 * @source GUM clause H.1.7
 * @valid both estimates near nought beside their uncertainties
 * @example productOfSmall(50_000_623, 5.8e-7, 0.41) → 11.89
 */
export function productOfSmall(scale: number, first: number, second: number): number {
  return Math.abs(scale) * first * second;
}

/**
 * Factor that makes a standard uncertainty one that covers a wanted share.
 *
 *     k = t_{(1+p)/2}(ν), ν rounded down
 *
 * @param share  share to be covered, 0.95 for 95 % [-]
 * @param degreesOfFreedom  effective degrees of freedom [-]
 * @returns coverage factor [-]
 * @throws DomainError when the share is not between 0 and 1 or there is less than one degree of freedom
 * @source GUM clause G.6.4
 * @valid a result near enough normal; not where one rectangular input outweighs the rest
 * @example coverageFactor(0.95, 19.04) → 2.09302
 */
export function coverageFactor(share: number, degreesOfFreedom: number): number {
  if (!(share > 0 && share < 1)) throw new DomainError('share', share, 'a share above 0 and below 1');
  if (!(degreesOfFreedom >= 1)) throw new DomainError('degreesOfFreedom', degreesOfFreedom, 'at least 1');
  const nu = Number.isFinite(degreesOfFreedom) ? Math.floor(degreesOfFreedom) : Number.POSITIVE_INFINITY;
  return studentQuantile((1 + share) / 2, nu);
}

/**
 * Factor for two rectangular inputs that outweigh everything else: their sum is a trapezoid.
 *
 *     k = (1 − √((1 − p)(1 − β²))) / √((1 + β²)/6),  β = |a₁ − a₂|/(a₁ + a₂)
 *
 * @param share  share to be covered [-]
 * @param one  half width of one [-]
 * @param other  half width of the other, 0 for one rectangle alone [-]
 * @returns coverage factor [-]
 * @throws DomainError when the share is not between 0 and 1 or a half width is below 0
 * @source EA402 S10
 * @valid the flat part of the trapezoid does not hold more than the share
 * @example trapezoidFactor(0.95, 50, 25) → 1.834
 */
export function trapezoidFactor(share: number, one: number, other: number): number {
  if (!(share > 0 && share < 1)) throw new DomainError('share', share, 'a share above 0 and below 1');
  if (!(one >= 0 && other >= 0 && one + other > 0))
    throw new DomainError('half widths', one + other, 'half widths above 0');
  const beta = Math.abs(one - other) / (one + other);
  // One rectangle alone: its own share, the limit of the formula.
  if (beta === 1) return share * Math.sqrt(3);
  return (1 - Math.sqrt((1 - share) * (1 - beta * beta))) / Math.sqrt((1 + beta * beta) / 6);
}
