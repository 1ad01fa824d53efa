import { readFileSync } from 'node:fs';
import { boldWidths, capHeight, regularWidths } from '@sparewright/core/drawing/face-widths';
import { textWidth } from '@sparewright/core/drawing/text-width';
import { describe, expect, test } from 'vitest';
import { readFace } from '../fonts/sfnt.ts';
import { measured } from '../fonts/widths-module.ts';
import { faceName } from '../src/face-name.ts';
import { fontFiles } from '../src/fonts.ts';

const tables = { 400: regularWidths, 700: boldWidths } as const;

describe.each(fontFiles)('$file', ({ url, weight }) => {
  const face = readFace(readFileSync(url));

  test('is as wide as core believes, character by character', () => {
    for (const character of measured) {
      const advance = face.advance(character);
      const entry = Object.entries(tables[weight]).find(([, text]) => text.includes(character));
      if (advance === undefined) expect(entry, character).toBeUndefined();
      else expect(Number(entry?.[0]), character).toBe(Math.round((1000 * advance) / face.unitsPerEm));
    }
    expect(capHeight).toBe(Math.round((1000 * face.capHeight) / face.unitsPerEm));
  });

  test('has every sign a drawing writes', () => {
    for (const sign of 'Ø±×°µ½−–√≤≥·…ÄÖÜäöüßéèñ') expect(face.advance(sign), sign).toBeDefined();
  });

  test('carries its own name', () => {
    expect(readFileSync(url).includes(Buffer.from(faceName, 'utf16le').swap16())).toBe(true);
  });
});

test('a line of text is the sum of what the font file says', () => {
  const face = readFace(readFileSync(fontFiles[0]?.url ?? ''));
  const text = 'Ø12 f7 (−0.016/−0.034)';
  const sum = [...text].reduce((s, c) => s + (face.advance(c) ?? Number.NaN), 0);
  expect(textWidth(text, 2.5)).toBeCloseTo((sum * 2.5) / face.capHeight, 6);
});

test('the licence is with it', () => {
  const licence = readFileSync(new URL('../fonts/OFL.txt', import.meta.url), 'utf8');
  expect(licence).toContain('National Park Project Authors');
  expect(licence).toContain('SIL OPEN FONT LICENSE Version 1.1');
});
