/** A gauge checked at several known sizes: its error as a straight line, with the uncertainty of what the line says. */
import { DomainError } from '../errors.ts';

export interface CheckPoint {
  /** Known size (or other quantity). */
  readonly at: number;
  /** Correction found there. */
  readonly correction: number;
}

export interface CalibrationLine {
  /** Correction at the reference. */
  readonly start: number;
  readonly slope: number;
  readonly ofStart: number;
  readonly ofSlope: number;
  readonly correlation: number;
  /** Sum of squares of what the line leaves over. */
  readonly leftOver: number;
}

/**
 * Straight line of a gauge's correction by least squares.
 *
 *     b = y₁ + y₂ (t − t₀);  s² = Σ(b − line)²/(n − 2);  u and r from the normal equations
 *
 * @param points  at least three checks at different places
 * @param reference  place at which the line starts, in the unit of the places [-]
 * @returns start, slope, their standard uncertainties and correlation
 * @throws DomainError when there are fewer than three points or all at one place
 * @source GUM clause H.3
 * @valid errors of the check points all alike and independent
 * @example calibrationLine([{ at: 0, correction: 1 }, { at: 1, correction: 3 }, { at: 2, correction: 5 }], 0).slope → 2
 */
export function calibrationLine(points: readonly CheckPoint[], reference: number): CalibrationLine {
  const n = points.length;
  if (n < 3) throw new DomainError('points', n, 'at least three checks');
  const x = points.map((p) => p.at - reference);
  const sum = (f: (i: number) => number) => points.reduce((total, _, i) => total + f(i), 0);
  const X = (i: number) => x[i] ?? 0;
  const Y = (i: number) => points[i]?.correction ?? 0;
  const meanX = sum(X) / n;
  const spread = sum((i) => (X(i) - meanX) ** 2);
  if (!(spread > 0)) throw new DomainError('points', 'at one place', 'checks at different places');
  const slope = sum((i) => (X(i) - meanX) * Y(i)) / spread;
  const start = sum(Y) / n - slope * meanX;
  const leftOver = sum((i) => (Y(i) - start - slope * X(i)) ** 2);
  const variance = leftOver / (n - 2);
  const squares = sum((i) => X(i) ** 2);
  return {
    start,
    slope,
    ofStart: Math.sqrt((variance * squares) / (n * spread)),
    ofSlope: Math.sqrt(variance / spread),
    correlation: -sum(X) / Math.sqrt(n * squares),
    leftOver,
  };
}

/**
 * Standard uncertainty of the correction that the line gives at a place.
 *
 *     u² = u₁² + x² u₂² + 2 x u₁ u₂ r,  x the distance from the reference
 *
 * @param line  the line
 * @param from  distance from the reference, in the unit of the places [-]
 * @returns standard uncertainty, in the unit of the correction [-]
 * @source GUM clause H.3.4
 * @valid inside the range of the checks, and with care beyond
 * @example lineUncertainty({ start: 0, slope: 0, ofStart: 0.003, ofSlope: 0.001, correlation: 0, leftOver: 0 }, 4) → 0.005
 */
export function lineUncertainty(line: CalibrationLine, from: number): number {
  const { ofStart: a, ofSlope: b, correlation: r } = line;
  return Math.sqrt(a * a + from * from * b * b + 2 * from * a * b * r);
}
