/** Fields that several questions about dials share. */
import { z } from 'zod';
import { lengthField } from '../units/fields.ts';

export const dialField = (what: string) =>
  z
    .strictObject({
      division: lengthField('mm', 'one division'),
      perTurn: lengthField('mm', 'one turn'),
      reads: z
        .enum(['radius', 'diameter', 'travel'])
        .describe('what a division stands for: radius, diameter, or plain travel of the slide'),
    })
    .describe(what);

export const settingFields = {
  turns: z.number().describe('whole turns from the zero [-]'),
  divisions: z.number().describe('divisions beyond the whole turns [-]'),
};
