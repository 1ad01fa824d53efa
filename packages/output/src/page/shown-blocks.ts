/** Blocks of a printed sheet as the screens show them, less the blanks to write in. */
import type { SheetBlock, TableView } from '../present/job-view.ts';
import type { Block, Sheet, TableBlock } from '../sheets/blocks.ts';

/** All that is printed of a sheet. */
export const printed = (sheet: Sheet): readonly Block[] => (sheet.kind === 'text' ? sheet.blocks : []);

export function blocksOf(sheet: Sheet): SheetBlock[] {
  if (sheet.kind === 'text' && sheet.lacks !== undefined)
    return [{ kind: 'words', text: sheet.lacks, secondary: true }];
  const shown = printed(sheet).filter((b) => b.kind !== 'blanks');
  // A heading over nothing but blanks to write in goes with them.
  return shown
    .filter((block, i) => block.kind !== 'heading' || (i + 1 < shown.length && shown[i + 1]?.kind !== 'heading'))
    .flatMap(shownBlock);
}

export function shownBlock(block: Block): SheetBlock[] {
  switch (block.kind) {
    case 'heading':
      return [{ kind: 'heading', text: block.text, small: true }];
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
    case 'proof':
    case 'why':
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

export function tableView({ columns, rows }: TableBlock): TableView {
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
