/** The sheet of each stage. What the packet prints is what the screen shows, less the blanks to write in. */

import type { SheetBlock, StageName } from '../present/job-view.ts';
import { presentNumber } from '../present/number.ts';
import type { Sheet } from '../sheets/blocks.ts';
import type { PacketContext } from '../sheets/context.ts';
import { dutySheet } from '../sheets/duty.ts';
import { inspectionSheet } from '../sheets/inspection.ts';
import { setupSheet } from '../sheets/setup.ts';
import { sizesSheet } from '../sheets/sizes.ts';
import { stockSheet } from '../sheets/stock.ts';
import { stopPointSheet } from '../sheets/stop-points.ts';
import { blocksOf, printed, tableView } from './shown-blocks.ts';

/** Pictures of the sheets are left to the packet. */
const noSketch = { file: '', describes: '' };

/** The sheet of each stage, made when it is asked for; setups and operations of the route are told as `routing`. */
export function sheetsOf(context: PacketContext): Readonly<Record<StageName, () => SheetBlock[]>> {
  const setups = () => (context.assessment.route?.setups ?? []).map((setup) => setupSheet(setup, noSketch, context));
  return {
    evidence: () => blocksOf(sizesSheet(context)),
    part: () => partBlocks(context),
    duty: () => blocksOf(dutySheet(context)),
    route: () => blocksOf(stockSheet(context)),
    bench: () => [...dialBlocks(setups()), title('Coming to size'), ...blocksOf(stopPointSheet(context))],
    inspection: () => blocksOf(inspectionSheet(context)).filter((b) => b.kind !== 'caution'),
    record: () => recordBlocks(context),
  };
}

const title = (text: string): SheetBlock => ({ kind: 'heading', text, small: false });
const small = (text: string): SheetBlock => ({ kind: 'heading', text, small: true });

/** All dial tables; what several of them would repeat about the dials is said once, before them. */
function dialBlocks(sheets: readonly Sheet[]): SheetBlock[] {
  const tables = sheets
    .flatMap(printed)
    .filter((block) => block.kind === 'operation')
    .flatMap((operation) => operation.tables.map((table) => ({ operation: operation.number, table })));
  const notes = tables.flatMap(({ table }) => table.notes);
  const common = [...new Set(notes)].filter((note) => notes.filter((n) => n === note).length > 2);
  return [
    ...(common.length > 0
      ? [small('Before the tables'), { kind: 'list' as const, items: common, numbered: false }]
      : []),
    ...tables.map(({ operation, table }): SheetBlock => {
      const own = table.notes.filter((note) => !common.includes(note));
      return {
        kind: 'dial',
        operation,
        name: table.name,
        title: table.title,
        notes: own,
        table: tableView(table.table),
      };
    }),
  ];
}

function partBlocks({ assessment: { part }, settings }: PacketContext): SheetBlock[] {
  if (!part) return [{ kind: 'words', text: 'No part is entered yet.', secondary: true }];
  const { material, mass } = part;
  return [
    {
      kind: 'facts',
      rows: [
        {
          what: 'Material',
          is: material ? `${material.commonName}, ${material.condition}` : 'not chosen, or not known here',
        },
        ...(mass?.mass === undefined
          ? []
          : [{ what: 'Mass', is: `${presentNumber(mass.mass * 1000, settings.decimalSign)} g` }]),
        { what: 'Sizes', is: part.complete ? 'all known' : 'some are not known yet and are drawn as assumed' },
      ],
    },
  ];
}

function recordBlocks({ job, assessment }: PacketContext): SheetBlock[] {
  const notes = (job.notes ?? '').split(/\n+/).filter((line) => line.trim() !== '');
  return [
    ...(assessment.missing.length > 0
      ? [small('Not entered yet'), { kind: 'list' as const, items: assessment.missing, numbered: false }]
      : []),
    ...(notes.length > 0
      ? [small('Notes'), ...notes.map((text) => ({ kind: 'words' as const, text, secondary: false }))]
      : []),
  ];
}
