/**
 * The frequencies at which a chip can sing at all, with what every spindle speed needs of them.
 */
import type { Hertz } from '../units/quantities.ts';
import { checkModes, type OrientedMode, receptanceAt } from './receptance.ts';

/** Frequencies with P < 0, and what every speed needs of them. */
export interface LobeGrid {
  readonly modes: readonly OrientedMode[];
  readonly omega: Float64Array;
  readonly real: Float64Array;
  /** Sine and cosine of atan(Q/P). */
  readonly sine: Float64Array;
  readonly cosine: Float64Array;
  /** 1 when the frequency before it on the grid had P < 0 too. */
  readonly joined: Uint8Array;
}

/** Distances from a mode, in half-widths of its resonance, at which the response is looked at. */
const fine = [
  0.05, 0.1, 0.2, 0.3, 0.45, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.4, 1.7, 2, 2.5, 3.2, 4, 5.5, 8, 12, 20, 35,
];
const coarse = [0.15, 0.4, 0.7, 1, 1.4, 2.2, 4, 9, 22];

/** Frequencies at which the response of modes is looked at, in order: close together about each mode. */
export function lookedAt(
  modes: readonly Pick<OrientedMode, 'frequency' | 'damping'>[],
  detail: 'fine' | 'coarse',
): Float64Array {
  const lowest = Math.min(...modes.map((m) => m.frequency));
  const highest = Math.max(...modes.map((m) => m.frequency));
  const frequencies: Hertz[] = [];
  const background = detail === 'fine' ? 60 : 12;
  for (let i = 0; i <= background; i++) {
    frequencies.push(0.2 * lowest * ((25 * highest) / lowest) ** (i / background));
  }
  for (const { frequency, damping } of modes) {
    frequencies.push(frequency);
    for (const t of detail === 'fine' ? fine : coarse) {
      frequencies.push(frequency * Math.sqrt(1 + 2 * damping * t));
      if (1 - 2 * damping * t > 0.04) frequencies.push(frequency * Math.sqrt(1 - 2 * damping * t));
    }
  }
  return Float64Array.from(frequencies).sort();
}

/**
 * What the speeds need of the modes, gathered once for all of them.
 *
 * @throws DomainError when a mode is out of range
 */
export function lobeGrid(modes: readonly OrientedMode[], frequencies: Float64Array): LobeGrid {
  checkModes(modes);
  const omega: number[] = [];
  const real: number[] = [];
  const sine: number[] = [];
  const cosine: number[] = [];
  const joined: number[] = [];
  let before = false;
  for (const f of frequencies) {
    const { re, im } = receptanceAt(modes, f);
    if (re < 0) {
      const size = re * re + im * im;
      const root = Math.sqrt(size);
      omega.push(2 * Math.PI * f);
      real.push(re / size);
      // P = Re G/|G|², Q = −Im G/|G|²; the angle lies where the cosine is positive, and P is negative.
      cosine.push(-re / root);
      sine.push(im / root);
      joined.push(before ? 1 : 0);
    }
    before = re < 0;
  }
  return {
    modes,
    omega: Float64Array.from(omega),
    real: Float64Array.from(real),
    sine: Float64Array.from(sine),
    cosine: Float64Array.from(cosine),
    joined: Uint8Array.from(joined),
  };
}
