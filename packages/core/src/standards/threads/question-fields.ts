/** Fields that the questions about threads share. */
import { z } from 'zod';
import { type SourceKey, source } from '../../sources/register.ts';
import { mmPerInch } from '../../units/quantities.ts';
import type { Band } from './limits-type.ts';

export const threadField = z
  .string()
  .max(60)
  .describe('designation as it is written: M10x1.25-6g, 1/4-28 UNF-2A, 3/8 BSF, 2 BA, G 1/4 A, R 1/8');

export const sideField = z.enum(['external', 'internal']).describe('external for the bolt, internal for the nut');

export const classField = z
  .string()
  .max(12)
  .optional()
  .describe(
    'tolerance class; by default that of the designation, else the usual one (6g, 6H, 2A, 2B, medium, normal, A)',
  );

export const bandField = (what: string) =>
  z.strictObject({ max: z.number().describe('greatest [mm]'), min: z.number().describe('least [mm]') }).describe(what);

export const sourceFields = {
  sources: z.array(z.string()).describe('keys of the sources of the values used'),
  fromMemory: z
    .array(z.string())
    .describe('those of the sources that were remembered or are workshop habit, not read in print'),
};

/** The keys, and those among them whose values nobody looked up, each with its mark. */
export function sourcesOf(keys: readonly SourceKey[]): { sources: string[]; fromMemory: string[] } {
  const unique = [...new Set(keys)];
  const fromMemory = unique.flatMap((key) => {
    const { kind, title } = source(key);
    return kind === 'from memory' || kind === 'common practice' ? [`${key} (${kind}): ${title}`] : [];
  });
  return { sources: unique, fromMemory };
}

/** `9.732 to 9.968 mm`, with inches after it for an inch thread. */
export function bandText({ max, min }: Band, inch: boolean): string {
  const text = `${min.toFixed(3)} to ${max.toFixed(3)} mm`;
  return inch ? `${text} (${(min / mmPerInch).toFixed(4)} to ${(max / mmPerInch).toFixed(4)} in)` : text;
}
