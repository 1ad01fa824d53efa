/**
 * What the lathe's drive gives: its speeds, and the power at each of them.
 */
import { DomainError } from '../errors.ts';
import type { Rpm, Watt } from '../units/quantities.ts';
import type { Lathe } from './schema.ts';

/** Steps into which a stepless drive is divided for choosing a speed. */
const stepsOfRange = 16;

/**
 * Spindle speeds to choose from, slowest first; a stepless drive in sixteen even ratios.
 *
 *     n_i = from · (to / from)^(i / 15)
 *
 * @param lathe  the lathe: its steps, or slowest and fastest
 * @returns the speeds, each once [rpm]
 * @source geometry even ratios, as stepped pulleys have them
 * @valid any drive; a range whose ends are the wrong way round is turned round
 * @example spindleSpeeds({ speeds: { kind: 'range', from: 100, to: 3200 } })[15] → 3200
 */
export function spindleSpeeds(lathe: Pick<Lathe, 'speeds'>): readonly Rpm[] {
  const { speeds } = lathe;
  if (speeds.kind === 'steps') return [...new Set(speeds.rpm)].toSorted((a, b) => a - b);
  const slowest = Math.min(speeds.from, speeds.to);
  const ratio = Math.max(speeds.from, speeds.to) / slowest;
  const steps = Array.from({ length: stepsOfRange }, (_, i) => slowest * ratio ** (i / (stepsOfRange - 1)));
  return [...new Set(steps.map((rpm) => Math.max(1, Math.round(rpm))))];
}

/**
 * Power that the motor can give at a spindle speed.
 *
 *     constant power: P;  constant torque: P · n / n_base below the base speed
 *
 * @param lathe  the lathe: power of the motor, behaviour, base speed
 * @param speed  spindle speed [rpm]
 * @returns power at the motor [W]
 * @throws DomainError when the speed is not above zero
 * @source common-practice a stepped pulley keeps the motor at its speed, an electronic drive has full torque and so less power below its base speed
 * @valid up to the motor's rated power; the base speed is taken as the middle of the range when it is not entered
 * @example drivePower({ speeds: { kind: 'range', from: 100, to: 2000 }, drive: { power: 450, behaviour: 'constant torque', baseSpeed: 900 } }, 300) → 150
 */
export function drivePower(lathe: Pick<Lathe, 'speeds' | 'drive'>, speed: Rpm): Watt {
  if (!(speed > 0)) throw new DomainError('speed', speed, 'above 0 rpm');
  const { drive } = lathe;
  if (drive.behaviour === 'constant power') return drive.power;
  const all = spindleSpeeds(lathe);
  const base = drive.baseSpeed ?? ((all[0] ?? speed) + (all.at(-1) ?? speed)) / 2;
  return drive.power * Math.min(1, speed / base);
}

/** From one speed to the next of a curve at most this ratio. */
const curveRatio = 1.12;

/** The given speeds, slowest first, and between them as many as a curve over them needs. */
export function speedsBetween(own: readonly Rpm[]): Rpm[] {
  return own.flatMap((speed, i) => {
    const next = own[i + 1];
    if (next === undefined || !(next > speed)) return [speed];
    const steps = Math.ceil(Math.log(next / speed) / Math.log(curveRatio) - 1e-9);
    return Array.from({ length: steps }, (_, k) => (k === 0 ? speed : speed * (next / speed) ** (k / steps)));
  });
}
