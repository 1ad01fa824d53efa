/**
 * Reads the published values that tests check against, and counts how many were checked.
 */
import { readFileSync } from 'node:fs';
import type { TestContext } from 'vitest';

export type Row = Readonly<Record<string, string>>;

declare module 'vitest' {
  interface TaskMeta {
    /** How many values from outside this test compared with the program's. */
    outsideValues?: number;
  }
}

/** Rows of `packages/core/reference/<topic>/<file>.csv`, keyed by the header. */
export function referenceRows(topic: string, file: string): Row[] {
  const text = readFileSync(new URL(`../reference/${topic}/${file}.csv`, import.meta.url), 'utf8');
  const [header, ...lines] = parseCsv(text);
  if (!header || lines.length === 0) throw new Error(`${topic}/${file}.csv has no rows`);
  return lines.map((cells) => Object.fromEntries(header.map((name, i) => [name, cells[i] ?? ''])));
}

/** Records how many outside values the running test compared; the totals are printed at the end of the run. */
export function countOutside(task: TestContext['task'], values: number): void {
  task.meta.outsideValues = (task.meta.outsideValues ?? 0) + values;
}

function parseCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (quoted) {
      if (c === '"' && text[i + 1] === '"') {
        cell += '"';
        i++;
      } else if (c === '"') quoted = false;
      else cell += c;
    } else if (c === '"') quoted = true;
    else if (c === ',') {
      row.push(cell);
      cell = '';
    } else if (c === '\n') {
      row.push(cell.replace(/\r$/, ''));
      rows.push(row);
      row = [];
      cell = '';
    } else cell += c;
  }
  if (cell !== '' || row.length > 0) rows.push([...row, cell]);
  return rows.filter((r) => r.some((value) => value !== ''));
}
