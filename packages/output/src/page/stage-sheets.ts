/** The sheet of each stage. What the packet prints is what the screen shows, less the blanks to write in. */

import type { SheetBlock, StageName, TableView } from '../present/job-view.ts';
import { presentNumber } from '../present/number.ts';
import type { Block, TableBlock } from '../sheets/blocks.ts';
import type { PacketContext } from '../sheets/context.ts';
import { dutySheet } from '../sheets/duty.ts';
import { inspectionSheet } from '../sheets/inspection.ts';
import { setupSheet } from '../sheets/setup.ts';
import { sizesSheet } from '../sheets/sizes.ts';
import { stockSheet } from '../sheets/stock.ts';
import { stopPointSheet } from '../sheets/stop-points.ts';

/** Pictures of the sheets are left to the packet. */
const noSketch = { file: '', describes: '' };

type Sheet = ReturnType<typeof dutySheet>;
type OperationBlock = Extract<Block, { kind: 'operation' }>;

/** The sheet of each stage, made when it is asked for. */
export function sheetsOf(context: PacketContext): Readonly<Record<StageName, () => SheetBlock[]>> {
  const setups = () => (context.assessment.route?.setups ?? []).map((setup) => setupSheet(setup, noSketch, context));
  return {
    evidence: () => blocksOf(sizesSheet(context)),
    part: () => partBlocks(context),
    duty: () => blocksOf(dutySheet(context)),
    route: () => [...blocksOf(stockSheet(context)), ...setups().flatMap((s) => [title(headingOf(s)), ...blocksOf(s)])],
    bench: () => [...dialBlocks(setups()), title('Coming to size'), ...blocksOf(stopPointSheet(context))],
    inspection: () => blocksOf(inspectionSheet(context)).filter((b) => b.kind !== 'caution'),
    record: () => recordBlocks(context),
  };
}

const title = (text: string): SheetBlock => ({ kind: 'heading', text, small: false });
const small = (text: string): SheetBlock => ({ kind: 'heading', text, small: true });
const headingOf = (sheet: Sheet): string => sheet.heading;
const printed = (sheet: Sheet): readonly Block[] => (sheet.kind === 'text' ? sheet.blocks : []);

function blocksOf(sheet: Sheet): SheetBlock[] {
  if (sheet.kind === 'text' && sheet.lacks !== undefined)
    return [{ kind: 'words', text: sheet.lacks, secondary: true }];
  const shown = printed(sheet).filter((b) => b.kind !== 'blanks');
  // A heading over nothing but blanks to write in goes with them.
  return shown
    .filter((block, i) => block.kind !== 'heading' || (i + 1 < shown.length && shown[i + 1]?.kind !== 'heading'))
    .flatMap(shownBlock);
}

function shownBlock(block: Block): SheetBlock[] {
  switch (block.kind) {
    case 'heading':
      return [small(block.text)];
    case 'words':
      return [wordsView(block.text, block.tone === 'pencil')];
    case 'list':
      return [{ kind: 'list', items: block.items, numbered: block.mark === 'number' }];
    case 'facts':
      // A fact without a value is a blank to write in.
      return [{ kind: 'facts', rows: block.rows.filter((r) => r.is !== '') }];
    case 'notice':
      return [{ kind: 'caution', title: block.title, lines: block.lines }];
    case 'table':
      return [tableView(block)];
    case 'operation':
      return [operationView(block)];
    case 'proof':
      return [block];
    // Findings stand in their own list beside the sheet; pictures and standing have their own place on the page.
    default:
      return [];
  }
}

/** Sources stand in one sentence on paper; on a screen they wait until they are asked for. */
function wordsView(text: string, secondary: boolean): SheetBlock {
  const opening = 'From: ';
  if (!secondary || !text.startsWith(opening)) return { kind: 'words', text, secondary };
  return { kind: 'sources', items: text.slice(opening.length).split(' · ') };
}

function tableView({ columns, rows }: TableBlock): TableView {
  return {
    kind: 'table',
    columns: columns.map((c) => ({
      title: c.title,
      unit: c.unit ?? '',
      right: c.align === 'right',
      blank: Boolean(c.blank),
    })),
    rows,
  };
}

function operationView(block: OperationBlock): SheetBlock {
  const { number, time, cutter, numbers, cautions, aim, why } = block;
  return {
    kind: 'operation',
    number,
    title: block.title,
    time,
    cutter,
    numbers,
    cautions,
    why: aim === '' ? why : [aim, ...why],
  };
}

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
