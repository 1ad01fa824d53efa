/**
 * The error function's far tails, without loss: what probabilities of rare events are made of.
 */

/** Below this the series of erf is used, above it the continued fraction of erfcx. */
const seam = 1.5;

/**
 * Error function.
 *
 *     erf x = 2/√π · e^(−x²) Σ 2ⁿ x^(2n+1) / (1·3·5 … (2n+1))
 *
 * @param x  argument [-]
 * @returns erf x, between −1 and 1 [-]
 * @source abramowitz-stegun 7.1.6
 * @valid all x
 * @example erf(1) → 0.8427007929497149
 */
export function erf(x: number): number {
  if (Math.abs(x) > seam) return x > 0 ? 1 - erfc(x) : erfc(-x) - 1;
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > 1e-18 * Math.abs(sum); n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}

/**
 * Complementary error function, exact in relative terms far out.
 *
 *     erfc x = 1 − erf x = e^(−x²) erfcx x
 *
 * @param x  argument [-]
 * @returns erfc x, between 0 and 2 [-]
 * @source abramowitz-stegun 7.1.2
 * @valid all x; below the smallest number representable beyond x ≈ 27
 * @example erfc(3) → 0.0000220904969985854
 */
export function erfc(x: number): number {
  if (x < -seam) return 2 - erfc(-x);
  return x <= seam ? 1 - erf(x) : Math.exp(-x * x) * erfcx(x);
}

/**
 * Scaled complementary error function: what is left of erfc when its e^(−x²) is taken out.
 *
 *     erfcx x = e^(x²) erfc x = (1/√π) · 1/(x + (1/2)/(x + 1/(x + (3/2)/(x + …))))
 *
 * @param x  argument [-]
 * @returns erfcx x [-]
 * @source abramowitz-stegun 7.1.14
 * @valid x > −26, beyond which the value is larger than any number representable
 * @example erfcx(10) → 0.0561409927438226
 */
export function erfcx(x: number): number {
  if (x < seam) return Math.exp(x * x) * erfc(x);
  if (x > 1e8) return 1 / (x * Math.sqrt(Math.PI));
  // Continued fraction from the tail; deep enough for full precision at the seam.
  let tail = x;
  for (let k = Math.ceil(20 + 500 / (x * x)); k >= 1; k--) tail = x + k / 2 / tail;
  return 1 / (Math.sqrt(Math.PI) * tail);
}
