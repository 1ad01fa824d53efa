/**
 * Does a measured size conform? Decided with the uncertainty of the measurement.
 */
import { DomainError } from '../errors.ts';
import { normalCdf } from '../numerics/normal.ts';
import type { Mm } from '../units/quantities.ts';
import type { Decision } from './inspect-result.ts';

/**
 * Probability that the true size lies within its limits.
 *
 *     p = Φ((T_U − y)/u) − Φ((T_L − y)/u)
 *
 * @param value  measured size [mm]
 * @param uncertainty  its standard uncertainty [mm]
 * @param min  lower limit [mm]
 * @param max  upper limit [mm]
 * @returns probability [-]
 * @throws DomainError when the uncertainty is not above zero
 * @source JCGM106 clause 7.4
 * @valid errors normal, nothing known of the process beforehand
 * @example conformityProbability(13.6, 1.8, 12.5, 16.3) → 0.6626
 */
export function conformityProbability(value: Mm, uncertainty: Mm, min: Mm, max: Mm): number {
  if (!(uncertainty > 0)) throw new DomainError('uncertainty', uncertainty, 'above 0 mm');
  return normalCdf((max - value) / uncertainty) - normalCdf((min - value) / uncertainty);
}

/**
 * Half the band by which the limits are drawn in, so that at most one part in twenty accepted at the very edge is out.
 *
 *     w = 1.645 u  (one limit in play);  95 % by ISO 14253-1
 *
 * @param uncertainty  standard uncertainty [mm]
 * @returns guard band at each limit [mm]
 * @source ISO14253-1 clause 5; JCGM106
 * @valid tolerance at least about four times the uncertainty; below that no acceptance zone is left
 * @example guardBand(0.003) → 0.00493
 */
export function guardBand(uncertainty: Mm): Mm {
  return 1.6449 * uncertainty;
}

/**
 * The three answers of the decision rule: conformity proved, non-conformity proved, or neither.
 * When the band is so wide that both limits are in play, conformity needs 95 % over both tails.
 */
export function decide(value: Mm, uncertainty: Mm, min: Mm, max: Mm): Decision {
  const band = guardBand(uncertainty);
  if (value < min - band || value > max + band) return 'does not conform';
  if (conformityProbability(value, uncertainty, min, max) >= 0.95) return 'conforms';
  return 'cannot be decided';
}
