/**
 * What a reading at a worn place says: a normal gauge error and a one-sided wear of exponential law together, the
 * exponentially modified normal distribution, mirrored because wear takes off.
 */
import { DomainError } from '../errors.ts';
import { erfc, erfcx } from '../numerics/error-function.ts';
import type { Mm } from '../units/quantities.ts';

/**
 * Logarithm of the density of a reading at a worn place of a shaft, without loss in either tail.
 *
 *     y = D + e − w,  e ~ N(0, u²),  w ~ exponential with mean λ
 *     z = (y − D)/u,  r = u/λ,  x = (z + r)/√2
 *     ln p = −z²/2 + ln(erfcx x / 2λ)            for x ≥ 0
 *     ln p = z r + r²/2 + ln(erfc x / 2λ)        for x < 0
 *
 * @param above  reading less the size as made, y − D [mm]
 * @param uncertainty  standard uncertainty of the reading [mm]
 * @param wear  mean wear λ [mm]
 * @returns natural logarithm of the density per millimetre [-]
 * @throws DomainError when uncertainty or wear is not above 0
 * @source composed-error
 * @valid any reading; u/λ from 10⁻⁸ to 10⁸
 * @example logWornReading(-0.02, 0.004, 0.03) → 2.84878
 */
export function logWornReading(above: Mm, uncertainty: Mm, wear: Mm): number {
  if (!(uncertainty > 0)) throw new DomainError('uncertainty', uncertainty, 'above 0 mm');
  if (!(wear > 0)) throw new DomainError('wear', wear, 'above 0 mm');
  const z = above / uncertainty;
  const r = uncertainty / wear;
  const x = (z + r) / Math.SQRT2;
  if (x >= 0) return -(z * z) / 2 + Math.log(erfcx(x) / (2 * wear));
  return z * r + (r * r) / 2 + Math.log(erfc(x) / (2 * wear));
}

/** The erfcx function in a table with its own slope, 2x·erfcx x − 2/√π, so that a cubic between two entries is good to 10⁻⁹. */
const perUnit = 32;
const tableEnd = 12;
const table = new Float64Array(tableEnd * perUnit + 2).map((_, i) => erfcx(i / perUnit));

/**
 * The scaled complementary error function, quick enough to be asked a hundred thousand times.
 *
 *     cubic between erfcx and its slope 2x erfcx x − 2/√π at 32 places a unit; beyond 12: (1 − 1/2x² + 3/4x⁴ − 15/8x⁶)/(x √π)
 *
 * @param x  argument, not below 0 [-]
 * @returns erfcx x, to 10⁻⁸ of itself [-]
 * @source abramowitz-stegun 7.1.23
 * @valid x ≥ 0
 * @example quickErfcx(1) → 0.42758358
 */
export function quickErfcx(x: number): number {
  if (x >= tableEnd) {
    const q = 1 / (2 * x * x);
    return (1 - q * (1 - q * (3 - 15 * q))) / (x * 1.772453850905516);
  }
  const at = x * perUnit;
  const i = Math.floor(at);
  const t = at - i;
  const a = table[i] ?? 0;
  const b = table[i + 1] ?? 0;
  const slopeA = ((2 * i * a) / perUnit - 1.1283791670955126) / perUnit;
  const slopeB = ((2 * (i + 1) * b) / perUnit - 1.1283791670955126) / perUnit;
  const c = b - a - slopeA;
  const d = slopeB - slopeA;
  return a + t * (slopeA + t * (3 * c - d + t * (d - 2 * c)));
}

/**
 * Density of a reading at a worn place, for the grids of the inference: bell is e^(−z²/2), given because it is shared.
 *
 *     p = bell · erfcx(x)/2λ  for x ≥ 0;  e^(z r + r²/2) (1 − bell' …) = (2 e^(x²) − erfcx(−x)) · bell/2λ  for x < 0
 *
 * @param z  reading less size in uncertainties [-]
 * @param bell  e^(−z²/2) [-]
 * @param r  uncertainty over mean wear [-]
 * @param wear  mean wear λ [mm]
 * @returns density [1/mm]
 * @source composed-error
 * @valid r > 0, wear > 0
 * @example quickWornReading(-5, Math.exp(-12.5), 0.13333333, 0.03) → 17.267
 */
export function quickWornReading(z: number, bell: number, r: number, wear: Mm): number {
  const x = (z + r) * Math.SQRT1_2;
  if (x >= 0) return (bell * quickErfcx(x)) / (2 * wear);
  return (2 * Math.exp(z * r + (r * r) / 2) - bell * quickErfcx(-x)) / (2 * wear);
}
