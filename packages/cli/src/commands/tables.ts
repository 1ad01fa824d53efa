/** `tables`: what to dial in, pass by pass, to read or as CSV. */
import { join } from 'node:path';
import type { RouteResult } from '@sparewright/core/route/route-result';
import { dialTableCsv } from '@sparewright/output/csv/dial-table';
import { presentSettings } from '@sparewright/output/present/settings';
import { assessFile } from '../assess-file.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { dialTableLines } from '../show/dial-tables.ts';
import { paragraph } from '../show/text.ts';
import { writtenLines } from '../show/written.ts';
import type { Terminal } from '../terminal.ts';
import { makeFolder, writeWhole } from '../write-file.ts';

export interface TablesOptions {
  readonly workshop?: string;
  readonly csv?: string;
}

export async function tablesCommand(file: string, options: TablesOptions, terminal: Terminal): Promise<ExitCode> {
  const assessed = await assessFile(file, options.workshop, terminal);
  const { read, chosen, assessment } = assessed;
  const { route } = assessment;
  const { width } = terminal;
  if (!route || route.tables.length === 0) {
    const why = assessment.part ? (chosen.workshop ? 'no operation needs one' : chosen.told) : 'no part is entered yet';
    await terminal.out(`${paragraph(`No tables: ${why}`, { width }).join('\n')}\n`);
    return exitCodes.fine;
  }
  if (options.csv === undefined) {
    const lines = [...paragraph(chosen.told, { width, ink: terminal.ink.dim }), ''];
    await terminal.out([...lines, ...dialTableLines(route, read.job, terminal)].join('\n'));
    return exitCodes.fine;
  }
  const folder = options.csv;
  makeFolder(folder);
  const settings = presentSettings(read.job);
  const written = route.tables.map((table, i) => {
    const path = join(folder, `${csvName(route, i)}.csv`);
    writeWhole(path, dialTableCsv(table, settings));
    return path;
  });
  await terminal.out(writtenLines(written, assessed, terminal));
  return exitCodes.fine;
}

/** `07-finish-turn-guide`: sorted as they are needed. */
function csvName(route: RouteResult, index: number): string {
  const table = route.tables[index];
  const number = route.operations.find((o) => o.id === table?.operation)?.number ?? index + 1;
  const name = (table?.id ?? '').toLowerCase().replace(/[^a-z0-9]+/g, '-');
  return `${String(number).padStart(2, '0')}-${name}`.slice(0, 100);
}
