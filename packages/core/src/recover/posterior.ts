/** From likelihood and hypotheses to probabilities, sizes as made and their intervals. */
import type { Mm } from '../units/quantities.ts';
import type { Hypothesis, PerHabit } from './hypotheses.ts';
import { areaBetween, type FeatureLikelihood, type SpecimenLikelihood } from './likelihood.ts';

/** 1 for a shaft-like feature, −1 where all sizes are worked negative. */
export type Turn = 1 | -1;

/** Each hypothesis with the evidence for it, prior left out. */
export interface Weighed {
  readonly hypothesis: Hypothesis;
  /** ∫ over shared error and sizes within the limits, to a common scale. */
  readonly evidence: number;
}

/**
 * Evidence for every hypothesis: Σ over the shared gauge error of Π over specimens of the mean likelihood within the limits.
 */
export function weighHypotheses(
  hypotheses: readonly Hypothesis[],
  likelihood: FeatureLikelihood,
  turn: Turn,
): readonly Weighed[] {
  return hypotheses.map((hypothesis) => {
    const [low, high] = turned(hypothesis, turn);
    let evidence = 0;
    likelihood.biasWeights.forEach((weight, b) => {
      let all = weight;
      for (const s of likelihood.specimens) all *= meanWithin(s, b, low, high);
      evidence += all;
    });
    return { hypothesis, evidence };
  });
}

function turned({ min, max }: { min: Mm; max: Mm }, turn: Turn): readonly [Mm, Mm] {
  return turn === 1 ? [min, max] : [-max, -min];
}

function meanWithin(s: SpecimenLikelihood, bias: number, low: Mm, high: Mm): number {
  const areas = s.areas[bias];
  return areas ? areaBetween(areas, s.grid, low, high) / (high - low) : 0;
}

/** Evidence of a whole feature under each habit. */
export function evidenceByHabit(weighed: readonly Weighed[]): PerHabit {
  const sum = (i: 0 | 1 | 2 | 3) => weighed.reduce((total, w) => total + w.evidence * w.hypothesis.prior[i], 0);
  return [sum(0), sum(1), sum(2), sum(3)];
}

/** Sizes and their density, for drawing and for intervals. */
export interface SizeDensity {
  readonly specimen: string;
  readonly from: Mm;
  readonly step: Mm;
  /** Adds up to 1/step. */
  readonly density: Float64Array;
}

/**
 * Density of the size as made of each specimen: every hypothesis spreads its share over its limits, the readings weigh it there.
 */
export function sizeDensities(
  weighed: readonly Weighed[],
  weights: readonly number[],
  likelihood: FeatureLikelihood,
  turn: Turn,
): SizeDensity[] {
  const { specimens, biasWeights } = likelihood;
  const densities = specimens.map(({ grid }) => new Float64Array(grid.count));
  biasWeights.forEach((biasWeight, b) => {
    const within = specimens.map(({ grid }) => new Float64Array(grid.count));
    weighed.forEach(({ hypothesis, evidence }, i) => {
      const weight = weights[i] ?? 0;
      if (weight === 0 || evidence === 0) return;
      const [low, high] = turned(hypothesis, turn);
      const means = specimens.map((s) => meanWithin(s, b, low, high));
      const others = productsOfOthers(means);
      specimens.forEach(({ grid }, k) => {
        const share = (biasWeight * weight * (others[k] ?? 0)) / (high - low);
        const into = within[k];
        if (share > 0 && into) addBetween(into, grid.from, grid.step, low, high, share);
      });
    });
    specimens.forEach(({ grid, byBias }, k) => {
      const [density, spread, values] = [densities[k], within[k], byBias[b]];
      if (!density || !spread || !values) return;
      for (let i = 0; i < grid.count; i++) density[i] = (density[i] ?? 0) + (spread[i] ?? 0) * (values[i] ?? 0);
    });
  });
  return specimens.map(({ specimen, grid }, k) =>
    normalized(specimen, grid.from, grid.step, densities[k] ?? new Float64Array(grid.count), turn),
  );
}

/** For each value the product of all the others, none divided by nought. */
function productsOfOthers(values: readonly number[]): number[] {
  const products = new Array<number>(values.length).fill(1);
  let [before, after] = [1, 1];
  for (let i = 0, j = values.length - 1; i < values.length; i++, j--) {
    products[i] = (products[i] ?? 1) * before;
    before *= values[i] ?? 1;
    products[j] = (products[j] ?? 1) * after;
    after *= values[j] ?? 1;
  }
  return products;
}

/** Adds a share to every cell between two sizes, to the cells at the ends as far as they are covered. */
function addBetween(into: Float64Array, from: Mm, step: Mm, low: Mm, high: Mm, share: number): void {
  const a = (low - from) / step + 0.5;
  const b = (high - from) / step + 0.5;
  for (let i = Math.max(0, Math.floor(a)); i < Math.min(into.length, Math.ceil(b)); i++)
    into[i] = (into[i] ?? 0) + share * (Math.min(b, i + 1) - Math.max(a, i));
}

function normalized(specimen: string, from: Mm, step: Mm, values: Float64Array, turn: Turn): SizeDensity {
  const total = values.reduce((a, b) => a + b, 0) * step;
  const density = total > 0 ? values.map((v) => v / total) : values.fill(1 / (values.length * step));
  if (turn === 1) return { specimen, from, step, density };
  return { specimen, from: -(from + (values.length - 1) * step), step, density: density.toReversed() };
}

/** Size below which the size as made lies with probability p. */
export function quantile({ from, step, density }: SizeDensity, p: number): Mm {
  let sum = 0;
  for (let i = 0; i < density.length; i++) {
    const share = (density[i] ?? 0) * step;
    if (sum + share >= p && share > 0) return from + (i - 0.5 + (p - sum) / share) * step;
    sum += share;
  }
  return from + (density.length - 0.5) * step;
}

export interface Interval {
  readonly low: Mm;
  readonly high: Mm;
}

/** Median with the intervals that hold half and 95 % of the probability. */
export function summary(density: SizeDensity): { median: Mm; half: Interval; wide: Interval } {
  return {
    median: quantile(density, 0.5),
    half: { low: quantile(density, 0.25), high: quantile(density, 0.75) },
    wide: { low: quantile(density, 0.025), high: quantile(density, 0.975) },
  };
}
