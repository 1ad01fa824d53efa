/** A table in columns of letters. */
import { length, wrap } from './text.ts';

export interface TextColumn {
  readonly title: string;
  readonly align: 'left' | 'right';
}

export interface TableStyle {
  readonly width: number;
  readonly indent?: number;
  readonly ink?: (line: string) => string;
}

const gap = 2;
/** A column of words is not squeezed below this. */
const least = 8;

/** Heads, a rule, rows; columns of words give way until the table fits the width. */
export function textTable(
  columns: readonly TextColumn[],
  rows: readonly (readonly string[])[],
  { width, indent = 0, ink = (l) => l }: TableStyle,
): string[] {
  const widths = fitted(columns, rows, width - indent);
  const before = ' '.repeat(indent);
  const heads = row(
    columns.map((c) => c.title),
    columns,
    widths,
    'bottom',
  );
  const rule = widths.map((w) => '─'.repeat(w)).join(' '.repeat(gap));
  return [
    ...heads.map((line) => before + ink(line.trimEnd())),
    before + ink(rule),
    ...rows.flatMap((cells) => row(cells, columns, widths, 'top').map((line) => (before + line).trimEnd())),
  ];
}

function fitted(columns: readonly TextColumn[], rows: readonly (readonly string[])[], width: number): number[] {
  const longestWord = (text: string) => Math.max(0, ...text.split(/\s+/).map(length));
  const widths = columns.map((c, i) =>
    Math.max(1, longestWord(c.title), ...rows.map((cells) => length(cells[i] ?? ''))),
  );
  const over = () => widths.reduce((sum, w) => sum + w, gap * (widths.length - 1)) - width;
  while (over() > 0) {
    const words = columns.flatMap((c, i) => (c.align === 'left' && (widths[i] ?? 0) > least ? [i] : []));
    const widestOf = words.reduce<number | undefined>(
      (best, i) => (best === undefined || (widths[i] ?? 0) > (widths[best] ?? 0) ? i : best),
      undefined,
    );
    if (widestOf === undefined) break;
    widths[widestOf] = (widths[widestOf] ?? 0) - 1;
  }
  return widths;
}

function row(
  cells: readonly string[],
  columns: readonly TextColumn[],
  widths: readonly number[],
  stands: 'top' | 'bottom',
): string[] {
  const wrapped = columns.map((_, i) => wrap(cells[i] ?? '', widths[i] ?? 1));
  const height = Math.max(1, ...wrapped.map((lines) => lines.length));
  return Array.from({ length: height }, (_, y) =>
    columns
      .map((c, i) => {
        const lines = wrapped[i] ?? [];
        const text = lines[stands === 'top' ? y : y - (height - lines.length)] ?? '';
        const blank = ' '.repeat(Math.max(0, (widths[i] ?? 0) - length(text)));
        return c.align === 'right' ? blank + text : text + blank;
      })
      .join(' '.repeat(gap)),
  );
}
