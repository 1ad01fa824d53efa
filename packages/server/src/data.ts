/** The user's data while the server runs: one open store, which a restore closes, replaces and opens anew. */
import { randomUUID } from 'node:crypto';
import { mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { openStore, type Store } from '@sparewright/store/open-store';
import { discardRestore, finishRestore, type Restored } from '@sparewright/store/restore';
import { StoreError } from '@sparewright/store/store-error';
import { type LongWork, longWork } from './long-work.ts';

export interface Data {
  /** @throws StoreError when a restore left nothing that can be opened */
  readonly store: Store;
  /** A name for a file on its way in or out; whoever asks removes the file. */
  passing(): string;
  /** Work that needs the store open until it has ended. */
  whileOpen<T>(work: (store: Store) => Promise<T>): Promise<T>;
  readonly longWork: LongWork;
  /**
   * Puts a backup in place of everything. It is looked through beside the work of others; what they save meanwhile is in the
   * database that is kept. @throws StoreError when it is none, or one is under way; then nothing was changed
   */
  restore(from: string): Promise<Restored>;
  /** Waits for work under way. */
  close(): Promise<void>;
}

/** What a killed process left lying is removed after this [ms]. */
const forgotten = 24 * 3600 * 1000;

/** @throws StoreError when the folder or its database cannot be used */
export function openData(folder: string | undefined): Data {
  let store: Store | undefined = openStore({ folder });
  const home = store.folder;
  const underWay = new Set<Promise<unknown>>();
  const thread = longWork();
  let restoring: Promise<Restored> | undefined;
  const inPassing = join(home, 'passing');
  removeForgotten(inPassing);

  function opened(): Store {
    store ??= openStore({ folder: home });
    return store;
  }

  async function restore(from: string): Promise<Restored> {
    try {
      const report = await thread.run('prepareRestore', { from, folder: home });
      // A backup that began meanwhile is first made to the end.
      await Promise.allSettled(underWay);
      opened().close();
      store = undefined;
      try {
        return { report, kept: finishRestore(home) };
      } finally {
        opened();
      }
    } finally {
      discardRestore(home);
    }
  }

  return {
    longWork: thread,
    get store() {
      return opened();
    },
    passing() {
      mkdirSync(inPassing, { recursive: true, mode: 0o700 });
      return join(inPassing, randomUUID());
    },
    async whileOpen(work) {
      const running = work(opened());
      underWay.add(running);
      try {
        return await running;
      } finally {
        underWay.delete(running);
      }
    },
    async restore(from) {
      if (underWay.size > 0)
        throw new StoreError(
          'busy',
          'A backup is just being made, or a job brought in; try again when that is done. Nothing was changed.',
        );
      if (restoring)
        throw new StoreError(
          'busy',
          'A backup is just being restored; try again when that is done. Nothing was changed.',
        );
      restoring = restore(from);
      try {
        return await restoring;
      } finally {
        restoring = undefined;
      }
    },
    async close() {
      await thread.close();
      await Promise.allSettled([...underWay, restoring]);
      store?.close();
      store = undefined;
    },
  };
}

function removeForgotten(folder: string): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (Date.now() - statSync(path).mtimeMs > forgotten) rmSync(path, { force: true, recursive: true });
  }
}
