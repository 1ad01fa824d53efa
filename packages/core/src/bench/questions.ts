/** The question how long operations took, by the log of the bench. */
import { z } from 'zod';
import { defineQuestion } from '../question.ts';
import { operationKinds } from '../route/operation-kinds.ts';
import { numberField } from '../units/fields.ts';
import { loggedTimes } from './logged-times.ts';

const name = (what: string) => z.string().min(1).max(120).describe(what);

const timesFromLog = defineQuestion({
  name: 'times-from-log',
  asks: 'How long did operations take, by the times at which something was written into the log of the bench?',
  input: z.strictObject({
    operations: z
      .array(
        z.strictObject({
          id: name('id of the operation, as the route names it'),
          setup: name('setup it is in'),
          kind: z.enum(operationKinds).describe('kind of operation, as the route names it'),
          planned: numberField('time planned, before anything was learned', 'min', 0, 10_000),
        }),
      )
      .min(1)
      .max(500)
      .describe('operations in the order of the route'),
    entries: z
      .array(
        z.strictObject({
          at: numberField('when it was written, counted from any moment', 'min', 0, 1e9),
          of: name('operation it was written about'),
        }),
      )
      .max(5000)
      .describe('entries of the log that stand'),
    now: numberField('when the log is looked at, counted from the same moment', 'min', 0, 1e9),
  }),
  output: z.strictObject({
    timed: z
      .array(
        z.strictObject({
          of: z.string().describe('operation'),
          kind: z.string().describe('kind of the longest of the operations the time is for'),
          planned: z.number().describe('planned for them [min]'),
          taken: z.number().describe('taken by them [min]'),
          with: z.array(z.string()).describe('operations before it of which nothing was written: both times hold them'),
        }),
      )
      .describe('operations with a time, in the order of the route'),
    notTimed: z
      .array(z.strictObject({ of: z.string().describe('operation'), why: z.string().describe('why it has no time') }))
      .describe('operations in the log that are left out'),
  }),
  sources: ['common-practice'],
  example: {
    input: {
      operations: [
        { id: 'rough-turn-body', setup: 'setup-1', kind: 'rough turn', planned: 10 },
        { id: 'finish-turn-body', setup: 'setup-1', kind: 'finish turn', planned: 20 },
      ],
      entries: [
        { at: 0, of: 'rough-turn-body' },
        { at: 4, of: 'rough-turn-body' },
        { at: 12, of: 'finish-turn-body' },
        { at: 30, of: 'finish-turn-body' },
      ],
      now: 600,
    },
    gives: {
      timed: [{ of: 'finish-turn-body', kind: 'finish turn', planned: 20, taken: 26, with: [] }],
      notTimed: [{ of: 'rough-turn-body', why: 'nothing tells when it began' }],
    },
    from: 'by hand: 30 − 4 minutes',
  },
  answer({ operations, entries, now }) {
    const found = loggedTimes(
      entries.map(({ at, of }) => ({ at: 60 * at, of })),
      operations.map((o) => ({ ...o, planned: 60 * o.planned })),
      60 * now,
    );
    return {
      timed: found.timed.map((t) => ({
        ...t,
        planned: inMinutes(t.planned),
        taken: inMinutes(t.taken),
        with: [...t.with],
      })),
      notTimed: found.notTimed.map((n) => ({ ...n })),
    };
  },
});

/** To a hundredth of a minute. */
function inMinutes(seconds: number): number {
  return Math.round(seconds / 0.6) / 100;
}

export const benchQuestions = [timesFromLog] as const;
