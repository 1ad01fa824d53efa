/**
 * The question how stiff the lathe is as far as is known, and which test is worth doing next.
 */
import { z } from 'zod';
import { cuttingSpeed } from '../cutting/speed.ts';
import { defineQuestion } from '../question.ts';
import { findingField, plainFindings, range, round, rounded } from './answer-fields.ts';
import { demoWorkshop } from './demo-workshop.ts';
import { elementIds } from './elements.ts';
import { classWords, elementsKnown, latheKnowledge, learnt } from './knowledge.ts';
import { nextTests } from './next-test.ts';
import { workshopField } from './question-fields.ts';
import { heldBar, knownOf, materialOf } from './workshop-known.ts';

/** The bar tests are imagined on, and the cut they are judged by, when none is told. */
const usualBar = { diameter: 20, length: 60, grip: 18, material: '303' } as const;
const usualCut = { diameter: 10, length: 40, grip: 18, material: '303' } as const;
const usualCutter = {
  kind: 'turning',
  noseRadius: 0.4,
  approachAngle: 93,
  rake: 6,
  edge: 'honed',
  overhang: 20,
  maxDepth: 0.5,
} as const;

export const latheKnown = defineQuestion({
  name: 'lathe-knowledge',
  asks: 'How stiff is this lathe as far as is known, what did each test teach, and which test is worth doing next?',
  input: z.strictObject({
    workshop: workshopField,
    state: z.string().max(60).optional().describe('state of the lathe; its present one when left out'),
  }),
  output: z.strictObject({
    class: z.string().describe('class of lathe, by its swing'),
    tests: z.number().describe('tests reckoned with [-]'),
    elements: z
      .array(
        z.strictObject({
          id: z.enum(elementIds).describe('short name of the element'),
          what: z.string().describe('in words'),
          unit: z.string().describe('unit of the numbers'),
          before: range('before any test: nine in ten lathes of the class', 'unit as given'),
          now: range('now', 'unit as given'),
          left: z.number().describe('doubt left of that before any test: 1 when nothing was learnt [-]'),
          basis: z.string().describe('what the belief before tests rests on'),
          source: z.string().describe('source of it'),
          note: z.string().describe('what to know of it'),
        }),
      )
      .describe('the elements of the lathe'),
    learnt: z
      .array(
        z.strictObject({
          test: z.string().describe('the test'),
          what: z.string().describe('what kind'),
          changed: z
            .array(
              z.strictObject({
                id: z.string().describe('element'),
                what: z.string().describe('in words'),
                unit: z.string().describe('unit of the numbers'),
                from: range('before this test', 'unit as given'),
                to: range('after it', 'unit as given'),
              }),
            )
            .describe('what it changed most'),
        }),
      )
      .describe('the latest tests, one by one'),
    next: z
      .array(
        z.strictObject({
          test: z.string().describe('the test'),
          how: z.string().describe('what to do'),
          minutes: z.number().describe('time it takes, roughly [min]'),
          give: z.number().describe('doubt left in how far a Ø10 × 40 pin gives way at a cut [-]'),
          limit: z.number().describe('doubt left in the chip breadth at which that cut would sing without rubbing [-]'),
        }),
      )
      .describe('tests worth doing, best first'),
    findings: findingField,
  }),
  sources: [
    'laplace-approximation',
    'KJ',
    'NSKF',
    'BISU',
    'SNAF',
    'GRZ',
    'lathe-kc-spread',
    'wu-1989',
    'lathe-judgement',
    'common-practice',
  ],
  example: {
    input: {
      workshop: demoWorkshop({
        tests: {
          pushes: [
            {
              id: 'nose',
              at: 'spindle nose',
              readings: [
                { force: 0, up: 0 },
                { force: 100, up: 20 },
                { force: 200, up: 40 },
              ],
            },
          ],
        },
      }),
    },
    gives: { tests: 1, elements: [{ id: 'spindleRadial', now: { middle: 5.033 } }] },
    from: 'by hand, weighted mean of logarithms: ln 22.25 with 0.7 before, ln 5 with 0.0464 from 1 µm and 3 % of the readings',
  },
  answer({ workshop, state }) {
    const knowledge = latheKnowledge(workshop, state);
    const known = knownOf(workshop);
    const short = Math.min(usualCut.length, workshop.lathe.betweenCentres);
    const reference = {
      setup: {
        operation: 'turning',
        work: heldBar({ ...usualCut, length: short }, workshop.lathe.betweenCentres),
        cutter: workshop.cutters.find((c) => c.kind === 'turning') ?? usualCutter,
        stations: [short],
        diameter: usualCut.diameter,
      },
      material: materialOf(usualCut.material),
      depth: 0.2,
      feed: 0.05,
      speed: cuttingSpeed(usualCut.diameter, 800),
    } as const;
    const bar = { ...usualBar, length: Math.min(usualBar.length, workshop.lathe.betweenCentres) };
    return {
      class: classWords(workshop.lathe.swing),
      tests: knowledge.seen.length,
      elements: elementsKnown(knowledge).map((e) => ({
        ...e,
        before: rounded(e.before),
        now: rounded(e.now),
        left: round(e.left),
      })),
      learnt: learnt(knowledge, workshop.lathe.tests?.states ?? []).map((l) => ({
        test: l.test,
        what: l.what,
        changed: l.changed.map((c) => ({ ...c, from: rounded(c.from), to: rounded(c.to) })),
      })),
      next: nextTests(knowledge, reference, known, bar)
        .slice(0, 6)
        .map((n) => ({ ...n, give: round(n.give), limit: round(n.limit) })),
      findings: plainFindings(knowledge.findings),
    };
  },
});
