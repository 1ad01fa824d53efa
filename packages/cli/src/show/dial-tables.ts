/** Dial tables for a terminal, each with its notes in the order they are needed. */
import type { Job } from '@sparewright/core/job/schema';
import type { Column, DialTable } from '@sparewright/core/route/dial-table';
import type { RouteResult } from '@sparewright/core/route/route-result';
import { presentProse } from '@sparewright/output/present/prose';
import { type PresentSettings, presentSettings } from '@sparewright/output/present/settings';
import { presentCell, presentUnit } from '@sparewright/output/present/table';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

export function dialTableLines(route: RouteResult, job: Job, terminal: Terminal): string[] {
  const settings = presentSettings(job);
  return route.tables.flatMap((table) => {
    const operation = route.operations.find((o) => o.id === table.operation);
    const setup = route.setups.find((s) => s.id === operation?.setup);
    const place = operation ? `Operation ${operation.number}${setup ? `, setup ${setup.number}` : ''}: ` : '';
    const cautions = operation?.cautions ?? [];
    return [...tableLines(table, place, cautions, settings, terminal), ''];
  });
}

function tableLines(
  table: DialTable,
  place: string,
  cautions: readonly string[],
  settings: PresentSettings,
  { width, ink }: Terminal,
): string[] {
  const say = (text: string) => presentProse(text, settings);
  return [
    ...paragraph(`${place}${say(table.title)}`, { width, ink: ink.bold }),
    ...cautions.flatMap((c) => paragraph(say(c), { width, indent: 2, mark: '! ', ink: ink.yellow })),
    ...table.notes.flatMap((note, i) => paragraph(say(note), { width, indent: 2, mark: `${i + 1}. ` })),
    ...textTable(
      table.columns.map((c) => ({
        title: [c.title, presentUnit(c, settings)].filter((t) => t !== '').join(' '),
        align: isWords(c) ? 'left' : 'right',
      })),
      table.rows.map((row) => table.columns.map((c) => (c.blank ? '______' : presentCell(c, row[c.key], settings)))),
      { width, indent: 2, ink: ink.dim },
    ),
  ];
}

const isWords = (column: Column): boolean => column.decimals === undefined && !column.blank;
