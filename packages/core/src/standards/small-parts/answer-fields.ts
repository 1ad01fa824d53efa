/**
 * Fields that the answers about standard parts and seals share: limits, and how far they can be trusted.
 */
import { z } from 'zod';

export const standingField = z
  .enum(['read', 'read in part, rest from memory', 'from memory', 'common practice', 'computed', 'doubtful'])
  .describe('how far the least trusted value in the answer can be trusted');

export const sourcesField = z.array(z.string()).describe('keys of the sources of the values used');

export const notesField = z.array(z.string()).describe('what to know about the values used');

export const trustFields = { sources: sourcesField, standing: standingField } as const;

/** Smallest and largest of a length. */
export function limitsField(what: string) {
  return z
    .strictObject({ min: z.number().describe('smallest [mm]'), max: z.number().describe('largest [mm]') })
    .describe(`${what} [mm]`);
}

/**
 * A figure without the digits that mean nothing.
 *
 *     to the nearest 10 to the minus decimals
 *
 * @param value  a figure, in any unit [-]
 * @param decimals  digits kept after the point [-]
 * @returns the figure, in the same unit [-]
 * @source geometry
 * @valid 0 to 20 decimals
 * @example rounded(2.34567, 2) → 2.35
 */
export function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
