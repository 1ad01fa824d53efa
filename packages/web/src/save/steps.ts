/** What undo and redo would take back, read off the list of revisions. */

export interface RevisionEntry {
  readonly revision: number;
  /** When it was saved, as in `2026-03-01T09:30:00.000Z`. */
  readonly at: string;
  readonly by?: string | undefined;
  readonly undoes?: number | undefined;
}

export interface Steps {
  readonly undo: number | undefined;
  readonly redo: number | undefined;
}

/** Undoing an undoing is doing it again: both are revisions. Before the first there is nothing to go back to. */
export function stepsOf(revisions: readonly RevisionEntry[]): Steps {
  const done: number[] = [];
  const undone: number[] = [];
  for (const { revision, undoes } of revisions.toSorted((a, b) => a.revision - b.revision)) {
    if (undoes !== undefined && undoes === done.at(-1)) {
      done.pop();
      undone.push(revision);
    } else if (undoes !== undefined && undoes === undone.at(-1)) {
      undone.pop();
      done.push(revision);
    } else {
      done.push(revision);
      undone.length = 0;
    }
  }
  const undo = done.at(-1);
  return { undo: undo === 1 ? undefined : undo, redo: undone.at(-1) };
}
