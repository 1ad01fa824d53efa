/**
 * Schema fields for what people type. Each turns text into the core's units and refuses with
 * the sentence pattern `expected[, for example …]` that `job/read-document.ts` shows with path and value.
 */
import { z } from 'zod';
import { type LengthUnit, readLength } from './length.ts';
import type { Mm } from './quantities.ts';

/** Nothing on a bench lathe is longer. */
export const longest: Mm = 3000;

interface Range {
  readonly min?: Mm;
  readonly max?: Mm;
  /** May be zero (or negative, if min says so). */
  readonly zero?: boolean;
}

const typed = z.union([z.string().max(60), z.number()], { error: 'a length, for example 12.5, "12,5" or "5/16 in"' });

/** A length as typed, in millimetres once read. Bare numbers are in `unit`. */
export function lengthField(unit: LengthUnit, what: string, range: Range = {}) {
  const min = range.min ?? 0;
  const max = range.max ?? longest;
  return typed
    .transform((value, ctx): Mm => {
      const length = readLength(String(value), unit);
      const low = length !== undefined && (length.mm < min || (length.mm === 0 && !range.zero));
      if (length === undefined || low || length.mm > max) {
        const bounds =
          length === undefined ? 'a length' : `a length ${range.zero ? 'from' : 'above'} ${min} mm to ${max} mm`;
        ctx.addIssue({ code: 'custom', message: `${bounds}, for example ${unit === 'in' ? '5/16 or .312' : '12.5'}` });
        return z.NEVER;
      }
      return length.mm;
    })
    .describe(`${what} [mm or in, as typed]`);
}

/** A name by which other parts of the document refer to something. */
export const idField = z
  .string()
  .max(60)
  .regex(/^[a-z][a-z0-9-]*$/, { error: 'a name of small letters, digits and hyphens, for example seal-groove' });

/** Free text that people read; never markup. */
export function textField(what: string, max = 2000) {
  return z
    .string()
    .max(max, { error: `text of at most ${max} characters` })
    .describe(what);
}

/** A plain number within bounds; NaN and infinities are refused by zod itself. */
export function numberField(what: string, unit: string, min: number, max: number) {
  const error = `a number from ${min} to ${max} ${unit}`.trim();
  return z
    .number({ error })
    .min(min, { error })
    .max(max, { error })
    .describe(`${what} [${unit || '-'}]`);
}
