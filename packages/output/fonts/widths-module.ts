/** The text of core's table of character widths, made from the two faces. */
import { readFace } from './sfnt.ts';

/** Latin 1 and the signs that drawings use. */
export const measured = [
  ...Array.from({ length: 95 }, (_, i) => String.fromCodePoint(32 + i)),
  ...Array.from({ length: 95 }, (_, i) => String.fromCodePoint(161 + i)),
  ...'Ωμ–—‘’“”…−√≤≥⅛⅜⅝⅞→ŁłŠšŽžČčŘřĚěŮůŐőŰűĄąĘęĆćŃńŚśŹźŻżŒœ€',
];

export function widthsModule(regular: Uint8Array, bold: Uint8Array): string {
  return `/** Advance widths of the drawing face by character, in thousandths of its em. Written by packages/output/fonts/write-widths.ts. */

/** Height of its capitals in thousandths of the em. */
export const capHeight = ${perMille(readFace(regular).capHeight, readFace(regular).unitsPerEm)};

export const regularWidths: Readonly<Record<number, string>> = ${table(regular)};

export const boldWidths: Readonly<Record<number, string>> = ${table(bold)};
`;
}

/** Characters gathered by width: widths come in few values. */
function table(file: Uint8Array): string {
  const face = readFace(file);
  const byWidth = new Map<number, string>();
  for (const character of measured) {
    const advance = face.advance(character);
    if (advance === undefined) continue;
    const width = perMille(advance, face.unitsPerEm);
    byWidth.set(width, (byWidth.get(width) ?? '') + character);
  }
  const rows = [...byWidth].toSorted(([a], [b]) => a - b).map(([width, text]) => `  ${width}: ${quoted(text)},`);
  return `{\n${rows.join('\n')}\n}`;
}

/** As the formatter quotes: single, unless that would need more escapes. */
function quoted(text: string): string {
  if (text.includes("'") && !text.includes('"')) return JSON.stringify(text);
  return `'${text.replace(/[\\']/g, '\\$&')}'`;
}

function perMille(value: number, unitsPerEm: number): number {
  return Math.round((1000 * value) / unitsPerEm);
}
