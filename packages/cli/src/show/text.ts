/** Lines for a terminal: clean, wrapped, indented. */

/** Characters that steer a terminal or turn the reading direction; a file must not be able to do either. */
const steering = /[\p{Cc}\p{Cf}\u2028\u2029]+/gu;

/** Text of a file or an error in one line, without anything a terminal would obey. */
export function clean(text: string): string {
  return text.replace(steering, ' ');
}

/** Lines of at most a width, broken between words; a word that is longer still is broken too. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of clean(text)
    .split(/\s+/)
    .filter((w) => w !== '')) {
    for (const piece of pieces(word, width)) {
      if (line !== '' && length(line) + 1 + length(piece) > width) {
        lines.push(line);
        line = piece;
      } else line = line === '' ? piece : `${line} ${piece}`;
    }
  }
  return line === '' ? lines : [...lines, line];
}

/** Columns that a text takes. */
export function length(text: string): number {
  return [...text].length;
}

function pieces(word: string, width: number): string[] {
  const letters = [...word];
  const count = Math.ceil(letters.length / width);
  return Array.from({ length: count }, (_, i) => letters.slice(i * width, (i + 1) * width).join(''));
}

export interface ParagraphStyle {
  readonly width: number;
  /** What stands before the first line; the others are indented as far. */
  readonly mark?: string;
  readonly indent?: number;
  readonly ink?: (line: string) => string;
}

/** One paragraph, wrapped, with a mark before its first line. */
export function paragraph(text: string, { width, mark = '', indent = 0, ink = (l) => l }: ParagraphStyle): string[] {
  const before = ' '.repeat(indent);
  const hang = ' '.repeat(length(mark));
  const lines = wrap(text, Math.max(10, width - indent - length(mark)));
  return lines.map((line, i) => `${before}${i === 0 ? mark : hang}${ink(line)}`);
}
