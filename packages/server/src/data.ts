/** The user's data while the server runs: one open store, which a restore closes, replaces and opens anew. */
import { randomUUID } from 'node:crypto';
import { mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { openStore, type Store } from '@sparewright/store/open-store';
import { type Restored, restoreBackup } from '@sparewright/store/restore';
import { StoreError } from '@sparewright/store/store-error';

export interface Data {
  /** @throws StoreError when a restore left nothing that can be opened */
  readonly store: Store;
  /** A name for a file on its way in or out; whoever asks removes the file. */
  passing(): string;
  /** Work that needs the store open until it has ended. */
  whileOpen<T>(work: (store: Store) => Promise<T>): Promise<T>;
  /** Puts a backup in place of everything. @throws StoreError when it is none; then nothing was changed */
  restore(from: string): Restored;
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
  const inPassing = join(home, 'passing');
  removeForgotten(inPassing);

  function opened(): Store {
    store ??= openStore({ folder: home });
    return store;
  }

  return {
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
    restore(from) {
      if (underWay.size > 0)
        throw new StoreError('busy', 'A backup is just being made; try again when it is done. Nothing was changed.');
      opened().close();
      store = undefined;
      try {
        return restoreBackup({ from, folder: home });
      } finally {
        opened();
      }
    },
    async close() {
      await Promise.allSettled(underWay);
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
