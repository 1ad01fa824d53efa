/** What the bench stage asks for, operation by operation: what stands on its dial tables, row by row. */
import type { JobPage, SheetBlock } from '@sparewright/output/present/job-view';

export interface DialRow {
  /** `Table 4a`, row `2`. */
  readonly table: string;
  readonly row: string;
  /** What to set, in the words of the table: turns 1, divisions 10. */
  readonly figures: readonly { readonly place: number; readonly what: string; readonly is: string }[];
  /** Size to come to; empty where the table gives none. */
  readonly asked: string;
}

export interface Operation {
  /** Stays the same when other operations change. */
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly rows: readonly DialRow[];
}

const sizes = ['diameter after', 'to diameter', 'measured after'];
const shown = [
  'turns',
  'divisions',
  'along: turns',
  'across: turns',
  'depth',
  'depth so far',
  'depth of the point',
  'moves along',
];

export function operationsOf({ routing }: JobPage): Operation[] {
  const planned = (routing?.operations ?? []).filter(({ wish }) => !wish?.skipped);
  return planned.map(({ id, number, title, tables }) => ({
    id,
    number: String(number),
    title,
    rows: tables.flatMap(rowsOf),
  }));
}

function rowsOf({ name, table }: Extract<SheetBlock, { kind: 'dial' }>): DialRow[] {
  const askedAt = table.columns.findIndex((c) => sizes.includes(c.title) && !c.blank);
  return table.rows.flatMap((row) => {
    if (!('length' in row)) return [];
    const figures = table.columns.flatMap(({ title, unit }, i) =>
      shown.includes(title) && row[i]
        ? [{ place: i, what: unit === '' ? title : `${title}, ${unit}`, is: row[i] }]
        : [],
    );
    return [{ table: name, row: row[0] ?? '', figures, asked: row[askedAt] ?? '' }];
  });
}
