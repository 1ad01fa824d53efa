/**
 * Questions about the owner's lathe: what is known of it, whether a cut goes on it, and what would help.
 */
import { z } from 'zod';
import { cuttingSpeed } from '../cutting/speed.ts';
import { defineQuestion } from '../question.ts';
import { bestCuts } from './best-cuts.ts';
import { prepareSetup } from './cut-model.ts';
import { judgeCut, type Weighed } from './cut-verdict.ts';
import { cutSources, demoWorkshop } from './demo-workshop.ts';
import { elementIds } from './elements.ts';
import { classWords, elementsKnown, latheKnowledge, learnt } from './knowledge.ts';
import { nextTests } from './next-test.ts';
import { cutOnLatheFields, setupOf, workshopField } from './question-fields.ts';
import { whatWouldHelp } from './remedies.ts';
import { heldBar, knownOf, materialOf } from './workshop-known.ts';

const round = (value: number) => Number(value.toPrecision(4));
const rounded = ({ low, middle, high }: { low: number; middle: number; high: number }) => ({
  low: round(low),
  middle: round(middle),
  high: round(high),
});

const range = (what: string, unit: string) =>
  z
    .strictObject({
      low: z.number().describe(`bound below which one in twenty lies [${unit}]`),
      middle: z.number().describe(`middle [${unit}]`),
      high: z.number().describe(`bound above which one in twenty lies [${unit}]`),
    })
    .describe(what);

const findingField = z
  .array(
    z.strictObject({
      id: z.string().describe('kind of finding'),
      level: z.enum(['stop', 'caution', 'note']).describe('how much it matters'),
      at: z.string().describe('test or cut it belongs to'),
      says: z.string().describe('in words'),
      remedies: z.array(z.string()).describe('what to do'),
    }),
  )
  .describe('what to know');

const plainFindings = (
  findings: readonly {
    id: string;
    level: 'stop' | 'caution' | 'note';
    at: string;
    says: string;
    remedies: readonly string[];
  }[],
) => findings.map(({ id, level, at, says, remedies }) => ({ id, level, at, says, remedies: [...remedies] }));

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

const cutOnLathe = defineQuestion({
  name: 'cut-on-lathe',
  asks: 'Does this cut go on this lathe: force, power, size along the work, rubbing, singing?',
  input: z.strictObject(cutOnLatheFields),
  output: z.strictObject({
    verdict: z.enum(['goes', 'goes if', 'not on this lathe']).describe('the verdict'),
    says: z.string().describe('the verdict in one sentence with the number that decides'),
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
    const { setup, material } = setupOf(asked);
    const { joint, findings } = latheKnowledge(asked.workshop, asked.state);
    const made = judgeCut(prepareSetup(joint, setup, material), asked.workshop.lathe, asked);
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
      findings: plainFindings([...made.findings, ...findings]),
    };
  },
});

const help = defineQuestion({
  name: 'what-would-help',
  asks: 'What would let this cut go deeper, quieter or truer on this lathe, best first?',
  input: z.strictObject(cutOnLatheFields),
  output: z.strictObject({
    asItStands: z
      .strictObject({
        safeDepth: z.number().describe('greatest depth at which everything is good, 0 when none is [mm]'),
        chatter: z.number().describe('probability that the cut sings [-]'),
        taper: z.number().describe('difference of size along the work [mm]'),
        sizeError: z.number().describe('greatest error of size [mm]'),
      })
      .describe('without any remedy'),
    remedies: z
      .array(
        z.strictObject({
          name: z.string().describe('what to do'),
          effort: z.enum(['now', 'minutes', 'an evening', 'a project']).describe('how much work it is'),
          assumes: z.string().optional().describe('what the figures take for granted'),
          safeDepth: z.number().describe('greatest depth at which everything is good, 0 when none is [mm]'),
          chatter: z.number().describe('probability that the cut sings [-]'),
          taper: z.number().describe('difference of size along the work [mm]'),
          sizeError: z.number().describe('greatest error of size [mm]'),
          gain: z.number().describe('score of the ranking: above 0 it helps [-]'),
        }),
      )
      .describe('remedies, each tried on the model of this cut, best first'),
    notReckoned: z.array(z.string()).describe('what is done in the trade but cannot be judged here'),
  }),
  sources: [...cutSources, 'SNAF'],
  example: {
    input: {
      workshop: demoWorkshop({ noseRadius: 0.4 }),
      cutter: 'knife',
      material: '303',
      sections: [{ length: 90, outerDiameter: 10 }],
      grip: 18,
      depth: 0.2,
      feed: 0.05,
      speed: 800,
      sizeLimit: 0.02,
    },
    gives: { remedies: [{ name: 'support the end with the tailstock centre', effort: 'minutes' }] },
    from: 'common practice: work standing out more than 4 to 5 diameters is supported by the tailstock',
  },
  answer(asked) {
    const { setup, material } = setupOf(asked);
    const { joint } = latheKnowledge(asked.workshop, asked.state);
    const list = whatWouldHelp({ setup, asked, joint }, material, asked.workshop.lathe);
    const figures = <T extends { safeDepth: number; chatter: number; taper: number; sizeError: number }>(t: T): T => ({
      ...t,
      safeDepth: round(t.safeDepth),
      chatter: round(t.chatter),
      taper: round(t.taper),
      sizeError: round(t.sizeError),
    });
    return {
      asItStands: figures(list.asItStands),
      remedies: list.remedies.map((r) => ({ ...figures(r), gain: round(r.gain) })),
      notReckoned: [...list.notReckoned],
    };
  },
});

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

const knowledgeQuestion = defineQuestion({
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

export const latheQuestions = [cutOnLathe, bestCuts, help, knowledgeQuestion];
