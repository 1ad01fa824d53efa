/**
 * Whether a cut sings, given what is not known of the lathe.
 */

import { normalCdf } from '../numerics/normal.ts';
import type { MetrePerMinute } from '../units/quantities.ts';
import type { CutForces } from './cut-forces.ts';
import type { PreparedSetup } from './prepare-setup.ts';
import { chanceDraws } from './sampling.ts';
import { chatterMargins } from './singing-limit.ts';
import { inOrder } from './size-after.ts';

/** How near a cut is to singing. */
export interface Chatter {
  /** Share of the first batch of draws in which it sings. */
  readonly probability: number;
  /** Limit over what the cut asks, at most 20: above 1 it is quiet; middle, and the bounds of nine in ten draws. */
  readonly margin: { readonly low: number; readonly middle: number; readonly high: number };
}

/** A margin beyond this says only that nothing sings. */
const muchMargin = 20;

/** Whether a cut sings, over all draws. */
export function chatter(prepared: PreparedSetup, forces: CutForces, speed: MetrePerMinute): Chatter {
  const margins = chatterMargins(prepared.drawn, prepared.setup.cutter.edge, forces, speed);
  const probability = chanceOf(margins.subarray(0, chanceDraws));
  const sorted = margins.sort();
  const at = (share: number) =>
    Math.min(muchMargin, Math.exp(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0));
  return {
    probability,
    margin: { low: at(0.05), middle: at(0.5), high: at(0.95) },
  };
}

/** The probability alone. */
export function chatterProbability(prepared: PreparedSetup, forces: CutForces, speed: MetrePerMinute): number {
  const counted = prepared.drawn.slice(0, chanceDraws);
  return chanceOf(chatterMargins(counted, prepared.setup.cutter.edge, forces, speed));
}

/** Share that sings, half a draw more on either side: none of 32 singing does not prove that none ever will. */
export function chanceOf(margins: Float64Array): number {
  let sings = 0;
  for (const margin of margins) if (margin < 0) sings++;
  return (sings + 0.5) / (margins.length + 1);
}

/**
 * The probability from few draws: each draw stands for a normal bell about its margin, as broad as suits so many draws
 * (the rule of thumb of kernel densities, from memory),
 * so that the answer moves evenly with the cut.
 */
export function chatterFromFew(prepared: PreparedSetup, forces: CutForces, speed: MetrePerMinute): number {
  const margins = inOrder(chatterMargins(prepared.drawn, prepared.setup.cutter.edge, forces, speed));
  const n = margins.length;
  const at = (share: number) => margins[Math.min(n - 1, Math.floor(share * n))] ?? 0;
  // A quarter to three quarters of a normal distribution span 1.349 standard deviations.
  const breadth = Math.max(1e-3, (1.06 * (at(0.75) - at(0.25))) / 1.349 / n ** 0.2);
  let sum = 0;
  for (const margin of margins) sum += normalCdf(-margin / breadth);
  return sum / n;
}
