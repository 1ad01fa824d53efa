/**
 * The question which part of lathe, work and cutter gives how much.
 */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { defineQuestion } from '../question.ts';
import { range, round, rounded } from './answer-fields.ts';
import { demoWorkshop } from './demo-workshop.ts';
import { latheKnowledge } from './knowledge.ts';
import { cutOnLatheFields, setupOf } from './question-fields.ts';
import { draws, middle } from './sampling.ts';
import type { Workshop } from './schema.ts';
import { type BudgetShare, budgetDirections, budgetPlace, giveAlong, stiffnessBudget } from './stiffness-budget.ts';

const { depth: _d, feed: _f, speed: _s, sizeLimit: _l, cutter, material, sections, grip, ...others } = cutOnLatheFields;

/** A pin that turners of small lathes know well, when no work is told. */
const usual = { diameter: 10, length: 40, grip: 18, material: '303' } as const;
/** Draws that stand for what is not known. */
const drawn = 64;
/** Micrometres for each millimetre. */
const micro = 1000;

export const stiffnessBudgetQuestion = defineQuestion({
  name: 'stiffness-budget',
  asks: 'Which part of lathe, work and cutter gives how much of what the edge gives way at a cut?',
  input: z.strictObject({
    ...others,
    cutter: cutter.optional().describe('cutter, as listed in the workshop; its first turning cutter when left out'),
    material: material.default(usual.material),
    sections: sections
      .optional()
      .describe('the work from the jaw faces outwards; a pin of Ø10 × 40 mm when left out, or as long as goes in'),
    grip: grip.default(usual.grip),
  }),
  output: z.strictObject({
    directions: z
      .array(
        z.strictObject({
          direction: z.enum(budgetDirections).describe('away from the axis, along it, or the way of the cutting force'),
          give: range('how far edge and work give way from each other', 'µm/N'),
          parts: z
            .array(
              z.strictObject({
                of: z.string().describe('short name of the element, or work or cutter'),
                what: z.string().describe('in words'),
                share: z.number().describe('of the give [-]'),
                give: z.number().describe('its own part of the give [µm/N]'),
              }),
            )
            .describe('parts, the softest first; with the most likely values'),
        }),
      )
      .describe('the three directions'),
  }),
  sources: ['KJ', 'NSKF', 'lathe-judgement', 'przemieniecki-ch5', 'laplace-approximation'],
  example: {
    input: { workshop: demoWorkshop() },
    gives: { directions: [{ direction: 'radial' }, { direction: 'axial' }, { direction: 'tangential' }] },
    from: 'the three directions of a cut',
  },
  answer(asked) {
    const length = Math.min(usual.length, asked.workshop.lathe.betweenCentres);
    const { setup } = setupOf({
      ...asked,
      cutter: asked.cutter ?? firstTurning(asked.workshop),
      sections: asked.sections ?? [{ length, outerDiameter: usual.diameter }],
      depth: 0.1,
      feed: 0.05,
      speed: 1,
    });
    const { joint, prior } = latheKnowledge(asked.workshop, asked.state);
    const values = middle(joint);
    const place = budgetPlace(setup);
    const may = draws(joint, drawn);
    const words = (of: BudgetShare['of']) =>
      of === 'work'
        ? 'the work itself'
        : of === 'cutter'
          ? 'the cutter where it stands out'
          : (prior.find((b) => b.id === of)?.what ?? of);
    return {
      directions: budgetDirections.map((direction) => {
        const whole = giveAlong(values, place, direction);
        const all = may.map((v) => giveAlong(v, place, direction)).toSorted((a, b) => a - b);
        const at = (share: number) => micro * (all[Math.min(all.length - 1, Math.floor(share * all.length))] ?? whole);
        return {
          direction,
          give: rounded({ low: at(0.05), middle: micro * whole, high: at(0.95) }),
          parts: stiffnessBudget(values, place, direction).map(({ of, share }) => ({
            of,
            what: words(of),
            share: round(share),
            give: round(micro * share * whole),
          })),
        };
      }),
    };
  },
});

function firstTurning({ cutters }: Workshop): string {
  const found = cutters.find((c) => c.kind === 'turning');
  if (found) return found.id;
  throw new InputError([
    { path: 'cutter', value: undefined, expected: 'a cutter; the workshop has no turning cutter' },
  ]);
}
