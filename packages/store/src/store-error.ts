/** What the store refuses or cannot do, in one sentence for the person at the screen. */

export type StoreReason =
  /** Nothing of that name. */
  | 'missing'
  /** The name is in use for something else. */
  | 'taken'
  /** The job lies in the bin. */
  | 'in the bin'
  /** Written by a newer program. */
  | 'newer'
  /** What is on the disk is not what was written. */
  | 'damaged'
  /** Another program has the data open, and for what was asked they must be alone. */
  | 'busy'
  /** The disk is full or cannot be written. */
  | 'disk'
  /** Not a kind of file that is kept, or too large. */
  | 'not kept';

export class StoreError extends Error {
  readonly reason: StoreReason;

  constructor(reason: StoreReason, message: string) {
    super(message);
    this.name = 'StoreError';
    this.reason = reason;
  }
}
