/**
 * Whether a cut sings, given what is not known of the lathe.
 */

import { normalCdf } from '../numerics/normal.ts';
import type { MetrePerMinute } from '../units/quantities.ts';
import type { CutForces } from './cut-forces.ts';
import type { PreparedSetup } from './prepare-setup.ts';
import { chatterMargins } from './singing-limit.ts';
import { inOrder } from './size-after.ts';

/** How near a cut is to singing. */
export interface Chatter {
  /** Share of the draws in which it sings. */
  readonly probability: number;
  /** Limit over what the cut asks, at most 20: above 1 it is quiet; middle, and the bounds of nine in ten draws. */
  readonly margin: { readonly low: number; readonly middle: number; readonly high: number };
}

/** A margin beyond this says only that nothing sings. */
const muchMargin = 20;

/** Whether a cut sings, over all draws. */
export function chatter(prepared: PreparedSetup, forces: CutForces, speed: MetrePerMinute): Chatter {
  const margins = chatterMargins(prepared.drawn, prepared.setup.cutter.edge, forces, speed);
  const sings = margins.reduce((n, m) => n + (m < 0 ? 1 : 0), 0);
  const sorted = margins.sort();
  const at = (share: number) =>
    Math.min(muchMargin, Math.exp(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0));
  return {
    probability: rounded(sings, margins.length),
    margin: { low: at(0.05), middle: at(0.5), high: at(0.95) },
  };
}

/** The probability alone. */
export function chatterProbability(prepared: PreparedSetup, forces: CutForces, speed: MetrePerMinute): number {
  const margins = chatterMargins(prepared.drawn, prepared.setup.cutter.edge, forces, speed);
  let sings = 0;
  for (const margin of margins) if (margin < 0) sings++;
  return rounded(sings, margins.length);
}

/** Half a draw more on either side: none of 32 singing does not prove that none ever will. */
function rounded(sings: number, draws: number): number {
  return (sings + 0.5) / (draws + 1);
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
