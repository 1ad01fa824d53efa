import { expect, test } from 'vitest';
import { torqueOfPower } from '../cutting/power.ts';
import { DomainError } from '../errors.ts';
import { drivePower, speedsBetween, spindleSpeeds } from './drive.ts';

const range = { kind: 'range', from: 100, to: 2000 } as const;
const electronic = { power: 450, behaviour: 'constant torque', baseSpeed: 900 } as const;

test('stepped pulleys give their speeds, slowest first, each once', () => {
  expect(spindleSpeeds({ speeds: { kind: 'steps', rpm: [800, 125, 800, 315] } })).toEqual([125, 315, 800]);
});

test('a stepless drive is divided in even ratios from its slowest to its fastest', () => {
  const speeds = spindleSpeeds({ speeds: range });
  expect(speeds[0]).toBe(100);
  expect(speeds.at(-1)).toBe(2000);
  const ratio = 20 ** (1 / 15);
  speeds.slice(1).forEach((rpm, i) => {
    // Rounded to whole turns.
    expect(Math.abs(rpm / (speeds[i] ?? 1) - ratio)).toBeLessThan(0.02);
  });
});

test('a range of one speed is one speed, and one written the wrong way round is turned round', () => {
  expect(spindleSpeeds({ speeds: { kind: 'range', from: 400, to: 400 } })).toEqual([400]);
  expect(spindleSpeeds({ speeds: { kind: 'range', from: 2000, to: 100 } })).toEqual(spindleSpeeds({ speeds: range }));
});

test('an electronic drive keeps its torque below the base speed and its power above', () => {
  const torque = (rpm: number) => torqueOfPower(drivePower({ speeds: range, drive: electronic }, rpm), rpm);
  expect(torque(300)).toBeCloseTo(torque(600), 9);
  expect(drivePower({ speeds: range, drive: electronic }, 900)).toBe(450);
  expect(drivePower({ speeds: range, drive: electronic }, 1800)).toBe(450);
});

test('stepped pulleys keep the power at every speed', () => {
  expect(drivePower({ speeds: range, drive: { power: 450, behaviour: 'constant power' } }, 100)).toBe(450);
});

test('without a base speed the middle of the range is taken', () => {
  expect(drivePower({ speeds: range, drive: { power: 420, behaviour: 'constant torque' } }, 525)).toBeCloseTo(210, 9);
});

test('a standing spindle has no power to speak of', () => {
  expect(() => drivePower({ speeds: range, drive: electronic }, 0)).toThrow(DomainError);
});

test('speeds for a curve hold every speed of the lathe, in order, none more than an eighth above the one before', () => {
  const own = [125, 200, 315, 500, 800, 1250, 2000];
  const all = speedsBetween(own);
  expect(all).toEqual(all.toSorted((a, b) => a - b));
  for (const speed of own) expect(all).toContain(speed);
  all.slice(1).forEach((speed, i) => {
    expect(speed / (all[i] ?? 1)).toBeLessThan(1.125);
  });
  expect(speedsBetween([400])).toEqual([400]);
});
