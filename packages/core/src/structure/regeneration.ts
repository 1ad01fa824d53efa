/**
 * How broad a chip may be before it sings: the edge cuts over the waves it left a turn before, and they grow.
 *
 * Knowledge: the regenerative law with one edge and a delay of one turn, and the rubbing of the flank on the waves, which
 * damps the more the slower the cut. At a limit the motion neither grows nor dies, so
 *
 *     1/G(ω) = −b Kf [(1 − e^(−iωT)) + iω C/(Kf v)]
 *
 * With 1/G = P + iQ, φ = ωT and γ = ωC/(Kf v), for every ω with P < 0 the phases φ that can be are those with
 * sin φ + (Q/P) cos φ = Q/P − γ, and the breadth belonging to them is b = −P / (Kf (1 − cos φ)). Without rubbing that is
 * b = −1/(2 Kf Re G).
 */
import { DomainError } from '../errors.ts';
import type { Hertz, MetrePerMinute, Mm, MPa } from '../units/quantities.ts';

/** What the cut feeds back. */
export interface RegenerativeCut {
  /** Kf: by how much the force square to the edge grows for each mm of breadth and each mm of chip thickness. */
  readonly chipStiffness: MPa;
  /** C: rubbing force for each mm of breadth when the edge moves as fast as the cut; 0 when left out [N/mm]. */
  readonly processDamping?: number | undefined;
  /** Needed with `processDamping`. */
  readonly cuttingSpeed?: MetrePerMinute | undefined;
}

export interface StabilityLimit {
  /** Broadest chip that stays quiet; infinite when none sings. */
  readonly width: Mm;
  /** At which it would sing; 0 when none does. */
  readonly frequency: Hertz;
}

export const quiet: StabilityLimit = { width: Infinity, frequency: 0 };

/**
 * Time that stands for the rubbing.
 *
 *     τ = C / (Kf v)
 *
 * @param cut  chip stiffness, rubbing and cutting speed
 * @returns time, 0 without rubbing [s]
 * @throws DomainError when a value is out of range, or the speed is missing
 * @source KUR for the form; methods-dynamics §4
 * @valid small vibrations
 * @example rubbingTimeOf({ chipStiffness: 2000, processDamping: 300, cuttingSpeed: 30 }) → 0.00030
 */
export function rubbingTimeOf(cut: RegenerativeCut): number {
  const { chipStiffness, processDamping = 0, cuttingSpeed } = cut;
  if (!(chipStiffness > 0)) throw new DomainError('chipStiffness', chipStiffness, 'more than 0 MPa');
  if (!(processDamping >= 0)) throw new DomainError('processDamping', processDamping, '0 N/mm or more');
  if (processDamping === 0) return 0;
  if (cuttingSpeed === undefined || !(cuttingSpeed > 0))
    throw new DomainError('cuttingSpeed', cuttingSpeed, 'more than 0 m/min, since rubbing depends on it');
  return processDamping / (chipStiffness * ((cuttingSpeed * 1000) / 60));
}
