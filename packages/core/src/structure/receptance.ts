/**
 * How edge and work move against each other, square to the surface cut, under a force that swings at a frequency.
 *
 * Knowledge: every mode of both sides adds its own share, weighted by how it lies to the chip and to the force.
 */
import { DomainError } from '../errors.ts';
import type { Hertz, Radian } from '../units/quantities.ts';
import type { NewtonPerMm } from './stepped-beam.ts';

/** One mode as the cut meets it. */
export interface OrientedMode {
  readonly frequency: Hertz;
  /** Modal stiffness at the cut, in the mode's own direction. */
  readonly stiffness: NewtonPerMm;
  /** Share of critical damping ζ. */
  readonly damping: number;
  /** Direction factor μ: 1 when mode, force and chip thickness lie in one line. */
  readonly direction: number;
}

export interface Receptance {
  /** [mm/N] */
  readonly re: number;
  readonly im: number;
}

/**
 * Refuses modes that cannot be.
 *
 * @throws DomainError naming the first value out of range
 */
export function checkModes(modes: readonly OrientedMode[]): void {
  if (modes.length === 0) throw new DomainError('modes', 0, 'at least one mode');
  for (const { frequency, stiffness, damping, direction } of modes) {
    if (!(frequency > 0 && frequency < Infinity)) throw new DomainError('frequency', frequency, 'more than 0 Hz');
    if (!(stiffness > 0)) throw new DomainError('stiffness', stiffness, 'more than 0 N/mm');
    if (!(damping > 0 && damping < 1)) throw new DomainError('damping', damping, 'more than 0, less than 1');
    if (!Number.isFinite(direction)) throw new DomainError('direction', direction, 'a number');
  }
}

/**
 * Oriented receptance of edge against work.
 *
 *     G(f) = Σ (μ/k) / (1 − r² + 2 i ζ r),  r = f / fₙ
 *
 * @param modes  of both sides together
 * @param frequency  of the force [Hz]
 * @returns real and imaginary part [mm/N]
 * @throws DomainError when a mode or the frequency is out of range
 * @source ALT131; methods-dynamics §2
 * @valid linear, lightly damped modes
 * @example receptance([{ frequency: 150, stiffness: 5000, damping: 0.05, direction: 1 }], 157.5) → { re: -0.000952104, im: -0.000975327 }
 */
export function receptance(modes: readonly OrientedMode[], frequency: Hertz): Receptance {
  checkModes(modes);
  if (!(frequency >= 0)) throw new DomainError('frequency', frequency, '0 Hz or more');
  return receptanceAt(modes, frequency);
}

/** As {@link receptance}, of modes known to be good. */
export function receptanceAt(modes: readonly OrientedMode[], frequency: Hertz): { re: number; im: number } {
  let [re, im] = [0, 0];
  for (const mode of modes) {
    const r = frequency / mode.frequency;
    const a = 1 - r * r;
    const b = 2 * mode.damping * r;
    const share = mode.direction / mode.stiffness / (a * a + b * b);
    re += share * a;
    im -= share * b;
  }
  return { re, im };
}

/**
 * Direction factor of a mode lying in the plane of force and chip thickness.
 *
 *     μ = cos α · cos(β − α)
 *
 * @param mode  direction of the mode against the chip thickness α [rad]
 * @param force  direction of the cutting force against the chip thickness β [rad]
 * @returns direction factor, negative when the mode digs in [-]
 * @source methods-dynamics §3
 * @valid one mode, plane motion
 * @example directionFactor(1.047198, 1.047198) → 0.500
 */
export function directionFactor(mode: Radian, force: Radian): number {
  return Math.cos(mode) * Math.cos(force - mode);
}
