/** Entries of several requests that come at the same moment, written in one go: the disk is waited for once for all of them. */
import type { Appended, NewEntry } from '@sparewright/store/bench-log';

type Append = (entries: readonly NewEntry[]) => readonly Appended[];

interface Waiting {
  readonly entries: readonly NewEntry[];
  readonly done: (outcomes: readonly Appended[]) => void;
  readonly failed: (error: unknown) => void;
}

/** @returns a function whose promise resolves once the entries are on the disk, as with `append` itself */
export function together(append: Append): (entries: readonly NewEntry[]) => Promise<readonly Appended[]> {
  let waiting: Waiting[] = [];

  function write(): void {
    const batch = waiting;
    waiting = [];
    try {
      const outcomes = append(batch.flatMap(({ entries }) => entries));
      let from = 0;
      for (const { entries, done } of batch) {
        done(outcomes.slice(from, from + entries.length));
        from += entries.length;
      }
    } catch (error) {
      const [only] = batch;
      // Nothing of it was written. If it was the fault of one of them, the others are not to suffer for it.
      if (batch.length === 1) only?.failed(error);
      else for (const one of batch) alone(one);
    }
  }

  function alone({ entries, done, failed }: Waiting): void {
    try {
      done(append(entries));
    } catch (error) {
      failed(error);
    }
  }

  return (entries) =>
    new Promise((done, failed) => {
      if (waiting.length === 0) setImmediate(write);
      waiting.push({ entries, done, failed });
    });
}
