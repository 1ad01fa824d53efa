/**
 * What may be done about a cut that does not go: settings, cutters and set-ups, adjustments and alterations of the lathe.
 */

import type { Setup } from './chain.ts';
import type { AskedCut } from './cut-verdict.ts';
import type { CuttingTool } from './cutting-tool.ts';
import { spindleSpeeds } from './drive.ts';
import type { ElementId } from './elements.ts';
import type { Joint } from './sampling.ts';
import type { Lathe } from './schema.ts';
import { plunges } from './size-after.ts';

/** `now`: a setting. `minutes`: another cutter or set-up. `an evening`: adjusting. `a project`: parts to make or buy. */
export type Effort = 'now' | 'minutes' | 'an evening' | 'a project';

/** A cut with what is believed of the lathe it is taken on. */
export interface Trial {
  readonly setup: Setup;
  readonly asked: AskedCut;
  readonly joint: Joint;
}

export interface Remedy {
  readonly name: string;
  readonly effort: Effort;
  /** What the figures assume where the gain is not computed from geometry alone. */
  readonly assumes?: string | undefined;
  /** The cut with the remedy, or nothing when it does not apply. */
  readonly apply: (trial: Trial, lathe: Lathe) => Trial | undefined;
}

const withCutter = (trial: Trial, change: Partial<CuttingTool>): Trial => ({
  ...trial,
  setup: { ...trial.setup, cutter: { ...trial.setup.cutter, ...change } },
});

/** Scales elements of the lathe; what is known of them is kept relative. */
function scaled(trial: Trial, factors: Partial<Record<ElementId, number>>): Trial {
  const mean = trial.joint.mean.map((m, i) => {
    const factor = factors[trial.joint.beliefs[i]?.id ?? 'force'];
    return factor === undefined ? m : m + Math.log(factor);
  });
  return { ...trial, joint: { ...trial.joint, mean } };
}

const outside = ({ setup }: Trial) => setup.operation === 'turning';
const plunging = ({ setup }: Trial) => plunges(setup);
const end = ({ setup }: Trial) => setup.work.sections.at(-1)?.to ?? 0;

export const remedies: readonly Remedy[] = [
  {
    name: 'feed half as much again',
    effort: 'now',
    apply: (t) => ({ ...t, asked: { ...t.asked, feed: Math.min(1.5 * t.asked.feed, plunging(t) ? 0.5 : 2) } }),
  },
  {
    name: 'next slower speed',
    effort: 'now',
    apply: (t, lathe) =>
      withSpeed(
        t,
        spindleSpeeds(lathe).findLast((n) => n < t.asked.speed * 0.99),
      ),
  },
  {
    name: 'next faster speed',
    effort: 'now',
    apply: (t, lathe) =>
      withSpeed(
        t,
        spindleSpeeds(lathe).find((n) => n > t.asked.speed * 1.01),
      ),
  },
  {
    name: 'support the end with the tailstock centre',
    effort: 'minutes',
    apply: (t, lathe) =>
      t.setup.work.centreAt === undefined &&
      lathe.tailstock &&
      lathe.tailstock.centre !== 'none' &&
      (outside(t) || t.setup.operation === 'grooving')
        ? { ...t, setup: { ...t.setup, work: { ...t.setup.work, centreAt: end(t) } } }
        : undefined,
  },
  {
    name: 'steady in the middle of what stands out',
    effort: 'minutes',
    assumes: 'a steady as stiff as 10 N/µm, from memory',
    apply: (t) =>
      t.setup.work.steady || t.setup.operation === 'facing' || end(t) < 30
        ? undefined
        : { ...t, setup: { ...t.setup, work: { ...t.setup.work, steady: { at: end(t) / 2, stiffness: 10 } } } },
  },
  {
    name: 'let the work stand out a quarter less',
    effort: 'minutes',
    assumes: 'the shape can be held that much shorter',
    apply: (t) => shortened(t, 0.75),
  },
  {
    name: 'half as long again in the jaws',
    effort: 'minutes',
    assumes: 'there is stock to hold, and jaws that deep',
    apply: (t) => ({
      ...t,
      setup: { ...t.setup, work: { ...t.setup.work, gripLength: 1.5 * t.setup.work.gripLength } },
    }),
  },
  {
    name: 'half the nose radius',
    effort: 'minutes',
    apply: (t) =>
      plunging(t) || t.setup.cutter.noseRadius < 0.15
        ? undefined
        : withCutter(t, { noseRadius: t.setup.cutter.noseRadius / 2 }),
  },
  {
    name: 'a sharper edge',
    effort: 'minutes',
    apply: (t) => (t.setup.cutter.edge === 'sharp' ? undefined : withCutter(t, { edge: 'sharp' })),
  },
  {
    name: 'five degrees more rake',
    effort: 'minutes',
    assumes: 'the edge stands it; the push falls with rake as friction has it, from memory',
    apply: (t) => (t.setup.cutter.rake > 20 ? undefined : withCutter(t, { rake: t.setup.cutter.rake + 5 })),
  },
  {
    name: 'cutter or bar a quarter nearer to the post',
    effort: 'minutes',
    apply: (t) => withCutter(t, { overhang: 0.75 * t.setup.cutter.overhang }),
  },
  {
    name: 'boring bar a fifth thicker',
    effort: 'minutes',
    assumes: 'the bore has room for it',
    apply: (t) =>
      t.setup.cutter.barDiameter ? withCutter(t, { barDiameter: 1.2 * t.setup.cutter.barDiameter }) : undefined,
  },
  {
    name: 'boring bar of solid carbide',
    effort: 'minutes',
    assumes: 'carbide: 600 GPa, 14.5 g/cm³, from memory',
    apply: (t) =>
      t.setup.cutter.barDiameter ? withCutter(t, { barModulus: 600_000, barDensity: 14.5e-6 }) : undefined,
  },
  {
    name: 'edge half as wide, groove widened by side cuts',
    effort: 'minutes',
    apply: (t) => (plunging(t) ? { ...t, asked: { ...t.asked, depth: t.asked.depth / 2 } } : undefined),
  },
  {
    name: 'adjust the gibs of cross slide and top slide',
    effort: 'an evening',
    assumes: 'half the deflection of both; a fitted gib gave a third in one measurement [SNAF]',
    apply: (t) => scaled(t, { crossSlide: 2, topSlide: 2 }),
  },
  {
    name: 'solid block in place of the top slide',
    effort: 'a project',
    assumes: 'a block six times as stiff as the slide; judgement',
    apply: (t) => scaled(t, { topSlide: 6 }),
  },
  {
    name: 'stouter tool post',
    effort: 'a project',
    assumes: 'twice as stiff; judgement',
    apply: (t) => scaled(t, { toolPost: 2 }),
  },
  {
    name: 'preloaded angular-contact bearings with steel spacers in the spindle',
    effort: 'a project',
    assumes:
      'four times as stiff along the axis, as computed for pairs against single deep-groove rows [NSKF]; half as stiff again sideways',
    apply: (t) => scaled(t, { spindleAxial: 4, spindleRadial: 1.5 }),
  },
];

/** Things turners do that need more than springs and masses to judge. */
export const notReckoned: readonly string[] = [
  'cutting from behind with the edge upside down: the model has no direction of the slides’ lift',
  'lead or rubber to damp: the damping it would bring is not known',
  'a spindle speed swung up and down during the cut',
];

function withSpeed(trial: Trial, speed: number | undefined): Trial | undefined {
  return speed === undefined ? undefined : { ...trial, asked: { ...trial.asked, speed } };
}

/** The same work with less of it standing out: what is nearest to the jaws is held deeper. */
function shortened(trial: Trial, share: number): Trial {
  const { work, stations } = trial.setup;
  const away = end(trial) * (1 - share);
  const sections = work.sections
    .filter((s) => s.to > away + 1e-6)
    .map((s) => ({ ...s, from: Math.max(0, s.from - away), to: s.to - away }));
  const centreAt = work.centreAt === undefined ? undefined : Math.max(1e-3, work.centreAt - away);
  const steady = work.steady && work.steady.at > away + 1 ? { ...work.steady, at: work.steady.at - away } : undefined;
  const places = [...new Set(stations.map((z) => Math.max(0, z - away)))];
  return { ...trial, setup: { ...trial.setup, stations: places, work: { ...work, sections, centreAt, steady } } };
}
