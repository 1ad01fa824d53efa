/** One size on its own, from readings made ready: what the calibration and the accuracy tables ask for. */
import type { Asked, Hypothesis, PerHabit } from '../src/recover/hypotheses.ts';
import { type SizeDensity, sizeDensities } from '../src/recover/posterior.ts';
import type { Ready } from '../src/recover/reading-density.ts';
import { priorWeights, probabilities, ranked, sizeEvidence } from '../src/recover/size.ts';

export interface RecoveredOne {
  readonly ranked: readonly { readonly hypothesis: Hypothesis; readonly probability: number }[];
  readonly densities: readonly SizeDensity[];
}

export function recoverOne(
  readings: readonly Ready[],
  asked: Omit<Asked, 'from' | 'to' | 'specimens'>,
  habits: PerHabit,
): RecoveredOne | undefined {
  const evidence = sizeEvidence(readings, asked);
  if (!evidence) return undefined;
  const { hypotheses } = probabilities(evidence.weighed, evidence.byHabit, habits);
  const weights = priorWeights(evidence.weighed, habits);
  return {
    ranked: ranked(evidence.weighed, hypotheses),
    densities: sizeDensities(evidence.weighed, weights, evidence.likelihood, evidence.turn),
  };
}

/** Probability that the size as made lies below a size. */
export function below({ from, step, density }: SizeDensity, size: number): number {
  let sum = 0;
  for (let i = 0; i < density.length; i++) {
    const covered = Math.min(1, Math.max(0, (size - from) / step - i + 0.5));
    if (covered === 0) break;
    sum += covered * (density[i] ?? 0) * step;
  }
  return Math.min(1, sum);
}
