/**
 * A bare nominal size, as it is typed into a question.
 */
import { InputError } from '../../errors.ts';
import { type LengthUnit, type ParsedLength, parseLength } from '../../units/length.ts';
import { withoutNoise } from './noise.ts';

/**
 * Reads a size greater than 0.
 *
 * @param value  what was typed, or a bare number
 * @param understood  unit of a bare number
 * @param path  where it stands, for the message
 * @returns the size in millimetres and the unit it was written in
 * @throws InputError when it is no length or not over 0
 */
export function parseNominal(value: string | number, understood: LengthUnit, path: string): ParsedLength {
  const length = parseLength(String(value), understood, path);
  if (!(length.mm > 0)) {
    throw new InputError([{ path, value, expected: 'a size greater than 0', example: '12.5 or 5/16 in' }]);
  }
  return { mm: withoutNoise(length.mm), unit: length.unit };
}
