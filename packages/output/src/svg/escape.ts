/** Text and numbers as they may stand in SVG. */

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

export function xmlText(text: string): string {
  return [...text]
    .filter(isWritable)
    .map((character) => entities[character] ?? character)
    .join('');
}

/** XML 1.0 has no way to write most control characters, not even escaped; lone surrogates are no characters at all. */
function isWritable(character: string): boolean {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff;
}

export function attribute(text: string): string {
  return xmlText(text.replace(/[\t\n\r]/g, ' '));
}

/** A coordinate to a thousandth of a millimetre, without trailing noughts or a minus before zero. */
export function number(value: number): string {
  return String(Math.round(value * 1000) / 1000 + 0);
}
