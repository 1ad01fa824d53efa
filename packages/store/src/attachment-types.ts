/** The kinds of file that are kept, and how their content is told. What a browser could run is not among them. */

interface Kind {
  readonly type: string;
  /** How such a file begins; undefined for plain text. */
  readonly begins: ((bytes: Uint8Array) => boolean) | undefined;
}

const latin = new TextDecoder('latin1');
const text = (bytes: Uint8Array, from: number, to: number) => latin.decode(bytes.subarray(from, to));
const riff = (form: string) => (bytes: Uint8Array) => text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 12) === form;
const boxed = (bytes: Uint8Array) => text(bytes, 4, 8) === 'ftyp';

const kinds: readonly Kind[] = [
  { type: 'image/jpeg', begins: (bytes) => text(bytes, 0, 3) === '\xff\xd8\xff' },
  { type: 'image/png', begins: (bytes) => text(bytes, 0, 8) === '\x89PNG\r\n\x1a\n' },
  { type: 'image/webp', begins: riff('WEBP') },
  { type: 'image/heic', begins: boxed },
  { type: 'audio/wav', begins: riff('WAVE') },
  { type: 'audio/mp4', begins: boxed },
  { type: 'audio/webm', begins: (bytes) => text(bytes, 0, 4) === '\x1aE\xdf\xa3' },
  { type: 'application/pdf', begins: (bytes) => text(bytes, 0, 5) === '%PDF-' },
  { type: 'text/plain', begins: undefined },
  { type: 'text/csv', begins: undefined },
];

export const attachmentTypes: readonly string[] = kinds.map(({ type }) => type);

/** Whether the bytes are what their type says. */
export function isOfType(bytes: Uint8Array, type: string): boolean {
  const kind = kinds.find((known) => known.type === type);
  if (!kind) return false;
  return kind.begins ? kind.begins(bytes) : isText(bytes);
}

function isText(bytes: Uint8Array): boolean {
  try {
    return !new TextDecoder('utf-8', { fatal: true }).decode(bytes).includes('\0');
  } catch {
    return false;
  }
}
