/** Reads from a TrueType file what text needs to be measured: which characters it has and how wide each is. */

export interface FaceMeasures {
  readonly unitsPerEm: number;
  /** Height of the capital H, in font units. */
  readonly capHeight: number;
  /** Advance width of a character in font units, undefined when the face lacks it. */
  advance(character: string): number | undefined;
}

/** Measures of the face in `file`, the bytes of a .ttf. */
export function readFace(file: Uint8Array): FaceMeasures {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const table = tableFinder(view);
  const metricsCount = view.getUint16(table('hhea') + 34);
  const metrics = table('hmtx');
  const glyphOf = characterMap(view, table('cmap'));
  return {
    unitsPerEm: view.getUint16(table('head') + 18),
    capHeight: view.getInt16(table('OS/2') + 88),
    advance(character) {
      const glyph = glyphOf(character.codePointAt(0) ?? 0);
      return glyph === 0 ? undefined : view.getUint16(metrics + 4 * Math.min(glyph, metricsCount - 1));
    },
  };
}

function tableFinder(view: DataView): (tag: string) => number {
  const offsets = new Map<string, number>();
  for (let i = 0; i < view.getUint16(4); i++) {
    const at = 12 + 16 * i;
    const tag = String.fromCharCode(...[0, 1, 2, 3].map((k) => view.getUint8(at + k)));
    offsets.set(tag, view.getUint32(at + 8));
  }
  return (tag) => {
    const offset = offsets.get(tag);
    if (offset === undefined) throw new Error(`the font file has no ${tag} table`);
    return offset;
  };
}

/** The Unicode map of format 4 (characters up to U+FFFF), which every TrueType face carries. */
function characterMap(view: DataView, cmap: number): (code: number) => number {
  let map: number | undefined;
  for (let i = 0; i < view.getUint16(cmap + 2); i++) {
    const subtable = cmap + view.getUint32(cmap + 4 + 8 * i + 4);
    if (view.getUint16(subtable) === 4) map = subtable;
  }
  if (map === undefined) throw new Error('the font file has no character map of format 4');
  const start = map;
  const bytes = view.getUint16(start + 6);
  return (code) => {
    for (let i = 0; i < bytes; i += 2) {
      if (code > view.getUint16(start + 14 + i)) continue;
      const first = view.getUint16(start + 16 + bytes + i);
      if (code < first) return 0;
      const delta = view.getUint16(start + 16 + 2 * bytes + i);
      const rangeAt = start + 16 + 3 * bytes + i;
      const range = view.getUint16(rangeAt);
      if (range === 0) return (code + delta) & 0xffff;
      const glyph = view.getUint16(rangeAt + range + 2 * (code - first));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };
}
