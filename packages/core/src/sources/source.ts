/** Where a value or formula comes from. */
export interface Source {
  /** Author or body, title, edition, page or table, as one would cite it. */
  readonly title: string;
  /** `read`: looked up in print or in a readable copy. `from memory`: known, not looked up. `common practice`: trade habit. `computed`: made here, by the formula named. */
  readonly kind: 'read' | 'from memory' | 'common practice' | 'computed';
  /** Address of the page read, where there was one. */
  readonly address?: string | undefined;
  /** What to be wary of. */
  readonly note?: string | undefined;
}
