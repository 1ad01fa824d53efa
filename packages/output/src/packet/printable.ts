/** Characters that the packet's face cannot print are replaced, and said to be, before another face could step in. */
import type { Scene } from '@sparewright/core/drawing/scene';
import { canSet } from '@sparewright/core/drawing/text-width';

const likenesses: Readonly<Record<string, string>> = {
  '⌀': 'Ø',
  '∅': 'Ø',
  '″': '"',
  '′': "'",
  '‑': '-',
  π: 'pi',
  Φ: 'Phi',
  '\u00a0': ' ',
  '\u202f': ' ',
  '\u2009': ' ',
};

export interface Printable<T> {
  readonly value: T;
  /** Characters for which `?` stands. */
  readonly lost: ReadonlySet<string>;
}

/** Every text in a document with only printable characters. */
export function printable<T>(document: T): Printable<T> {
  const lost = new Set<string>();
  const walk = <V>(value: V): V => {
    if (typeof value === 'string') return printableText(value, lost) as typeof value;
    if (Array.isArray(value)) return value.map((v) => walk(v)) as typeof value;
    if (typeof value === 'object' && value !== null)
      return Object.fromEntries(Object.entries(value).map(([key, v]) => [key, walk(v)])) as typeof value;
    return value;
  };
  return { value: walk(document), lost };
}

/** A scene with only printable characters. */
export function printableScene(scene: Scene): Scene {
  const items = scene.items.map((item) =>
    item.item === 'text' ? { ...item, text: printableText(item.text, new Set()) } : item,
  );
  return { ...scene, items };
}

function printableText(text: string, lost: Set<string>): string {
  return [...text].map((character) => printableCharacter(character, lost)).join('');
}

function printableCharacter(character: string, lost: Set<string>): string {
  if (inFace(character)) return character;
  if (/\s/.test(character)) return ' ';
  const alike = likenesses[character] ?? character.normalize('NFKD').replace(/\p{M}/gu, '');
  if (alike !== '' && inFace(alike)) return alike;
  lost.add(character);
  return '?';
}

const inFace = (text: string): boolean => canSet(text, 'normal') && canSet(text, 'bold');
