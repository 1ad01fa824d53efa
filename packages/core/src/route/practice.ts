/**
 * Figures of workshop habit that the planner goes by; all `common practice`, in one place.
 */
import type { Micrometre, Mm, Second } from '../units/quantities.ts';

/** Left on a face for cleaning it up. */
export const facingAllowance: Mm = 1;
/** Left on the diameter for the finishing cuts. */
export const finishingAllowance: Mm = 0.6;
/** Left on a shoulder by roughing, along the work. */
export const shoulderAllowance: Mm = 0.2;
/** Left on the diameter of a bore for its finishing cuts: a bar gives way more, and what is left for light cuts takes many of them. */
export const boreFinishingAllowance: Mm = 0.3;
/** Left in a drilled hole for boring it, on the diameter. */
export const boringAllowance: Mm = 1;
/** Roughness depth Rt that a careful last cut leaves before abrasive paper, in µm. */
export const lastCutRoughness = 5;
/** Repeatability of a cut on a light lathe, one standard deviation on the diameter. */
export const cutRepeatability: Mm = 0.01;
/** Limits further apart than this are kept by the cutter without a stop point. */
export const closeBand: Mm = 0.06;
/** A bar is at least this much thicker than the part, to clean up all round. */
export const cleanUp: Mm = 0.8;
/** Between the jaws and the nearest cut. */
export const jawClearance: Mm = 4;
/** Width of a saw or parting cut, when no parting cutter is entered. */
export const sawKerf: Mm = 3;
/** What a hand hacksaw gets through in mild steel, in mm² a minute: a 20 mm bar in 2 to 4 minutes. */
export const hacksawRate = { quick: 157.08, slow: 78.54 } as const;

/** Machinability of mild steel, free-cutting steel being 100. */
export const mildSteelMachinability = 78;

/** Work standing out further than this many diameters wants the tailstock. */
export const unsupportedRatio = 3;
/** Share of the drive's power that is used. */
export const usablePower = 0.8;
/** Probability of singing that a cut is planned with. */
export const singingBorne = 0.25;
/** Share of the motor's power that reaches the cut where it is not entered. */
export const usualEfficiency = 0.75;
/** How far the work may give way on the diameter while roughing. */
export const roughBending: Mm = 0.15;
/** How far a boring bar may give way on the diameter in the last cuts. */
export const boreBending: Mm = 0.06;
/** Tolerance of a diameter for which none is stated. */
export const usualTolerance: Mm = 0.1;
/** Share of a tolerance that bending may take up in the finishing cut. */
export const bendingShare = 0.25;
/** The same where abrasive paper follows, which is kept longer on the thick end; `common practice`. */
export const paperedBendingShare = 0.5;
/** Roughness Ra that abrasive paper takes out quickly [µm]; `common practice`. */
export const finishForPaper: Micrometre = 1.6;
/** Handling between two passes: back, wind, set. */
export const passHandling: Second = 25;
/** Getting ready for one operation: cutter, height, touch. */
export const operationHandling: Second = 150;
/** Turning the work round, protecting and dialling it in. */
export const setupHandling: Second = 900;
