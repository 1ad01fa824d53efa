/** What poppler, a reader of its own, finds in a PDF. */
import { execFileSync } from 'node:child_process';

function ask(program: string, options: readonly string[], pdf: Uint8Array): string {
  // pdftotext takes the place to write to as well: `-` is standard output.
  const places = program === 'pdftotext' ? ['-', '-'] : ['-'];
  return execFileSync(program, [...options, ...places], {
    input: pdf,
    encoding: 'utf8',
    maxBuffer: 64e6,
    stdio: ['pipe', 'pipe', 'ignore'],
  });
}

/** The text of each page in the order it was set, every run of white space as one space. */
export function pageTexts(pdf: Uint8Array): string[] {
  const text = ask('pdftotext', ['-raw'], pdf);
  return text
    .split('\f')
    .slice(0, -1)
    .map((page) => page.replace(/\s+/g, ' '));
}

export function allText(pdf: Uint8Array): string {
  return pageTexts(pdf).join(' ');
}

/** Names of the faces without the mark of a subset. */
export function faces(pdf: Uint8Array): string[] {
  const rows = ask('pdffonts', [], pdf).split('\n').slice(2);
  return rows.map((row) => (row.split(' ')[0] ?? '').replace(/^[A-Z]{6}\+/, '')).filter((name) => name !== '');
}

export function information(pdf: Uint8Array): string {
  return ask('pdfinfo', [], pdf);
}

/** Width and height of every page in points, the shorter first. */
export function pageSizes(pdf: Uint8Array): [number, number][] {
  return [...ask('pdfinfo', ['-l', '999'], pdf).matchAll(/Page +\d+ size: +([\d.]+) x ([\d.]+)/g)].map((m) => {
    const [a, b] = [Number(m[1]), Number(m[2])];
    return [Math.min(a, b), Math.max(a, b)];
  });
}

/** Width and height in dots of each picture. */
export function picturesIn(pdf: Uint8Array): string[] {
  return [...ask('pdfimages', ['-list'], pdf).matchAll(/^ *\d+ +\d+ image +(\d+) +(\d+) /gm)].map(
    (m) => `${m[1]}×${m[2]}`,
  );
}

/** The phrases that a text lacks. */
export function lackingIn(text: string, phrases: readonly string[]): string[] {
  return phrases.filter((phrase) => !text.includes(phrase));
}
