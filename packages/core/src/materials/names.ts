/** How names of materials are read: which spellings a record answers to, and which of them only come near. */
import type { Material } from './material.ts';

/** A name as compared: no case, spaces, dots, hyphens or other marks. */
export function plain(name: string): string {
  const lower = name.toLowerCase();
  // Accents and wide letters are rare, and unfolding them is slow: only where there are any.
  const letters = (/^[ -~]*$/.test(lower) ? lower : lower.normalize('NFKD').toLowerCase()).replace(/[^a-z0-9]/g, '');
  return letters.replace('aluminum', 'aluminium').replace('gray', 'grey');
}

/** One spelling of a material's name. */
export interface Spelling {
  readonly text: string;
  /** The name belongs to a neighbour, not to this very alloy. */
  readonly near: boolean;
}

/** The single names in a printed text: `303S31 (303S21)` holds two; `A36 (near)` one, of a neighbour. */
export function spellings(text: string): Spelling[] {
  return text
    .split(/;| \/ |,|\((?!near)/)
    .map((piece) => ({ text: piece.replace(/\(near\)|\)/g, '').trim(), near: piece.includes('(near)') }))
    .filter((s) => s.text !== '');
}

/** Every name of the alloy, whatever its condition. */
export function gradeSpellings(material: Material): Spelling[] {
  const { en, enName, aisi, bs, jis, also } = material.names;
  const printed = [en, enName, aisi, bs, jis, ...(also ?? [])].filter((text) => text !== undefined);
  return [material.grade, material.commonName]
    .map((text) => ({ text, near: false }))
    .concat(printed.flatMap(spellings));
}
