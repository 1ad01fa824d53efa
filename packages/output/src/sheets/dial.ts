/** A dial table as it is printed. */
import type { DialTable } from '@sparewright/core/route/dial-table';
import { presentProse } from '../present/prose.ts';
import type { PresentSettings } from '../present/settings.ts';
import { presentCell, presentUnit } from '../present/table.ts';
import type { DialBlock } from './blocks.ts';

export function dialBlock(table: DialTable, name: string, settings: PresentSettings): DialBlock {
  return {
    name: `Table ${name}`,
    title: presentProse(table.title, settings),
    notes: table.notes.map((n) => presentProse(n, settings)),
    table: {
      kind: 'table',
      size: 'machine',
      columns: table.columns.map((c) => ({
        title: c.title,
        unit: presentUnit(c, settings),
        align: c.decimals === undefined ? 'left' : 'right',
        blank: c.blank ? (c.unit === '' ? 'tick' : 'figure') : undefined,
      })),
      rows: table.rows.map((row) => table.columns.map((c) => presentCell(c, row[c.key], settings))),
    },
  };
}
