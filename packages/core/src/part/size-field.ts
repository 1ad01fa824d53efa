/** The schema field for a size with its tolerance, as typed: `12 f7`, `12,5 ±0.1`, `5/16 in`. */
import { z } from 'zod';
import { InputError } from '../errors.ts';
import { parseTolerancedSize, type TolerancedSize } from '../standards/fits/toleranced-size.ts';
import { longest } from '../units/fields.ts';
import { type LengthUnit, readLength } from '../units/length.ts';

const typed = z.union([z.string().max(60), z.number()], {
  error: 'a size, for example "12 f7", "12,5 ±0.1" or "5/16 in"',
});

/** A size as typed, read into millimetres with its tolerance. Must be above zero, unless `zero` says that a plain 0 will do. */
export function sizeField(unit: LengthUnit, what: string, { zero = false }: { readonly zero?: boolean } = {}) {
  return typed
    .transform((value, ctx): TolerancedSize => {
      const text = String(value).trim();
      const plain = zero ? readLength(text, unit) : undefined;
      if (plain?.mm === 0) return { nominal: 0, tolerance: { kind: 'none' }, unit: plain.unit, text };
      try {
        const size = parseTolerancedSize(value, unit);
        if (size.nominal > 0 && size.nominal <= longest) return size;
        ctx.addIssue({ code: 'custom', message: `a size above 0 and up to ${longest} mm, for example "12 f7"` });
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        const issue = error.issues[0];
        ctx.addIssue({
          code: 'custom',
          message: `${issue?.expected ?? 'a size'}, for example ${issue?.example ?? '"12 f7"'}`,
        });
      }
      return z.NEVER;
    })
    .describe(`${what} [mm or in, as typed]`);
}
