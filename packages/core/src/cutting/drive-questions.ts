/**
 * Questions about speed, power and torque.
 */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { defineQuestion } from '../question.ts';
import { lengthField, numberField } from '../units/fields.ts';
import { cuttingPower, driveEfficiency, motorPower, spindleTorque } from './power.ts';
import { significant } from './question-fields.ts';
import { cuttingSpeed, spindleSpeed } from './speed.ts';

const oneOf = (what: string): never => {
  throw new InputError([{ path: 'speed', value: undefined, expected: what, example: '"speed": 600' }]);
};

/** Spindle and cutting speed from whichever is given. */
function speeds(diameter: number, spindle: number | undefined, cutting: number | undefined) {
  if ((spindle === undefined) === (cutting === undefined)) return oneOf('either a spindle speed or a cuttingSpeed');
  const turns = spindle ?? spindleSpeed(cutting ?? 0, diameter);
  return { spindle: turns, cutting: cutting ?? cuttingSpeed(diameter, turns) };
}

const speedFields = {
  speed: numberField('spindle speed, or give cuttingSpeed', 'rpm', 0, 20_000).optional(),
  cuttingSpeed: numberField('cutting speed, or give speed', 'm/min', 0, 1000).optional(),
};

export const speedQuestion = defineQuestion({
  name: 'cutting-speed',
  asks: 'How fast does the edge cut at this spindle speed, or how fast must the spindle turn?',
  input: z.strictObject({ diameter: lengthField('mm', 'where the edge cuts', { max: 1000 }), ...speedFields }),
  output: z.strictObject({
    cuttingSpeed: z.number().describe('cutting speed [m/min]'),
    speed: z.number().describe('spindle speed [rpm]'),
  }),
  sources: ['geometry', 'LZQ'],
  example: {
    input: { diameter: '12', speed: 1350 },
    gives: { cuttingSpeed: 50.9, speed: 1350 },
    from: 'drilling formulas with examples: a 12 mm drill at 1350 rpm cuts at 50.9 m/min',
  },
  answer({ diameter, speed: asked, cuttingSpeed: wanted }) {
    const { spindle, cutting } = speeds(diameter, asked, wanted);
    return { cuttingSpeed: significant(cutting, 3), speed: significant(spindle, 4) };
  },
});

export const powerQuestion = defineQuestion({
  name: 'cutting-power',
  asks: 'What power and torque does this cutting force take at the spindle, and what must the motor give?',
  input: z.strictObject({
    force: numberField('cutting force', 'N', 0, 20_000),
    diameter: lengthField('mm', 'where the edge cuts', { max: 1000 }),
    ...speedFields,
    drive: z
      .enum(['belt', 'backGear', 'gearedHead'])
      .default('belt')
      .describe('how the motor drives the spindle: by belt (0.9 of its power arrives), backGear or gearedHead (0.75)'),
    efficiency: numberField(
      'share of the motor’s power that reaches the spindle, when it is known',
      '',
      0.1,
      1,
    ).optional(),
  }),
  output: z.strictObject({
    power: z.number().describe('power at the spindle [W]'),
    motor: z.number().describe('power from the motor [W]'),
    torque: z.number().describe('torque at the spindle [N·m]'),
    speed: z.number().describe('spindle speed [rpm]'),
    cuttingSpeed: z.number().describe('cutting speed [m/min]'),
  }),
  sources: ['SVT', 'MH31', 'geometry'],
  example: {
    input: { force: 1559, diameter: 50, cuttingSpeed: 100 },
    gives: { power: 2598 },
    from: 'Groover, orthogonal cutting example: 1559 N at 100 m/min takes 2598 W (from memory)',
  },
  answer({ force: cutting, diameter, speed: asked, cuttingSpeed: wanted, drive, efficiency }) {
    const turning = speeds(diameter, asked, wanted);
    const net = cuttingPower(cutting, turning.cutting);
    return {
      power: significant(net, 4),
      motor: significant(motorPower(net, efficiency ?? driveEfficiency[drive]), 4),
      torque: significant(spindleTorque(cutting, diameter), 4),
      speed: significant(turning.spindle, 4),
      cuttingSpeed: significant(turning.cutting, 4),
    };
  },
});
