/** Dial tables as CSV (RFC 4180), in the job's unit; spreadsheets with a decimal comma get semicolons between the cells. */
import type { DialTable } from '@sparewright/core/route/dial-table';
import type { PresentSettings } from '../present/settings.ts';
import { presentCell, presentUnit } from '../present/table.ts';

export function dialTableCsv(table: DialTable, settings: PresentSettings): string {
  const between = settings.decimalSign === 'comma' ? ';' : ',';
  const heads = table.columns.map((c) => [c.title, presentUnit(c, settings)].filter((t) => t !== '').join(' '));
  const rows = table.rows.map((row) => table.columns.map((c) => presentCell(c, row[c.key], settings)));
  return [heads, ...rows].map((cells) => `${cells.map((c) => quoted(c, between)).join(between)}\r\n`).join('');
}

/** A minus that programs read; quotes where they are needed; what a spreadsheet would take for a formula is kept as text. */
function quoted(cell: string, between: string): string {
  const plain = cell.replaceAll('−', '-');
  const inert = /^[=+@\t]|^-(?!\d)/.test(plain) ? `'${plain}` : plain;
  return inert.includes(between) || /["\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
