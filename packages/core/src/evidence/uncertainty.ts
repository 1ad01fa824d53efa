/**
 * The uncertainty of one reading, put together from what is known of the gauge, the hand and the warmth.
 */
import { DomainError } from '../errors.ts';
import type { Celsius, Mm } from '../units/quantities.ts';
import type { Weighed } from './evidence-result.ts';
import { gaugeHabit, permissibleError, type Touch } from './gauge-error.ts';
import { productOfSmall } from './propagate.ts';
import type { Gauge, Reading } from './schema.ts';

/**
 * Standard uncertainty of a quantity of which only limits are known.
 *
 *     u = a / √3
 *
 * @param halfWidth  the limit, plus or minus [mm]
 * @returns standard uncertainty [mm]
 * @source GUM clause 4.3.7
 * @valid rectangular distribution
 * @example rectangular(0.004) → 0.00231
 */
export function rectangular(halfWidth: Mm): Mm {
  return halfWidth / Math.sqrt(3);
}

/**
 * Standard uncertainty of reading to the nearest step.
 *
 *     u = w / √12
 *
 * @param step  the smallest step [mm]
 * @returns standard uncertainty [mm]
 * @source GUM clause F.2.2.1
 * @valid the reading is rounded to the nearest step
 * @example resolutionUncertainty(0.01) → 0.00289
 */
export function resolutionUncertainty(step: Mm): Mm {
  return step / Math.sqrt(12);
}

/**
 * Size at 20 °C of a part measured warm with a steel gauge at the same temperature or at 20 °C.
 *
 *     L20 = L (1 + αm (tm − 20)) / (1 + αp (tp − 20))
 *
 * @param reading  what the gauge shows [mm]
 * @param partExpansion  expansion of the part [1/K]
 * @param partTemperature  temperature of the part [°C]
 * @param gaugeExpansion  expansion of the gauge [1/K]
 * @param gaugeTemperature  temperature of the gauge [°C]
 * @returns size at 20 °C [mm]
 * @throws DomainError outside −20 to 150 °C, where the handbook coefficients no longer hold
 * @source NPL-FAQ; ISO1
 * @valid −20 to 150 °C
 * @example at20(500.035, 11.7e-6, 23.7, 11.5e-6, 20) → 500.01335
 */
export function at20(
  reading: Mm,
  partExpansion: number,
  partTemperature: Celsius,
  gaugeExpansion: number,
  gaugeTemperature: Celsius,
): Mm {
  for (const t of [partTemperature, gaugeTemperature])
    if (!(t >= -20 && t <= 150)) throw new DomainError('temperature', t, '−20 to 150 °C');
  return (reading * (1 + gaugeExpansion * (gaugeTemperature - 20))) / (1 + partExpansion * (partTemperature - 20));
}

/** A handbook's expansion is good to this part of itself. `common practice` */
const handbook = 0.1;
/** Steel of the gauge; half width to which the temperature of a workshop part is known without a thermometer: `common practice`. */
const gaugeSteel = 11.5e-6;
const unknownTemperature: Celsius = 3;
const knownTemperature: Celsius = 1;

/**
 * Puts a reading right (zero error, temperature) and combines its uncertainty by root sum of squares.
 * Without a named gauge it is taken for a calliper, the worst that is usual.
 *
 * @param reading  as written
 * @param gauge  the gauge it was taken with, if known
 * @param touch  outside, inside or depth
 * @param expansion  expansion of the part's material [1/K]
 * @param hand  repeatability found from the owner's own repeats; left out, what is usual with such a gauge [mm]
 */
export function weigh(reading: Reading, gauge: Gauge | undefined, touch: Touch, expansion: number, hand?: Mm): Weighed {
  const used: Gauge = gauge ?? { id: 'calliper', name: 'unnamed gauge, taken for a calliper', kind: 'calliper' };
  const habit = gaugeHabit(used.kind);
  const straight = reading.value - (used.zeroError ?? 0);
  // A reading in the workshop is taken with the gauge lying in the same room, a warm part fresh from the lathe is not.
  const value =
    reading.temperature === undefined
      ? straight
      : at20(straight, expansion, reading.temperature, gaugeSteel, reading.gaugeTemperature ?? 20);
  const warmth = reading.temperature === undefined ? unknownTemperature : knownTemperature;
  const difference = reading.temperature === undefined ? Math.abs(expansion - gaugeSteel) : expansion;
  const budget = [
    { from: 'error of the gauge', share: rectangular(permissibleError(used, reading.value, touch)) },
    { from: 'smallest step read', share: resolutionUncertainty(used.resolution ?? habit.resolution) },
    { from: 'repeatability of the hand', share: hand ?? habit.repeatability },
    {
      from: 'temperature',
      share: Math.hypot(
        rectangular(reading.value * difference * warmth),
        productOfSmall(reading.value, rectangular(handbook * expansion), rectangular(warmth)),
      ),
    },
  ].toSorted((a, b) => b.share - a.share);
  return { reading, value, uncertainty: Math.hypot(...budget.map((b) => b.share)), budget };
}
