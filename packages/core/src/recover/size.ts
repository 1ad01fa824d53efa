/** One size: what it was meant to be and how it was made, before its neighbours are heard. */
import type { Mm } from '../units/quantities.ts';
import { type Asked, type Hypothesis, habits, hypothesesFor, type PerHabit } from './hypotheses.ts';
import { type FeatureLikelihood, featureLikelihood } from './likelihood.ts';
import { evidenceByHabit, type Turn, type Weighed, weighHypotheses } from './posterior.ts';
import type { Ready } from './reading-density.ts';

export interface SizeEvidence {
  readonly turn: Turn;
  readonly likelihood: FeatureLikelihood;
  readonly weighed: readonly Weighed[];
  /** Probability of the readings under each habit, up to a factor. */
  readonly byHabit: PerHabit;
}

/** Evidence of one size; undefined when no reading is of use. */
export function sizeEvidence(
  readings: readonly Ready[],
  asked: Omit<Asked, 'from' | 'to' | 'specimens'>,
): SizeEvidence | undefined {
  const likelihood = featureLikelihood(readings);
  if (!likelihood) return undefined;
  const turn: Turn = asked.isShaft ? 1 : -1;
  const ends = likelihood.specimens.flatMap(({ grid }) => [grid.from, grid.from + (grid.count - 1) * grid.step]);
  const [from, to] = turn === 1 ? [Math.min(...ends), Math.max(...ends)] : [-Math.max(...ends), -Math.min(...ends)];
  const hypotheses = hypothesesFor({ ...asked, from, to, specimens: likelihood.specimens.length });
  const weighed = weighHypotheses(hypotheses, likelihood, turn);
  return { turn, likelihood, weighed, byHabit: evidenceByHabit(weighed) };
}

/** Probability of each hypothesis, and of each habit, once a prior over habits is given. */
export function probabilities(
  weighed: readonly Weighed[],
  byHabit: PerHabit,
  habitWeights: PerHabit,
): { hypotheses: number[]; habits: PerHabit } {
  // With no likely hypothesis at all the priors stand: nothing is divided by nought.
  const total = habits.reduce((sum, _, i) => sum + (habitWeights[i] ?? 0) * (byHabit[i] ?? 0), 0);
  if (!(total > 0)) return { hypotheses: weighed.map(() => 1 / Math.max(1, weighed.length)), habits: habitWeights };
  const perHabit = habitWeights.map((w) => w / total);
  const hypotheses = weighed.map(({ evidence, hypothesis }) =>
    hypothesis.prior.reduce((sum, p, i) => sum + p * evidence * (perHabit[i] ?? 0), 0),
  );
  const [a = 0, b = 0, c = 0, d = 0] = habitWeights.map((w, i) => (w * (byHabit[i] ?? 0)) / total);
  return { hypotheses, habits: [a, b, c, d] };
}

/** Prior weight of each hypothesis under habits weighed so; what {@link sizeDensities} wants. */
export function priorWeights(weighed: readonly Weighed[], habitWeights: PerHabit): number[] {
  return weighed.map(({ hypothesis }) => hypothesis.prior.reduce((sum, p, i) => sum + p * (habitWeights[i] ?? 0), 0));
}

/** Hypotheses of the same words together, the likeliest first. */
export function ranked(
  weighed: readonly Weighed[],
  chances: readonly number[],
): { hypothesis: Hypothesis; probability: number }[] {
  const together = new Map<string, { hypothesis: Hypothesis; probability: number; best: number }>();
  weighed.forEach(({ hypothesis }, i) => {
    const probability = chances[i] ?? 0;
    const known = together.get(hypothesis.written);
    if (!known) together.set(hypothesis.written, { hypothesis, probability, best: probability });
    else {
      const isBetter = probability > known.best;
      together.set(hypothesis.written, {
        hypothesis: isBetter ? hypothesis : known.hypothesis,
        probability: known.probability + probability,
        best: Math.max(known.best, probability),
      });
    }
  });
  return [...together.values()]
    .map(({ hypothesis, probability }) => ({ hypothesis, probability }))
    .toSorted((a, b) => b.probability - a.probability);
}

/** Largest size that still makes sense as a diameter of a turned part. */
export const largestSensible: Mm = 3000;
