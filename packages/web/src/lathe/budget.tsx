/** Where the give comes from: parts of lathe, work and cutter as bars, for each of the three directions. */
import { drawBars } from '@sparewright/output/chart/draw-bars';
import { presentNumber, presentShare } from '@sparewright/output/present/number';
import { useCallback } from 'react';
import { rangeWords } from './figures.ts';
import { partName } from './part-names.ts';
import { Picture } from './picture.tsx';
import type { useAnswer } from './use-answer.ts';

type Budget = NonNullable<ReturnType<typeof useAnswer<'stiffness-budget'>>['answer']>;
type Direction = Budget['directions'][number];

/** The push that is imagined: a heavy finishing cut to a light roughing cut [N]. */
const perForce = 100;

const names: Readonly<Record<Direction['direction'], string>> = {
  radial: 'Away from the axis: size and taper',
  axial: 'Along the axis: facing and lengths',
  tangential: 'The way of the cutting force',
};

export function StiffnessBudget({ budget }: { readonly budget: Budget }) {
  return (
    <section aria-labelledby="budget">
      <h3 className="large" id="budget">
        What gives how much
      </h3>
      <p className="secondary">
        At the free end of a pin Ø10 × 40 mm held over 18 mm, first turning cutter; most likely values. A stiffer part
        helps by no more than its bar is long.
      </p>
      {budget.directions.map((d) => (
        <BudgetBars key={d.direction} direction={d} />
      ))}
    </section>
  );
}

function BudgetBars({ direction }: { readonly direction: Direction }) {
  const draw = useCallback(
    (width: number) =>
      drawBars(
        {
          title: names[direction.direction],
          description: direction.parts.map((p) => `${p.what}: ${presentShare(p.share, 'point')}`).join('. '),
          bars: direction.parts.map((p) => ({
            label: partName(p.of, p.what),
            value: p.share,
            written: `${presentShare(p.share, 'point')}, ${presentNumber(Number((perForce * p.give).toPrecision(2)), 'point')} µm`,
            meaning: 'computed' as const,
          })),
        },
        { decimalSign: 'point', width },
      ),
    [direction],
  );
  const { low, middle, high } = direction.give;
  return (
    <figure>
      <figcaption>
        {names[direction.direction]}: gives{' '}
        {rangeWords({ low: perForce * low, middle: perForce * middle, high: perForce * high })} µm under {perForce} N
      </figcaption>
      <Picture draw={draw} />
    </figure>
  );
}
