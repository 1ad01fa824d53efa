/**
 * Splits what is to come off into passes: equal depths, the last two alike so that the cut before tells what the last will do.
 */
import { DomainError } from '../../errors.ts';
import type { Mm } from '../../units/quantities.ts';
import { type Dial, type DialSetting, dialSetting } from './dial.ts';

export interface PlannedPass {
  /** Depth on the radius that the dial asks for. */
  readonly depth: Mm;
  /** Diameter after it, if nothing gave way. */
  readonly diameter: Mm;
  readonly setting: DialSetting;
}

/**
 * Passes from one diameter to another in whole dial divisions. Outside work ends at or above the target, a bore at or below it, by less than a division.
 *
 * @param from  diameter at which the dial is zeroed (cutter touching) [mm]
 * @param to  diameter wanted [mm]
 * @param greatest  greatest depth of a pass on the radius [mm]
 * @param dial  dial of the cross slide
 * @throws DomainError when the greatest depth is less than one division
 */
export function planPasses(from: Mm, to: Mm, greatest: Mm, dial: Dial): PlannedPass[] {
  const inward = from > to;
  const total = Math.abs(from - to) / 2;
  const finest = dial.reads === 'diameter' ? dial.division / 2 : dial.division;
  if (!(greatest >= finest)) throw new DomainError('greatest', greatest, `at least one division, ${finest} mm`);
  const count = Math.max(1, Math.ceil(total / greatest - 1e-9));
  const settings = Array.from({ length: count }, (_, i) => dialSetting((total * (i + 1)) / count, dial));
  const passes: PlannedPass[] = [];
  let before = 0;
  for (const setting of settings) {
    if (setting.travel <= before) continue;
    const diameter = inward ? from - 2 * setting.travel : from + 2 * setting.travel;
    passes.push({ depth: setting.travel - before, diameter, setting });
    before = setting.travel;
  }
  return passes;
}
