/** A second, optional table of a curve by steps: the corners taken off with the top slide set over, where that saves filing. */
import { degrees, type Mm } from '../../units/quantities.ts';
import type { DialTable } from '../dial-table.ts';
import { type ChamferCut, chamferCuts, leftAfter } from './curve-chamfers.ts';
import type { StepCurve } from './curve-steps.ts';
import { type Dial, dialNote, dialSetting, slidePerDivision } from './dial.ts';
import type { DialledStep } from './dialled-steps.ts';

/** Corners are worth a cut each when that leaves no more than this share of the highest; `common practice`. */
const worthwhile = 0.6;

interface Dials {
  readonly crossSlide: Dial;
  readonly saddle?: Dial | undefined;
}

interface Cut extends ChamferCut {
  /** Step whose corner it takes off, counted from 1. */
  readonly step: number;
  readonly turns: number;
  readonly divisions: number;
}

export interface CurveChamfers {
  readonly table: DialTable;
  /** Height of the highest corner before and after. */
  readonly before: Mm;
  readonly after: Mm;
}

/** The slide whose division takes less off square to the cut, and the share of its travel that does. */
function finer({ angle }: ChamferCut, { crossSlide, saddle }: Dials) {
  const across = { by: 'cross slide', dial: crossSlide, share: Math.cos(angle) } as const;
  const along = saddle && ({ by: 'saddle', dial: saddle, share: Math.sin(angle) } as const);
  const takes = (slide: { dial: Dial; share: number }) => slidePerDivision(slide.dial) * slide.share;
  return along && takes(along) < takes(across) ? along : across;
}

/**
 * The chamfer cuts in whole divisions, never below the curve.
 *
 * @param noseRadius  of the cutter that cuts the steps, and the corners [mm]
 * @param dials  each cut is put on with the one that takes less off in a division
 * @returns the table with the corners before and after [mm]; undefined where the cuts would not save enough filing
 */
export function curveChamferTable(
  { id, operation, title }: Pick<DialTable, 'id' | 'operation' | 'title'>,
  curve: StepCurve,
  steps: readonly DialledStep[],
  noseRadius: Mm,
  dials: Dials,
): CurveChamfers | undefined {
  if (steps.length === 0) return undefined;
  const exact = chamferCuts(curve, steps, noseRadius);
  const left: Mm[] = steps.map((s) => s.cusp);
  const cuts = exact.flatMap((cut, k): Cut[] => {
    const step = steps[k];
    if (!step || cut.infeed === 0) return [];
    const longer = Math.max(Math.cos(cut.angle), Math.sin(cut.angle));
    const { by, dial, share } = finer(cut, dials);
    const { turns, divisions, travel } = dialSetting((cut.infeed * longer) / share, dial);
    const infeed = (travel * share) / longer;
    const after = leftAfter(curve, steps[k - 1], step, noseRadius, { angle: cut.angle, infeed });
    if (travel === 0 || after > worthwhile * step.cusp) return [];
    left[k] = after;
    return [{ ...cut, by, step: k + 1, turns, divisions, left: after }];
  });
  const before = Math.max(...steps.map((s) => s.cusp));
  const after = Math.max(...left);
  if (cuts.length === 0 || after > worthwhile * before) return undefined;
  const slides = new Set(cuts.map((c) => c.by));
  return {
    before,
    after,
    table: {
      id,
      kind: 'curve',
      title: `${title}: corners off with the top slide, if wanted`,
      operation,
      columns: [
        { key: 'step', title: 'corner of step', unit: '', decimals: 0 },
        { key: 'angle', title: 'top slide', unit: '°', decimals: 1 },
        { key: 'by', title: 'put on with', unit: '' },
        { key: 'turns', title: 'turns', unit: '', decimals: 0 },
        { key: 'divisions', title: 'divisions', unit: '', decimals: 0 },
        { key: 'left', title: 'left to file', unit: 'mm', decimals: 2 },
        { key: 'done', title: 'done', unit: '', blank: true },
      ],
      rows: cuts.map((c) => ({
        step: c.step,
        angle: Math.round(2 * degrees(c.angle)) / 2,
        by: c.by,
        turns: c.turns,
        divisions: c.divisions,
        left: c.left,
      })),
      notes: [
        `It leaves ${after.toFixed(2)} mm to file instead of ${before.toFixed(2)} mm, for one more setting of the top slide at each step.`,
        'Set the top slide so many degrees from the axis, touch the corner of the step with the side of the nose, put the cut on by so many divisions, and wind the top slide past the corner, no further than the faces on either side.',
        ...(slides.has('cross slide') ? [dialNote('Cross slide', dials.crossSlide)] : []),
        ...(slides.has('saddle') && dials.saddle ? [dialNote('Saddle', dials.saddle)] : []),
      ],
    },
  };
}
