/** What a printed sheet is made of: finished words in order. The typesetter only places them. */
import type { Level } from '@sparewright/core/finding';

export interface TableColumn {
  readonly title: string;
  readonly unit?: string | undefined;
  readonly align: 'left' | 'right';
  /** Shares the width left over with the other wide ones; the rest take what they need. */
  readonly wide?: boolean | undefined;
  /** To be filled in by hand: a figure, or a box to tick. */
  readonly blank?: 'figure' | 'tick' | undefined;
}

/** A row that stands over the ones that follow it and says what they have in common. */
export interface GroupRow {
  readonly title: string;
  readonly says: string;
}

export interface TableBlock {
  readonly kind: 'table';
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[] | GroupRow)[];
  /** `machine`: large figures, rows high enough to write in. `desk`: for reading. */
  readonly size: 'machine' | 'desk';
}

export interface DialBlock {
  readonly name: string;
  readonly title: string;
  readonly notes: readonly string[];
  readonly table: TableBlock;
}

export interface FactRow {
  readonly what: string;
  readonly is: string;
}

/** A figure, its formula, the numbers put in, and whose formula it is. */
export interface WorkedRow {
  readonly what: string;
  readonly formula: string;
  readonly put: readonly string[];
  readonly gives: string;
  readonly source: string;
}

export interface FindingBlock {
  readonly kind: 'finding';
  readonly level: Level;
  /** '' where the place is clear from where it stands. */
  readonly at: string;
  readonly headline: string;
  readonly because: readonly { readonly text: string; readonly source: string }[];
  /** Remedies in one sentence; '' when there are none. */
  readonly helps: string;
}

export interface PrintedPicture {
  readonly number: string;
  readonly shows: string;
  /** '' when none is entered. */
  readonly place: string;
  readonly file?: string | undefined;
  readonly lacks?: string | undefined;
}

export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'words'; readonly text: string; readonly tone: 'ink' | 'pencil' }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly mark: 'dash' | 'number' | 'tick' }
  | { readonly kind: 'facts'; readonly rows: readonly FactRow[]; readonly columns: 1 | 2 }
  | { readonly kind: 'standing'; readonly stages: readonly FactRow[] }
  | { readonly kind: 'notice'; readonly title: string; readonly lines: readonly string[] }
  | { readonly kind: 'picture'; readonly file: string; readonly describes: string; readonly height: number }
  /** Side by side, each over its words; `lacks` says why one is not printed. */
  | { readonly kind: 'photographs'; readonly pictures: readonly PrintedPicture[] }
  | { readonly kind: 'contents' }
  | { readonly kind: 'blanks'; readonly labels: readonly string[] }
  /** How the figures before it come about: for the screen, where it is asked for; paper has no room for it. */
  | { readonly kind: 'why'; readonly worked: readonly WorkedRow[] }
  | {
      readonly kind: 'operation';
      readonly number: string;
      readonly title: string;
      readonly time: string;
      readonly cutter: string;
      readonly numbers: readonly FactRow[];
      readonly cautions: readonly string[];
      readonly findings: readonly FindingBlock[];
      readonly aim: string;
      readonly why: readonly string[];
      readonly tables: readonly DialBlock[];
    }
  | {
      readonly kind: 'proof';
      readonly title: string;
      readonly how: string;
      readonly acceptance: string;
      readonly why: string;
    }
  | FindingBlock
  | TableBlock;

/** A sheet of text, as many pages as it takes; or a drawing that fills its page. */
export type Sheet =
  | {
      readonly kind: 'text';
      readonly heading: string;
      readonly landscape?: boolean;
      /** Set when there is nothing to print yet: what is missing, in a sentence. Such sheets are gathered on one. */
      readonly lacks?: string | undefined;
      readonly blocks: readonly Block[];
    }
  | {
      readonly kind: 'drawing';
      readonly heading: string;
      readonly file: string;
      readonly describes: string;
      readonly landscape: boolean;
    };

export interface PacketDocument {
  readonly title: string;
  /** Part number and the like, beside the title in the foot. */
  readonly foot: string;
  readonly paper: 'A4' | 'Letter';
  readonly sheets: readonly Sheet[];
}

export const words = (text: string, tone: 'ink' | 'pencil' = 'ink'): Block => ({ kind: 'words', text, tone });
export const heading = (text: string): Block => ({ kind: 'heading', text });

/** The first letter large, as at the head of a line. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A sheet that cannot be filled yet. */
export const lacking = (title: string, lacks: string): Sheet => ({ kind: 'text', heading: title, blocks: [], lacks });

/** Heading and blocks, or a sentence on what is missing when there are none. */
export function section(title: string, blocks: readonly Block[], missing: string): Block[] {
  return [heading(title), ...(blocks.length > 0 ? blocks : [words(missing, 'pencil')])];
}
