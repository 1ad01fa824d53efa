/** How deep a cut may go at each speed of the lathe, as a chart, with cuts marked on it. */
import type { DepthsAtSpeeds } from '@sparewright/core/lathe/depth-at-speeds';
import { type Mm, mmPerInch, type Rpm } from '@sparewright/core/units/quantities';
import { presentNumber } from '../present/number.ts';
import type { PresentSettings } from '../present/settings.ts';
import type { Chart, ChartMark } from './chart.ts';

/** A cut to be marked. */
export interface MarkedCut {
  readonly speed: Rpm;
  readonly depth: Mm;
  /** As written beside it. */
  readonly label: string;
  readonly of?: string | undefined;
}

/** What `depthsAtSpeeds` answers, as it is or as the question gives it. */
export type DepthLimits = Pick<DepthsAtSpeeds, 'speeds' | 'course' | 'stands' | 'deepest'> & {
  readonly thinnest: Mm | null | undefined;
};

/** A little more than the speeds, so that the axis is not cut short where nothing is drawn. */
function speedRange(speeds: readonly { readonly speed: Rpm }[], marks: readonly MarkedCut[]) {
  const all = [...speeds, ...marks].map((s) => s.speed);
  return { from: 0.9 * Math.min(...all), to: 1.1 * Math.max(...all) };
}

/**
 * The band runs from the depth at which singing is likely to that at which one may start without a second thought; the line in it
 * is as likely as not.
 *
 * @param plunge  the depth is the width of a grooving or parting edge
 */
export function depthChart(
  { speeds, course, stands, deepest, thinnest }: DepthLimits,
  marks: readonly MarkedCut[],
  { units, decimalSign, plunge, title }: PresentSettings & { readonly plunge: boolean; readonly title: string },
): Chart {
  const length = (mm: Mm): number => (units === 'in' ? mm / mmPerInch : mm);
  const what = plunge ? 'width of the edge' : 'depth on the radius';
  // A limit beyond the deepest looked at is not known: a line only goes up to there from the next speed at which it is.
  const points = (depth: (s: DepthsAtSpeeds['speeds'][number]) => Mm) =>
    course.map((s, i) => {
      const near = [course[i - 1], s, course[i + 1]].some((other) => other && depth(other) < deepest);
      return [s.speed, near ? length(Math.min(depth(s), deepest)) : Number.NaN] as const;
    });
  const known = (depth: (s: DepthsAtSpeeds['speeds'][number]) => Mm) => course.some((s) => depth(s) < deepest);
  const singing = known((s) => s.sings.good);
  const driven = known((s) => s.power);
  const highest = Math.max(...marks.map((m) => m.depth), ...speeds.map((s) => Math.min(s.sings.bad, deepest)));
  const least = Math.min(...speeds.map((s) => s.sings.good));
  const figure = (mm: Mm) => `${presentNumber(Number(length(mm).toPrecision(2)), decimalSign)} ${units}`;
  return {
    title,
    description: [
      `Spindle speeds of the lathe across, ${what} upwards.`,
      singing
        ? `The least at which it may begin to sing is ${figure(least)}.`
        : `It seldom sings at any speed up to ${figure(deepest)}, the deepest looked at.`,
      ...marks.map((m) => `${m.label}: ${figure(m.depth)} at ${m.speed} rpm.`),
    ].join(' '),
    x: {
      title: 'spindle speed',
      unit: 'rpm',
      scale: 'log',
      ticks: speeds.map((s) => s.speed),
      ...speedRange(speeds, marks),
    },
    y: { title: what, unit: units, from: 0, to: length(Math.min(deepest, 1.15 * highest)) },
    bands: singing
      ? [
          {
            points: course.map((s) => [s.speed, length(s.sings.good), length(Math.min(s.sings.bad, deepest))] as const),
          },
        ]
      : [],
    lines: [
      ...(singing
        ? [
            ...(known((s) => s.sings.bad)
              ? [{ points: points((s) => s.sings.bad), meaning: 'inferred', label: 'mostly sings above' } as const]
              : []),
            ...(known((s) => s.sings.even)
              ? [{ points: points((s) => s.sings.even), meaning: 'computed', label: 'as likely as not' } as const]
              : []),
            { points: points((s) => s.sings.good), meaning: 'inferred', label: 'seldom sings below' } as const,
          ]
        : []),
      ...(driven ? [{ points: points((s) => s.power), meaning: 'limit', label: 'motor at its end' } as const] : []),
    ],
    rules: [
      ...(thinnest === undefined || thinnest === null || thinnest > deepest
        ? []
        : [{ at: length(thinnest), along: 'x', meaning: 'limit', label: 'rubs below' } as const]),
      ...(plunge || stands >= deepest
        ? []
        : [{ at: length(stands), along: 'x', meaning: 'limit', label: 'most the cutter stands' } as const]),
    ],
    marks: [
      // A stepped drive has only these speeds, whatever the lines between them seem to say.
      ...speeds.flatMap((s): ChartMark[] =>
        [s.sings.good, s.sings.even]
          .filter((depth) => depth < deepest)
          .map((depth) => ({ x: s.speed, y: length(depth), shape: 'ring', meaning: 'computed' })),
      ),
      ...marks.map(
        (m): ChartMark => ({
          x: m.speed,
          y: length(m.depth),
          shape: 'dot',
          meaning: 'accent',
          label: m.label,
          of: m.of,
        }),
      ),
    ],
  };
}
