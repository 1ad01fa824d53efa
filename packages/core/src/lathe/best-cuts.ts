/**
 * The cuts of one operation that go on this lathe, quickest first, out of all its speeds, feeds and depths.
 */
import { z } from 'zod';
import { cuttingSpeed } from '../cutting/speed.ts';
import { defineQuestion } from '../question.ts';
import { capability, type JudgedCut, ownGrid } from './capability.ts';
import { weigh } from './cut-verdict.ts';
import { cutSources, demoWorkshop } from './demo-workshop.ts';
import { latheKnowledge } from './knowledge.ts';
import { type PreparedSetup, prepareSetup } from './prepare-setup.ts';
import { cutOnLatheFields, setupOf } from './question-fields.ts';

export interface RankedCut extends JudgedCut {
  /** Metal taken away [mm³/min]. */
  readonly rate: number;
  /** Criteria that are not good. */
  readonly short: readonly string[];
}

/** Every cut with what it takes away; those with everything good first, then quickest first. */
export function ranked(
  prepared: PreparedSetup,
  cuts: readonly JudgedCut[],
  sizeLimit: number | undefined,
): RankedCut[] {
  const { diameter } = prepared.setup;
  return cuts
    .map((cut): RankedCut => {
      const short = weigh(prepared, { ...cut, sizeLimit }).filter((w) => w.state !== 'good');
      const rate = cut.depth * cut.feed * 1000 * cuttingSpeed(diameter, cut.speed);
      return { ...cut, rate, short: short.map((w) => w.criterion) };
    })
    .toSorted((a, b) => a.short.length - b.short.length || b.rate - a.rate);
}

const { depth: _depth, feed: _feed, speed: _speed, ...askedFields } = cutOnLatheFields;
/** Cuts shown. */
const most = 12;
const round = (value: number) => Number(value.toPrecision(4));

export const bestCuts = defineQuestion({
  name: 'best-cuts',
  asks: 'Which of all the speeds, feeds and depths of this lathe go for this cut, quickest first?',
  input: z.strictObject({
    ...askedFields,
    operation: z
      .enum(['turning', 'facing', 'boring'], { error: 'turning, facing or boring; a plunge is asked of cut-on-lathe' })
      .default('turning')
      .describe('what is cut'),
    slowest: z.number().min(0).max(1000).optional().describe('least cutting speed wanted [m/min]'),
    fastest: z
      .number()
      .min(0.1)
      .max(1000)
      .optional()
      .describe('greatest cutting speed the cutter stands in this material [m/min]'),
  }),
  output: z.strictObject({
    judged: z.number().describe('cuts judged [-]'),
    go: z.number().describe('of them with everything good [-]'),
    cuts: z
      .array(
        z.strictObject({
          depth: z.number().describe('depth, on the radius [mm]'),
          feed: z.number().describe('feed for each turn [mm/rev]'),
          speed: z.number().describe('spindle speed [rpm]'),
          rate: z.number().describe('metal taken away [mm³/min]'),
          powerShare: z.number().describe('share of the motor’s power [-]'),
          chatter: z.number().describe('probability that it sings [-]'),
          taper: z.number().describe('difference of size along the work [mm]'),
          rubbing: z.enum(['cuts', 'may rub', 'rubs']).describe('chip against the edge'),
          short: z.array(z.string()).describe('what is not good; empty when it goes'),
        }),
      )
      .describe('the best dozen'),
  }),
  sources: cutSources,
  example: {
    input: {
      workshop: demoWorkshop(),
      cutter: 'knife',
      material: '303',
      sections: [{ length: 30, outerDiameter: 10 }],
      grip: 18,
    },
    gives: { judged: 112 },
    from: 'by count: 4 speeds × 2 feeds × 14 depths up to the 1 mm the cutter stands',
  },
  answer(asked) {
    const { setup, material } = setupOf({ ...asked, depth: 1, feed: 1, speed: 1 });
    const { joint } = latheKnowledge(asked.workshop, asked.state);
    const prepared = prepareSetup(joint, setup, material);
    const own = ownGrid(asked.workshop.lathe, setup.cutter.maxDepth);
    const speeds = own.speeds.filter((n) => {
      const v = cuttingSpeed(setup.diameter, n);
      return v >= (asked.slowest ?? 0) && v <= (asked.fastest ?? Number.POSITIVE_INFINITY);
    });
    const all = ranked(prepared, capability(prepared, asked.workshop.lathe, { ...own, speeds }), asked.sizeLimit);
    return {
      judged: all.length,
      go: all.filter((c) => c.short.length === 0).length,
      cuts: all.slice(0, most).map((c) => ({
        depth: c.depth,
        feed: c.feed,
        speed: c.speed,
        rate: round(c.rate),
        powerShare: round(c.powerShare),
        chatter: round(c.chatter),
        taper: round(c.size.taper.middle),
        rubbing: c.rubbing,
        short: [...c.short],
      })),
    };
  },
});
