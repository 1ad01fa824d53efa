/** The table of a curve by steps: how far in along the work, how far in across, and what is left to file at each step. */
import type { Mm } from '../../units/quantities.ts';
import type { DialTable } from '../dial-table.ts';
import { curveSteps, type StepCurve, stepsForCusp } from './curve-steps.ts';
import { type Dial, dialNote } from './dial.ts';
import { type DialledStep, dialSteps } from './dialled-steps.ts';
import { inMm, type Stretch } from './stretch.ts';

/** Corners no higher than this are quickly filed; `common practice`. */
const easyCusp: Mm = 0.15;
const mostSteps = 24;

export interface CurveTableInput {
  readonly id: string;
  readonly operation: string;
  readonly title: string;
  readonly curve: StepCurve;
  readonly noseRadius: Mm;
  /** Diameter the cross slide is zeroed at. */
  readonly touch: Mm;
  readonly along: Dial;
  readonly alongName: string;
  readonly across: Dial;
  /** Where the curve lies. */
  readonly stretch: Stretch;
}

/** Where the steps are counted from: the free end itself, or a place that far behind it. */
function startOf({ end, near }: Stretch): string {
  return near < 5e-4
    ? `touching the ${end} end`
    : `at the beginning of the curve, ${inMm(near)} from the ${end} end of the part`;
}

/** The steps in whole divisions: so many that their corners are quickly filed. */
export function stepsOf(
  input: Pick<CurveTableInput, 'curve' | 'noseRadius' | 'touch' | 'along' | 'across'>,
): DialledStep[] {
  const count = Math.min(mostSteps, stepsForCusp(input.curve, easyCusp, input.noseRadius));
  const exact = curveSteps(input.curve, count, input.noseRadius);
  return dialSteps(input.curve, exact, input.noseRadius, input.touch / 2, {
    along: input.along,
    across: input.across,
  });
}

/** `steps`: what {@link stepsOf} makes of the same. */
export function curveTable(input: CurveTableInput, steps: readonly DialledStep[]): DialTable {
  return {
    id: input.id,
    kind: 'curve',
    title: input.title,
    operation: input.operation,
    columns: [
      { key: 'step', title: 'step', unit: '', decimals: 0 },
      { key: 'alongTurns', title: 'along: turns', unit: '', decimals: 0 },
      { key: 'alongDivisions', title: 'divisions', unit: '', decimals: 0 },
      { key: 'acrossTurns', title: 'across: turns', unit: '', decimals: 0 },
      { key: 'acrossDivisions', title: 'divisions', unit: '', decimals: 0 },
      {
        key: 'depth',
        title: input.stretch.near < 5e-4 ? 'from the end' : 'from its beginning',
        unit: 'mm',
        decimals: 2,
      },
      { key: 'diameter', title: 'to diameter', unit: 'mm', decimals: 2 },
      { key: 'cusp', title: 'left to file', unit: 'mm', decimals: 2 },
      { key: 'done', title: 'done', unit: '', blank: true },
    ],
    rows: steps.map((s, i) => ({
      step: i + 1,
      alongTurns: s.along.turns,
      alongDivisions: s.along.divisions,
      acrossTurns: s.across.turns,
      acrossDivisions: s.across.divisions,
      depth: s.depth,
      diameter: 2 * s.radius,
      cusp: s.cusp,
    })),
    notes: [
      `Nose radius of the cutter: ${input.noseRadius} mm. With another cutter ask for the table again: the stops change.`,
      `Zero along with the cutter ${startOf(input.stretch)}, across with it touching Ø${input.touch.toFixed(3)} mm.`,
      dialNote(input.alongName, input.along),
      dialNote('Cross slide', input.across),
      'Each step: set along, feed across inward to the stop, never past it. Blue the steps, file until the blue in the inner corners is just gone.',
    ],
  };
}
