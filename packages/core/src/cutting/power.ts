/**
 * Power and torque of a cut, at the spindle and from the motor.
 */
import { DomainError } from '../errors.ts';
import type { MetrePerMinute, Mm, Newton, NewtonMetre, Rpm, Watt } from '../units/quantities.ts';

/** Share of the motor's power that reaches the spindle [MH31, from memory]. */
export const driveEfficiency = { belt: 0.9, backGear: 0.75, gearedHead: 0.75 } as const;

/**
 * Power at the edge.
 *
 *     P = Fc v / 60
 *
 * @param force  cutting force Fc [N]
 * @param speed  cutting speed v [m/min]
 * @returns power [W]
 * @source SVT net power
 * @valid any
 * @example cuttingPower(1559, 100) → 2598
 */
export function cuttingPower(force: Newton, speed: MetrePerMinute): Watt {
  return (force * speed) / 60;
}

/**
 * Power the motor must give.
 *
 *     Pm = P / η
 *
 * @param power  at the spindle P [W]
 * @param efficiency  share of the motor's power that reaches the spindle η [-]
 * @returns power from the motor [W]
 * @throws DomainError when the efficiency is not above 0 and at most 1
 * @source MH31 machine efficiency
 * @valid 0 < η ≤ 1
 * @example motorPower(5, 0.8) → 6.25
 */
export function motorPower(power: Watt, efficiency: number): Watt {
  if (!(efficiency > 0 && efficiency <= 1))
    throw new DomainError('efficiency', efficiency, 'more than 0 to 1, for example 0.8');
  return power / efficiency;
}

/**
 * Torque at the spindle of a force at a diameter.
 *
 *     M = Fc d / 2000
 *
 * @param force  cutting force Fc [N]
 * @param diameter  where the edge cuts d [mm]
 * @returns torque [N·m]
 * @source geometry
 * @valid any
 * @example spindleTorque(200, 20) → 2
 */
export function spindleTorque(force: Newton, diameter: Mm): NewtonMetre {
  return (force * diameter) / 2000;
}

/**
 * Torque that a power gives at a speed.
 *
 *     M = 60 P / (2 π n)
 *
 * @param power  P [W]
 * @param speed  n [rpm]
 * @returns torque [N·m]
 * @throws DomainError when the speed is not above 0
 * @source geometry
 * @valid n > 0
 * @example torqueOfPower(250, 1000) → 2.387
 */
export function torqueOfPower(power: Watt, speed: Rpm): NewtonMetre {
  if (!(speed > 0)) throw new DomainError('speed', speed, 'more than 0 rpm');
  return (60 * power) / (2 * Math.PI * speed);
}

/**
 * Power of a torque at a speed.
 *
 *     P = 2 π n M / 60
 *
 * @param torque  M [N·m]
 * @param speed  n [rpm]
 * @returns power [W]
 * @source geometry
 * @valid any
 * @example powerOfTorque(15, 500) → 785.4
 */
export function powerOfTorque(torque: NewtonMetre, speed: Rpm): Watt {
  return (2 * Math.PI * speed * torque) / 60;
}
