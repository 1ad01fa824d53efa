/**
 * Fields in which questions tell how a cut fares with a remedy and without.
 */
import { z } from 'zod';
import { round } from './answer-fields.ts';
import type { Outcome } from './remedies.ts';

export const outcomeField = z.strictObject({
  safeDepth: z.number().describe('greatest depth at which everything is good, 0 when none is [mm]'),
  chatter: z.number().describe('probability that the cut sings [-]'),
  taper: z.number().describe('difference of size along the work [mm]'),
  sizeError: z.number().describe('greatest error of size [mm]'),
  rate: z.number().describe('metal taken at the safe depth, same feed and speed [mm³/min]'),
});

export const plainOutcome = ({ safeDepth, chatter, taper, sizeError, rate }: Outcome) => ({
  safeDepth: round(safeDepth),
  chatter: round(chatter),
  taper: round(taper),
  sizeError: round(sizeError),
  rate: round(rate),
});
