/**
 * The question whether a cut goes on the lathe.
 */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { findingField, plainFindings, range, round, rounded } from './answer-fields.ts';
import { judgeCut, type Weighed } from './cut-verdict.ts';
import { cutSources, demoWorkshop } from './demo-workshop.ts';
import { latheKnowledge } from './knowledge.ts';
import { prepareSetup } from './prepare-setup.ts';
import { cutOnLatheFields, setupOf } from './question-fields.ts';
import { betweenSteps, checkWithinLathe } from './within-lathe.ts';

const weighedField = z.strictObject({
  criterion: z.enum(['chatter', 'power', 'rubbing', 'size', 'cutter', 'push']).describe('what is weighed'),
  what: z.string().describe('in words'),
  value: z.number().describe('its value [unit as given]'),
  unit: z.string().describe('unit; empty for a pure number'),
  good: z.number().describe('up to this it goes [unit as given]'),
  bad: z.number().describe('beyond this it does not [unit as given]'),
  state: z.enum(['good', 'marginal', 'bad']).describe('where it stands'),
});

const plainWeighed = (w: Weighed) => ({ ...w, value: round(w.value), good: round(w.good), bad: round(w.bad) });

export const cutOnLathe = defineQuestion({
  name: 'cut-on-lathe',
  asks: 'Does this cut go on this lathe: force, power, size along the work, rubbing, singing?',
  input: z.strictObject(cutOnLatheFields),
  output: z.strictObject({
    verdict: z.enum(['goes', 'goes if', 'not on this lathe']).describe('the verdict'),
    says: z
      .string()
      .describe('the verdict in one sentence with the number that decides, lengths in the unit of the workshop'),
    decides: weighedField.describe('the number that decides'),
    weighed: z.array(weighedField).describe('all numbers weighed'),
    safeDepth: z
      .number()
      .nullable()
      .describe('greatest depth at which everything is good, same feed and speed [mm]; null when none is'),
    cutting: z.number().describe('force along the cut [N]'),
    square: z.number().describe('force square to the surface cut [N]'),
    feedForce: z.number().describe('force along the feed [N]'),
    power: z.number().describe('power asked of the motor [W]'),
    powerShare: z.number().describe('share of what the motor gives at this speed [-]'),
    stations: z
      .array(
        z.strictObject({
          at: z.number().describe('place, from the jaw faces [mm]'),
          error: z
            .number()
            .describe(
              'how much is left on after one pass: on the diameter, on the length when facing, on the radius when plunging [mm]',
            ),
        }),
      )
      .describe('size along the work'),
    taper: range('greatest less least of these', 'mm'),
    margin: range('chip breadth at which it sings over that of this cut, at most 20', '-'),
    chatter: z.number().describe('probability that it sings, given what is known of the lathe [-]'),
    findings: findingField,
  }),
  sources: cutSources,
  example: {
    input: {
      workshop: demoWorkshop(),
      cutter: 'knife',
      material: '303',
      sections: [{ length: 30, outerDiameter: 10 }],
      grip: 18,
      depth: 0.5,
      feed: 0.1,
      speed: 800,
    },
    gives: { cutting: 173.9, power: 97.11 },
    from: 'by hand: 0.5 · 0.1^0.8 · 2150 = 170.4 N on the chip and 0.5 · 2150 · 0.0065/2 = 3.5 N of the edge; times π · 10 · 800/60 000 m/s over 0.75',
  },
  answer(asked) {
    const { lathe, units } = asked.workshop;
    const { setup, material } = setupOf(asked);
    checkWithinLathe(lathe, setup, asked);
    const { joint, findings } = latheKnowledge(asked.workshop, asked.state);
    const made = judgeCut(prepareSetup(joint, setup, material), lathe, asked, units);
    return {
      verdict: made.verdict,
      says: made.says,
      decides: plainWeighed(made.decides),
      weighed: made.weighed.map(plainWeighed),
      safeDepth: made.safeDepth ?? null,
      cutting: round(made.cutting),
      square: round(made.square),
      feedForce: round(made.feedForce),
      power: round(made.power),
      powerShare: round(made.powerShare),
      stations: setup.stations.map((at, i) => ({ at: round(at), error: round(made.size.error[i] ?? 0) })),
      taper: rounded(made.size.taper),
      margin: rounded(made.chatter.margin),
      chatter: round(made.chatter.probability),
      findings: plainFindings([...made.findings, ...betweenSteps(lathe, asked.speed), ...findings]),
    };
  },
});
