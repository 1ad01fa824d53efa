/**
 * Splits what is to come off into passes: equal depths, the last two alike so that the cut before tells what the last will do.
 */
import { DomainError } from '../../errors.ts';
import type { Mm } from '../../units/quantities.ts';
import { type Dial, type DialSetting, dialSetting, slidePerDivision, wholeDivisions } from './dial.ts';

export interface PlannedPass {
  /** Depth on the radius that the dial asks for. */
  readonly depth: Mm;
  /** Diameter after it, if nothing gave way. */
  readonly diameter: Mm;
  readonly setting: DialSetting;
}

/**
 * Divides a number of dial divisions into passes as equal as whole divisions allow: the last two alike, the deeper ones first.
 *
 * @param divisions  to come off altogether, a whole number [-]
 * @param count  number of passes, at most as many as there are divisions [-]
 * @returns divisions of each pass, in order [-]
 * @throws DomainError when there are more passes than divisions
 * @source common-practice the last two passes alike tell what the last will do
 * @valid whole numbers; two passes of an odd number differ by one
 * @example shareOut(17, 4) → [5, 4, 4, 4]
 */
export function shareOut(divisions: number, count: number): number[] {
  if (!(count >= 1 && count <= divisions)) throw new DomainError('count', count, `1 to ${divisions} passes`);
  const share = Math.floor(divisions / count);
  const over = divisions - share * count;
  if (count < 3) return Array.from({ length: count }, (_, i) => share + (i < over ? 1 : 0));
  const last = over === count - 1 ? share + 1 : share;
  const rest = divisions - 2 * last;
  const before = count - 2;
  const each = Math.floor(rest / before);
  return [...Array.from({ length: before }, (_, i) => each + (i < rest - each * before ? 1 : 0)), last, last];
}

/**
 * Passes from one diameter to another in whole dial divisions. Outside work ends at or above the target, a bore at or below it, by
 * less than a division.
 *
 *     n = ⌊(|from − to| / 2) / s⌋ divisions, in ⌈n / ⌊greatest / s⌋⌉ passes
 *
 * @param from  diameter at which the dial is zeroed (cutter touching) [mm]
 * @param to  diameter wanted [mm]
 * @param greatest  greatest depth of a pass on the radius [mm]
 * @param dial  dial of the cross slide
 * @returns the passes in order; none when less than a division is to come off
 * @throws DomainError when the greatest depth is less than one division
 * @source geometry
 * @valid any two diameters
 * @example planPasses(20, 19, 0.5, { division: 0.02, perTurn: 1, reads: 'radius' })[0].diameter → 19
 */
export function planPasses(from: Mm, to: Mm, greatest: Mm, dial: Dial): PlannedPass[] {
  const finest = slidePerDivision(dial);
  const most = Math.floor(greatest / finest + 1e-6);
  if (!(most >= 1)) throw new DomainError('greatest', greatest, `at least one division, ${finest} mm`);
  const divisions = wholeDivisions(Math.abs(from - to) / 2, dial);
  if (divisions === 0) return [];
  const sign = from > to ? -2 : 2;
  let done = 0;
  return shareOut(divisions, Math.ceil(divisions / most)).map((share) => {
    done += share;
    const setting = dialSetting(done * finest, dial);
    return { depth: share * finest, diameter: from + sign * setting.travel, setting };
  });
}
