/**
 * The frequencies at which a chip can sing at all, with what every spindle speed needs of them.
 */
import type { Hertz } from '../units/quantities.ts';
import { checkModes, type OrientedMode, receptanceAt } from './receptance.ts';

/**
 * Frequencies with P < 0, and what every limit needs of them: for each, one behind the other, ω [rad/s], P [N/mm], and sine and
 * cosine of atan(Q/P).
 */
export interface FacedGrid {
  readonly count: number;
  readonly entries: Float64Array;
  /**
   * Receptance to the rubbing over that to the chip, real and imaginary part for each frequency; left out where rubbing drives all
   * modes as the chip does.
   */
  readonly rubs?: Float64Array | undefined;
}

/** Numbers kept for each frequency of a grid. */
export const perFrequency = 4;

export interface LobeGrid extends FacedGrid {
  readonly modes: readonly OrientedMode[];
  /** 1 when the frequency before it on the list had P < 0 too. */
  readonly joined: Uint8Array;
}

/** Distances from a mode, in half-widths of its resonance, at which the response is looked at. */
const fine = [
  0.05, 0.1, 0.2, 0.3, 0.45, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.4, 1.7, 2, 2.5, 3.2, 4, 5.5, 8, 12, 20, 35,
];
const coarse = [0.15, 0.4, 0.7, 1, 1.4, 2.2, 4, 9, 22];

/** Frequencies at which the response of modes is looked at, close together about each mode; in order where they are fine. */
export function lookedAt(
  modes: readonly Pick<OrientedMode, 'frequency' | 'damping'>[],
  detail: 'fine' | 'coarse',
): Float64Array {
  let [lowest, highest] = [Infinity, 0];
  for (const { frequency } of modes) {
    lowest = Math.min(lowest, frequency);
    highest = Math.max(highest, frequency);
  }
  const background = detail === 'fine' ? 60 : 12;
  const distances = detail === 'fine' ? fine : coarse;
  const frequencies = new Float64Array(background + 1 + modes.length * (1 + 2 * distances.length));
  const ratio = ((25 * highest) / lowest) ** (1 / background);
  let n = 0;
  for (let f: Hertz = 0.2 * lowest; n <= background; f *= ratio) frequencies[n++] = f;
  for (const { frequency, damping } of modes) {
    frequencies[n++] = frequency;
    for (const t of distances) {
      const square = 2 * damping * t;
      frequencies[n++] = frequency * Math.sqrt(1 + square);
      if (1 - square > 0.04) frequencies[n++] = frequency * Math.sqrt(1 - square);
    }
  }
  // Coarse ones serve the least of all limits only, for which their order does not matter.
  return detail === 'fine' ? frequencies.slice(0, n).sort() : frequencies.slice(0, n);
}

/**
 * What the speeds need of the modes, gathered once for all of them.
 *
 * @throws DomainError when a mode is out of range
 */
export function lobeGrid(modes: readonly OrientedMode[], frequencies: Float64Array): LobeGrid {
  checkModes(modes);
  const grid = emptyGrid(frequencies.length);
  const joined = new Uint8Array(frequencies.length);
  let before = false;
  for (const f of frequencies) {
    const { re, im } = receptanceAt(modes, f);
    if (re < 0) {
      joined[grid.count] = before ? 1 : 0;
      putOnGrid(grid, 2 * Math.PI * f, re, im);
    }
    before = re < 0;
  }
  return { modes, ...grid, joined };
}

/** A grid that is being gathered. */
export interface GrowingGrid {
  count: number;
  readonly entries: Float64Array;
}

/** A grid with room for so many frequencies. */
export function emptyGrid(most: number): GrowingGrid {
  return { count: 0, entries: new Float64Array(perFrequency * most) };
}

/** Adds a frequency at which the real part of the receptance is negative. */
export function putOnGrid(grid: GrowingGrid, omega: number, re: number, im: number): void {
  const { entries } = grid;
  const at = perFrequency * grid.count;
  const size = re * re + im * im;
  const root = Math.sqrt(size);
  entries[at] = omega;
  entries[at + 1] = re / size;
  // P = Re G/|G|², Q = −Im G/|G|²; the angle lies where the cosine is positive, and P is negative.
  entries[at + 2] = im / root;
  entries[at + 3] = -re / root;
  grid.count++;
}
