/** The docblock above a function, taken apart. */

export interface Tag {
  readonly tag: string;
  readonly text: string;
}

/** Tags of a block comment in order; a tag's text runs to the next tag, its lines joined by spaces. */
export function tagsOf(comment: string): Tag[] {
  const lines = comment.split('\n').map((line) => line.replace(/^\s*\*?\s?/, '').trimEnd());
  const tags: { tag: string; text: string }[] = [];
  for (const line of lines) {
    const opening = /^@([a-z]+)\s*(.*)$/.exec(line);
    const last = tags.at(-1);
    if (opening) tags.push({ tag: opening[1] ?? '', text: opening[2] ?? '' });
    else if (last) last.text = `${last.text} ${line.trim()}`.trim();
  }
  return tags;
}

/** Whether a text carries a unit in square brackets: `[mm]`, `[N·m]`, `[-]`. */
export const hasUnit = (text: string): boolean => /\[[^\]]+\]/.test(text);

/** Source keys of a `@source` tag: the first word of each part between semicolons. */
export function sourceKeysOf(text: string): string[] {
  return text
    .split(';')
    .map((part) => (part.trim().split(/[\s,:]/)[0] ?? '').replace(/^\[|\]$/g, ''))
    .filter((key) => key !== '');
}
