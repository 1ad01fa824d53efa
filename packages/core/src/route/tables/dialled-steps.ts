/** The steps of a curve in whole divisions of the dials, each rounded to the side on which metal is left. */
import type { Mm } from '../../units/quantities.ts';
import { type CurveStep, deepestAt, distanceToCurve, type StepCurve, tipRadius } from './curve-steps.ts';
import { type Dial, type DialSetting, dialSetting } from './dial.ts';
import { cornerOf } from './step-corner.ts';

export interface DialledStep extends CurveStep {
  readonly along: DialSetting;
  readonly across: DialSetting;
}

/**
 * The same steps in whole divisions: first the depth is rounded down, then the tip's radius is found anew for that depth and rounded outward.
 *
 * @param curve  the curve
 * @param steps  exact steps
 * @param noseRadius  of the cutter [mm]
 * @param touch  radius at which the cross slide's dial was zeroed (tip touching), larger than every stop [mm]
 * @param dials  along the work and across it
 * @returns the steps with their settings; a step that the dial along cannot tell from the one before is left out
 * @throws DomainError when the zero lies inside the curve
 * @source geometry
 * @valid the zero of the cross slide at or outside the largest radius of the curve
 * @example dialSteps({ pieces: [{ kind: 'line', from: { z: 0, r: 5 }, to: { z: 2, r: 7 }, feature: 'a' }], depth: 2 }, [{ depth: 1, radius: 6, cusp: 0.5 }], 0, 8, { along: { division: 0.3, perTurn: 3, reads: 'travel' }, across: { division: 0.25, perTurn: 5, reads: 'radius' } })[0].radius → 6
 */
export function dialSteps(
  curve: StepCurve,
  steps: readonly CurveStep[],
  noseRadius: Mm,
  touch: Mm,
  dials: { readonly along: Dial; readonly across: Dial },
): DialledStep[] {
  const dialled: DialledStep[] = [];
  for (const step of steps) {
    const along = dialSetting(step.depth, dials.along);
    const before = dialled.at(-1)?.depth ?? 0;
    // A step that the dial cannot tell from the one before does nothing.
    if (along.travel <= before) continue;
    // A dial cannot show a millionth of a division: it must not carry the stop past the end of the curve, where nothing is in the way.
    const reached = Math.min(along.travel, step.depth);
    const across = dialSetting(touch - Math.max(0, tipRadius(curve, reached, noseRadius)), dials.across);
    const radius = touch - across.travel;
    dialled.push({
      along,
      across,
      depth: along.travel,
      radius,
      cusp: distanceToCurve(curve, cornerOf(dialled.at(-1), { depth: along.travel, radius }, noseRadius)),
    });
  }
  return dialled;
}

/**
 * The same steps in whole divisions for turning along: first the radius is rounded outward, then the depth is found anew for that radius and
 * rounded down. They are cut from the deepest, which is the widest, to the free end.
 *
 * @param curve  the curve
 * @param steps  exact steps, from the free end
 * @param noseRadius  of the cutter [mm]
 * @param touch  radius at which the cross slide's dial was zeroed (tip touching), larger than every stop [mm]
 * @param dials  along the work and across it
 * @returns the steps from the free end, with their settings; a step that comes to nothing is left out
 * @throws DomainError when the zero lies inside the curve
 * @source geometry
 * @valid the zero of the cross slide at or outside the largest radius of the curve
 * @example dialTurning({ pieces: [{ kind: 'line', from: { z: 0, r: 5 }, to: { z: 2, r: 7 }, feature: 'a' }], depth: 2 }, [{ depth: 1, radius: 6, cusp: 0.5 }], 0, 8, { along: { division: 0.3, perTurn: 3, reads: 'travel' }, across: { division: 0.25, perTurn: 5, reads: 'radius' } })[0].depth → 0.9
 */
export function dialTurning(
  curve: StepCurve,
  steps: readonly CurveStep[],
  noseRadius: Mm,
  touch: Mm,
  dials: { readonly along: Dial; readonly across: Dial },
): DialledStep[] {
  const dialled: DialledStep[] = [];
  for (const step of steps) {
    const across = dialSetting(touch - step.radius, dials.across);
    const radius = touch - across.travel;
    const along = dialSetting(deepestAt(curve, radius, noseRadius), dials.along);
    const before = dialled.at(-1)?.depth ?? 0;
    if (along.travel <= before) continue;
    const cusp = distanceToCurve(curve, { z: before, r: radius });
    dialled.push({ along, across, depth: along.travel, radius, cusp });
  }
  return dialled;
}
