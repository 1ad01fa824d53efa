/**
 * Fields in which questions about the lathe answer, and the rounding of what stands in them.
 */
import { z } from 'zod';

export const round = (value: number) => Number(value.toPrecision(4));
export const rounded = ({ low, middle, high }: { low: number; middle: number; high: number }) => ({
  low: round(low),
  middle: round(middle),
  high: round(high),
});

export const range = (what: string, unit: string) =>
  z
    .strictObject({
      low: z.number().describe(`bound below which one in twenty lies [${unit}]`),
      middle: z.number().describe(`middle [${unit}]`),
      high: z.number().describe(`bound above which one in twenty lies [${unit}]`),
    })
    .describe(what);

export const findingField = z
  .array(
    z.strictObject({
      id: z.string().describe('kind of finding'),
      level: z.enum(['stop', 'caution', 'note']).describe('how much it matters'),
      at: z.string().describe('test or cut it belongs to'),
      says: z.string().describe('in words'),
      remedies: z.array(z.string()).describe('what to do'),
    }),
  )
  .describe('what to know');

export const plainFindings = (
  findings: readonly {
    id: string;
    level: 'stop' | 'caution' | 'note';
    at: string;
    says: string;
    remedies: readonly string[];
  }[],
) => findings.map(({ id, level, at, says, remedies }) => ({ id, level, at, says, remedies: [...remedies] }));
