/** The cuts of a job over the speeds of the lathe, each with the chance that it sings. */
import type { CutChances } from '@sparewright/core/lathe/chance-at-speeds';
import { chatterLimits } from '@sparewright/core/lathe/cut-verdict';
import { presentShare } from '../present/number.ts';
import type { DecimalSign } from '../present/settings.ts';
import type { Chart, ChartMark } from './chart.ts';

/** Cuts whose course over the other speeds is drawn. */
const followed = 4;

/**
 * Every cut is a mark at its own speed; of those nearest to singing, a line that bears its name shows what another speed would do.
 *
 * @param name  what a cut is called on the chart, short
 */
export function jobChart(
  cuts: readonly CutChances[],
  {
    decimalSign,
    title,
    name,
  }: { readonly decimalSign: DecimalSign; readonly title: string; readonly name: (id: string) => string },
): Chart {
  const percent = (share: number) => 100 * share;
  const worst = cuts.toSorted((a, b) => b.own.chance - a.own.chance).slice(0, followed);
  const speeds = cuts.flatMap((c) => [c.own.speed, ...c.speeds.map((s) => s.speed)]);
  const told = worst.map((c) => `${name(c.id)} ${presentShare(c.own.chance, decimalSign)} at ${c.own.speed} rpm`);
  return {
    title,
    description: `Spindle speeds across, chance of singing upwards, one mark for each cut. Nearest to singing: ${told.join('; ')}.`,
    x: {
      title: 'spindle speed',
      unit: 'rpm',
      scale: 'log',
      ticks: cuts[0]?.speeds.map((s) => s.speed),
      from: 0.85 * Math.min(...speeds),
      to: 1.15 * Math.max(...speeds),
    },
    y: { title: 'chance that it sings', unit: '%', from: 0, to: 100 },
    lines: worst.map((c) => ({
      points: c.course.map((s) => [s.speed, percent(s.chance)] as const),
      meaning: 'inferred',
      label: name(c.id),
      of: c.id,
    })),
    rules: [
      { at: percent(chatterLimits.good), along: 'x', meaning: 'limit', label: 'goes below' },
      { at: percent(chatterLimits.bad), along: 'x', meaning: 'limit', label: 'too much above' },
    ],
    marks: [
      // A stepped drive has only these speeds, whatever the lines between them seem to say.
      ...worst.flatMap((c) =>
        c.speeds.map(
          (s): ChartMark => ({ x: s.speed, y: percent(s.chance), shape: 'ring', meaning: 'computed', of: c.id }),
        ),
      ),
      ...cuts.map(
        (c, i): ChartMark => ({
          x: c.own.speed,
          y: percent(c.own.chance),
          shape: 'dot',
          meaning: 'accent',
          label: beside(cuts, i, name),
          of: c.id,
        }),
      ),
    ],
  };
}

/** Marks nearer to each other than this share one label [%]. */
const near = 5;

/** The label of a mark: of all that stand close by, written once, at the highest of them. */
function beside(cuts: readonly CutChances[], at: number, name: (id: string) => string): string | undefined {
  const own = cuts[at]?.own;
  if (!own) return undefined;
  const column = cuts.filter((c) => c.own.speed === own.speed).toSorted((a, b) => b.own.chance - a.own.chance);
  const groups: CutChances[][] = [];
  for (const cut of column) {
    const group = groups.at(-1);
    if (group && 100 * ((group[0]?.own.chance ?? 0) - cut.own.chance) < near) group.push(cut);
    else groups.push([cut]);
  }
  const group = groups.find((g) => g[0] === cuts[at]);
  return group?.map((c) => name(c.id)).join(', ');
}
