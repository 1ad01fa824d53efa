/** A caution to show where the work can hurt. Informs; never blocks. */
export interface Caution {
  readonly id: string;
  /** What calls for it: a hazard class or a kind of operation. */
  readonly about: string;
  readonly says: string;
}
