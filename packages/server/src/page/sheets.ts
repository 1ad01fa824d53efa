/** The sheet of each stage. What the packet prints is what the screen shows, less the blanks to write in. */
import type { Block, TableBlock } from '@sparewright/output/packet/blocks';
import type { PacketContext } from '@sparewright/output/packet/context';
import { dutySheet } from '@sparewright/output/packet/sheets/duty';
import { inspectionSheet } from '@sparewright/output/packet/sheets/inspection';
import { setupSheet } from '@sparewright/output/packet/sheets/setup';
import { sizesSheet } from '@sparewright/output/packet/sheets/sizes';
import { stockSheet } from '@sparewright/output/packet/sheets/stock';
import { stopPointSheet } from '@sparewright/output/packet/sheets/stop-points';
import { presentNumber } from '@sparewright/output/present/number';
import type { JobPage, SheetBlock, TableView } from '../answer.ts';

type Sheet = ReturnType<typeof dutySheet>;
type OperationBlock = Extract<Block, { kind: 'operation' }>;

export function sheetsOf(context: PacketContext): JobPage['sheets'] {
  const setups = (context.assessment.route?.setups ?? []).map((setup) => setupSheet(setup, undefined, context));
  return {
    evidence: blocksOf(sizesSheet(context)),
    part: partBlocks(context),
    duty: blocksOf(dutySheet(context)),
    route: [...blocksOf(stockSheet(context)), ...setups.flatMap((s) => [title(headingOf(s)), ...blocksOf(s)])],
    bench: [...setups.flatMap(dialTables), title('Coming to size'), ...blocksOf(stopPointSheet(context))],
    inspection: blocksOf(inspectionSheet(context)).filter((b) => b.kind !== 'caution'),
    record: recordBlocks(context),
  };
}

const title = (text: string): SheetBlock => ({ kind: 'heading', text, small: false });
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
      return [{ kind: 'heading', text: block.text, small: true }];
    case 'words':
      return [{ kind: 'words', text: block.text, secondary: block.tone === 'pencil' }];
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

function dialTables(sheet: Sheet): SheetBlock[] {
  return printed(sheet)
    .filter((b) => b.kind === 'operation')
    .flatMap((o) =>
      o.tables.flatMap((t): SheetBlock[] => [
        { kind: 'heading', text: `${t.name}, operation ${o.number}: ${t.title}`, small: true },
        ...(t.notes.length > 0 ? [{ kind: 'list' as const, items: t.notes, numbered: false }] : []),
        tableView(t.table),
      ]),
    );
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
      ? [
          { kind: 'heading' as const, text: 'Not entered yet', small: true },
          { kind: 'list' as const, items: assessment.missing, numbered: false },
        ]
      : []),
    ...(notes.length > 0
      ? [
          { kind: 'heading' as const, text: 'Notes', small: true },
          ...notes.map((text) => ({ kind: 'words' as const, text, secondary: false })),
        ]
      : []),
  ];
}
