/** A table to stand beside at the lathe: columns with units, rows of numbers or words. */
export interface Column {
  readonly key: string;
  readonly title: string;
  readonly unit: string;
  /** Decimals shown; undefined for words. */
  readonly decimals?: number | undefined;
  /** A blank to write in at the lathe. */
  readonly blank?: boolean | undefined;
}

export interface DialTable {
  readonly id: string;
  readonly kind: 'turning' | 'facing' | 'boring' | 'groove' | 'drilling' | 'thread' | 'curve' | 'cone' | 'polish';
  readonly title: string;
  /** Operation it belongs to. */
  readonly operation: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Readonly<Record<string, number | string>>[];
  /** How to set up and use it, in the order needed. */
  readonly notes: readonly string[];
}
