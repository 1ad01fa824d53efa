import { expect, test } from 'vitest';
import { referenceRows } from '../../test/reference.ts';
import { cuttingPower, powerOfTorque, spindleTorque, torqueOfPower } from './power.ts';
import { cuttingSpeed, spindleSpeed } from './speed.ts';

test('M = 9550 P/n, to the rounding of 9550 [rows of power-torque-check, computed]', () => {
  for (const row of referenceRows('cutting', 'power-torque-check')) {
    expect(torqueOfPower(1000 * Number(row.P_kW), Number(row.n_rpm)) / Number(row.torque_Nm)).toBeCloseTo(1, 3);
  }
});

test('force times speed and torque times turns are the same power', () => {
  const [force, diameter, turns] = [180, 14, 640];
  expect(powerOfTorque(spindleTorque(force, diameter), turns)).toBeCloseTo(
    cuttingPower(force, cuttingSpeed(diameter, turns)),
    9,
  );
  expect(cuttingSpeed(diameter, spindleSpeed(25, diameter))).toBeCloseTo(25, 12);
});

test('at the centre no spindle speed is enough', () => {
  expect(() => spindleSpeed(20, 0)).toThrow('more than 0 mm');
});
