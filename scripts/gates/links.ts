/** Gate: what the documents link to is there. */
import { existsSync, statSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { committedFiles, type Gate, read, type Violation } from './tree.ts';

export const links: Gate = {
  name: 'links',
  proves: 'every relative link and picture in the documents leads to a file, and every #place to a heading',
  check(root) {
    return committedFiles(root)
      .filter((path) => path.endsWith('.md'))
      .flatMap((path) => inDocument(root, path));
  },
};

function inDocument(root: string, path: string): Violation[] {
  const text = read(root, path);
  return targets(text).flatMap(({ target, line }) => {
    const [file = '', place] = decodeURI(target).split('#');
    const meant = file === '' ? path : normalize(join(dirname(path), file));
    const at = `${path}:${line}`;
    if (meant.startsWith('..') || !existsSync(join(root, meant))) return [{ at, says: `leads nowhere: ${target}` }];
    const isDocument = meant.endsWith('.md') && statSync(join(root, meant)).isFile();
    if (place && isDocument && !places(read(root, meant)).has(place)) {
      return [{ at, says: `there is no heading #${place} in ${meant}` }];
    }
    return [];
  });
}

/** Relative link and image targets outside code. */
function targets(text: string): { target: string; line: number }[] {
  const link = /!?\[[^\]]*\]\(\s*<?([^)\s>]+)>?[^)]*\)|^\s*\[[^\]]+\]:\s*(\S+)|\b(?:src|href)="([^"]+)"/gm;
  return [...withoutCode(text).matchAll(link)].flatMap((m) => {
    const target = m[1] ?? m[2] ?? m[3] ?? '';
    const elsewhere = /^[a-z][a-z0-9+.-]*:|^\/\//i.test(target);
    return elsewhere || target === '' ? [] : [{ target, line: text.slice(0, m.index).split('\n').length }];
  });
}

/** The text with code blanked out, at the same length. */
function withoutCode(text: string): string {
  const blank = (code: string) => code.replace(/[^\n]/g, ' ');
  return text.replace(/^(```|~~~)[\s\S]*?^\1/gm, blank).replace(/`[^`\n]+`/g, blank);
}

/** Anchors that the headings of a document make. */
function places(text: string): Set<string> {
  const found = new Map<string, number>();
  const anchors = new Set<string>();
  for (const [, heading = ''] of text.replace(/^(```|~~~)[\s\S]*?^\1/gm, '').matchAll(/^#{1,6}\s+(.+?)\s*#*$/gm)) {
    const slug = heading
      .toLowerCase()
      .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
      .replace(/[^\p{L}\p{N}\s_-]/gu, '')
      .replace(/\s/g, '-');
    const before = found.get(slug) ?? 0;
    found.set(slug, before + 1);
    anchors.add(before === 0 ? slug : `${slug}-${before}`);
  }
  return anchors;
}
