/** How much room a line of text takes in the drawing face. */
import type { Mm } from '../units/quantities.ts';
import { boldWidths, capHeight, regularWidths } from './face-widths.ts';

export type Weight = 'normal' | 'bold';

const widths = { normal: byCharacter(regularWidths), bold: byCharacter(boldWidths) } as const;

/** A character the table lacks is set in some other face, and none is wider than an em. */
const unknownWidth = 1000;

/** Height of a capital over the size of type it belongs to. */
export const capitalsPerEm = capHeight / 1000;

/**
 * Width of a line of text.
 *
 *     Σ advance · height / height of capitals
 *
 * @param text  one line
 * @param height  height of the capitals [mm]
 * @param weight  normal or bold
 * @returns the width, kerning left out [mm]
 * @source geometry
 * @valid the characters of the table; others are given one em each
 * @example textWidth('Ø12 f7', 2.5) → 9.918
 */
export function textWidth(text: string, height: Mm, weight: Weight = 'normal'): Mm {
  let sum = 0;
  for (const character of text) sum += widths[weight].get(character) ?? unknownWidth;
  return (sum * height) / capHeight;
}

/** Whether the face can set the whole of a text. */
export function canSet(text: string, weight: Weight = 'normal'): boolean {
  return [...text].every((character) => widths[weight].has(character));
}

function byCharacter(table: Readonly<Record<number, string>>): ReadonlyMap<string, number> {
  return new Map(Object.entries(table).flatMap(([width, text]) => [...text].map((c) => [c, Number(width)] as const)));
}
